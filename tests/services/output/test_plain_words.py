"""Paper says what to do; how it is booked, a command or a key, is for who sits at a screen."""

from __future__ import annotations

from datetime import timedelta

import pytest

from pantry_tui.services.batchwork import putup
from pantry_tui.services.output.paper import sheet, sheet_html, sheet_text
from pantry_tui.services.output.plain_words import plainly
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import appetite
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.stock import places
from tests.app.test_in_keys import TEXTS


@pytest.mark.parametrize(
    ("said", "shown"),
    [
        ("Check the seals first (`tend 2A`).", "Check the seals first."),
        ("Book what was eaten (like `use 5K`); the rest", "Book what was eaten; the rest"),
        ("Book what is eaten up (`use 5K/1 all`).", "Book what is eaten up."),
        ('say it as a dish, `pantry-tui household dish add "pot = 2 beans"`.', "say it as a dish."),
        ("put it right: `correct 3A --process psi=11`", "put it right"),
        ("in a count, or by `count PLACE --seen CODE=N`.", "in a count."),
        ("Book it with `open 3A` on the day it was opened", "Book it on the day it was opened"),
        ("book `ready 3A` and `open 3A` on their days", "book ready and open on their days"),
        ("If it shows nothing, `sign 7C/1 looks sound`.", "If it shows nothing, sign looks sound."),
        ("`undo` it only if it never did.", "undo it only if it never did."),
        ("Nothing to say (of this).", "Nothing to say (of this)."),
    ],
)  # fmt: skip
def test_a_command_is_left_out_or_said_in_words(said: str, shown: str) -> None:
    assert plainly(said) == shown


@pytest.mark.parametrize("said", dict.fromkeys(said for _, said in TEXTS))
def test_no_text_keeps_a_command(said: str) -> None:
    assert "`" not in plainly(said)


def test_no_paper_names_a_command(larder: Pantry) -> None:
    p = larder
    places.add(p, "freezer", "freezer")
    for line in (
        "9 pint jars beef, pressure canned, larder, today, minutes=75 psi=11 canner=dial pack=raw",
        "9 pint jars peaches, boiling-water canned, larder, 2026-08-01",
        "2 1 lb packs ground beef, frozen, freezer, 2026-09-01",
    ):
        putup.put_up(p, putup.read(p, line))
    notes = " ".join(weeks.week(p).notes)
    assert "Check the seals first (`tend 2A`)" in notes
    weeks.accept(p)
    appetite.read_table(p, "away saturday")
    assert "`week --accept`" in " ".join(weeks.week(p).notes)
    shown = sheet_text(sheet(p, "week"))
    assert "Check the seals first." in shown
    assert "Accept the week again to rework the days to come." in shown
    p.today += timedelta(days=8)
    for what in ("due", "opened", "week", "count", "larder"):
        found = sheet(p, what)
        for text in (sheet_text(found), sheet_html(found)):
            assert "`" not in text
            assert "pantry-tui" not in text
