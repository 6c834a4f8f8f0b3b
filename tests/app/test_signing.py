"""A sign is shown before it is booked, and found by the words that people use for it."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import OptionList, Static

from pantry_tui.app.inkeys import in_keys
from pantry_tui.app.main import PantryApp
from pantry_tui.core.log.payloads import Sign
from pantry_tui.core.safety.caution import CAUTION
from pantry_tui.core.words import Verdict
from pantry_tui.services.batchwork import putup
from pantry_tui.services.lookup import signs
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import leaving, places, view
from pantry_tui.services.stock.pick import batch_named
from tests.app.screens import table

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db", altitude_ft=900)
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        places.add(pantry, "larder", "pantry")
        line = "6 pint jars runner beans, pressure canned, larder, 2026-09-10, minutes=20 psi=11"
        putup.put_up(pantry, putup.read(pantry, f"{line} canner=dial"))
        yield pantry


def booked(p: Pantry) -> list[Sign]:
    return [one.payload for one in p.events if isinstance(one.payload, Sign)]


def shown(pilot: Pilot[None]) -> str:
    strips = pilot.app.screen._compositor.render_strips()
    return "\n".join("".join(segment.text for segment in strip) for strip in strips)


def options(pilot: Pilot[None]) -> list[str]:
    listed = pilot.app.screen.query_one(OptionList)
    return [str(listed.get_option_at_index(at).prompt) for at in range(listed.option_count)]


async def test_a_digit_shows_what_a_sign_means_and_only_enter_books_it(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(100, 40)) as pilot:
        await pilot.press("s")
        assert "Never taste" in shown(pilot)
        await pilot.press("1", "1")
        assert "do not taste" in shown(pilot)
        assert "How to throw it away" in shown(pilot)
        assert not booked(p)
        await pilot.press("escape")
        assert not booked(p)
        assert "Nothing was recorded" in str(pilot.app.screen.query_one("SaidLine", Static).content)
        await pilot.press("s", "1", "1", "enter")
        assert [one.verdict for one in booked(p)] == [Verdict.DO_NOT_TASTE]
        await pilot.press("z")
        assert all(row.verdict is not Verdict.DO_NOT_TASTE for row in view.due(p))


@pytest.mark.parametrize("size", [(80, 24), (40, 20), (120, 40)])
async def test_the_caution_stands_where_it_is_decided_on_every_screen(
    p: Pantry, size: tuple[int, int]
) -> None:
    async with PantryApp(p).run_test(size=size) as pilot:
        await pilot.press("s")
        note, box = (pilot.app.screen.query_one(name) for name in ("#note", "#box"))
        assert note.region
        assert box.region.contains_region(note.region)
        listed = pilot.app.screen.query_one(OptionList).region
        assert box.region.contains_region(listed)
        assert listed.height >= 4


@pytest.mark.parametrize(
    ("typed", "finds"),
    [
        ("off", ("foul",)),
        ("moldy", ("mould",)),
        ("lid popped", ("swollen lid",)),
        ("fizzing", ("bubbles", "spurts")),
        ("soft", ("soft",)),
        ("cloudy", ("murky",)),
        ("seal", ("loose lid", "unsealed", "springs")),
        ("seal failed", ("loose lid", "unsealed", "springs")),
        ("vacuum", ("loose lid", "unsealed", "springs")),
    ],
)
async def test_the_words_that_people_use_find_a_sign(
    p: Pantry, typed: str, finds: tuple[str, ...]
) -> None:
    async with PantryApp(p).run_test(size=(100, 40)) as pilot:
        await pilot.press("s", *typed.replace(" ", "_").replace("_", " "))
        listed = options(pilot)
        assert 0 < len(listed) < 15
        danger = {one.words: one.danger for one in signs.to_choose(p, view.due(p)[0].code)}
        ranks = [danger.get(one[3:].removesuffix(" (harmless)"), 99) for one in listed]
        assert ranks == sorted(ranks), "what is most dangerous stands first"
        for word in finds:
            assert any(word in one for one in listed), listed
        assert not booked(p)


async def test_what_is_in_no_list_may_be_described_and_doubt_has_an_answer(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(100, 40)) as pilot:
        await pilot.press("s", *"something", "enter", *"leaking lid", "enter", "enter")
        assert "do not taste" in shown(pilot)
        await pilot.press("escape", "s", *"still unsure", "enter", "enter")
        assert CAUTION[:20] in shown(pilot)
        assert not booked(p)


def test_harmless_ones_stand_last_and_say_so_and_what_is_said_of_the_food_stands_first(
    p: Pantry,
) -> None:
    code = view.due(p)[0].code
    found = signs.to_choose(p, code)
    harmless = [one.harmless for one in found[:-1]]
    assert harmless == sorted(harmless)
    assert any(harmless)
    assert found[-1].words == "looks sound"


def test_what_a_sign_would_mean_is_what_it_means_once_it_is_booked(p: Pantry) -> None:
    code = view.due(p)[0].code
    before = len(p.events)
    for one in signs.to_choose(p, code)[:-1]:
        would = signs.weigh(p, code, one.words)
        assert len(p.events) == before
        assert would.sources
    would = signs.weigh(p, code, "swollen lid")
    assert signs.mark(p, code, "swollen lid") == would
    assert signs.weigh(p, code, "lid popped").sign == "swollen lid"
    asked = signs.weigh(p, code, "rust")
    assert any("surface rust" in step for step in asked.do)


@pytest.mark.parametrize(
    ("said", "shown"),
    [
        ("Else `sign 7C/3 looks sound`.", "Else s (sign): looks sound."),
        ("look at it, and `ready 7C/1` when it is.", "look at it, and f (ready) when it is."),
        ("free it with `reserve --free`.", "free it with k (reserve)."),
        ("`pantry-tui due` lists the codes", "D (due) lists the codes"),
        ("`undo` it and say --since 90m.", "z (undo) it and say since 90m."),
        ("Look at the others: pantry-tui recall 7C.", "Look at the others: recall (with :)."),
        ("beans - past best", "beans - past best"),
    ],
)  # fmt: skip
def test_inside_the_app_nothing_is_said_in_words_of_the_command_line(said: str, shown: str) -> None:
    assert in_keys(said) == shown


async def test_letters_that_no_sign_has_leave_what_takes_words(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(100, 40)) as pilot:
        await pilot.press("s", *"qqq")
        assert "qqq: nothing else here has that" in shown(pilot)
        assert len(options(pilot)) == 1
        assert "describe it" in options(pilot)[0]
        await pilot.press("enter")
        assert "Enter does it" in shown(pilot), "a line to write it on"
        assert "qqq" in shown(pilot), "with what was typed"
        await pilot.press("escape", "s", *"qqq", "backspace")
        assert len(options(pilot)) > 4
        assert not booked(p)


async def test_what_no_sign_has_is_gone_on_with_where_it_is_described(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("s", *"zinged open", "enter")
        assert "zinged open" in shown(pilot)
        await pilot.press("escape", "s", *"something", "enter")
        assert "something" not in shown(pilot), "a word of the option itself is no description"


async def test_it_is_asked_which_of_several_show_it_and_all_of_them_are_booked_as_one(
    p: Pantry,
) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("s", *"mould", "1")
        assert "Which of the 6 shows it?" in shown(pilot)
        await pilot.press("plus", "3", "enter")
        (code,) = {one.code for one in view.due(p)}
        assert [p.containers_of(batch_named(p, code))[n].signs != () for n in range(6)] == [
            False, False, True, True, False, False,
        ]  # fmt: skip
        await pilot.press("z")
        await pilot.press("s", *"mould", "1", "asterisk", "1", "enter")
        assert all(one.signs for one in p.containers_of(batch_named(p, code)))
        await pilot.press("z")
        assert not any(one.signs for one in p.containers_of(batch_named(p, code)))
        await pilot.press(*code, "slash", "2", "s", *"mould", "1")
        assert f"{code}/2, mould" in shown(pilot), "where one was named nothing is asked"


async def test_a_note_of_two_jars_says_how_many_of_them_are_named(p: Pantry) -> None:
    line = "4 pint jars pears, boiling-water canned, larder, 2026-09-12, note=2 lids came loose"
    code = putup.put_up(p, putup.read(p, line)).code
    async with PantryApp(p).run_test(size=(100, 30)) as pilot:
        await pilot.press(*code, "s", *"seal", "1", "1", "enter")
        said = str(pilot.app.screen.query_one("SaidLine", Static).content)
        assert "1 of the 2 that its note speaks of is named" in said
        await pilot.press(*code, "slash", "3", "s", *"seal", "1", "enter")
        assert "All that its note speaks of are named (2)" in " ".join(shown(pilot).split())
    assert "2 of the" not in signs.mark(p, f"{code}/1", "looks sound").do


async def test_in_a_count_it_is_asked_too(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("c", "1", "s", *"mould", "1")
        assert "Which of the 6 shows it?" in shown(pilot)
        await pilot.press("2", "enter")
    assert [len(one.containers) for one in booked(p)] == [1]


@pytest.mark.parametrize("gone", [2, 6])
async def test_what_was_given_away_is_told_of_by_its_lid_code(p: Pantry, gone: int) -> None:
    """From the list where others of it stand, and from the page of a batch of which none does."""
    for number in range(1, gone + 1):
        leaving.give(p, f"2A/{number}", to="Aunt Sunniva")
    async with PantryApp(p).run_test(size=(100, 40)) as pilot:
        await pilot.press("2", "A", "/", "2", "s")
        assert "What do you see, smell or hear?" in shown(pilot)
        await pilot.press("1")
        assert not booked(p)
        await pilot.press("enter")
    (sign,) = booked(p)
    assert sign.containers == (
        next(one.id for one in p.containers_of(batch_named(p, "2A")) if one.number == 2),
    )


async def test_after_a_sign_that_ends_it_the_cursor_is_on_that_jar_and_its_key_is_named(
    p: Pantry,
) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("s", *"mould", "1", "2", "enter")
        (code,) = {one.code for one in view.due(p)}
        line = table(pilot).current
        assert line is not None
        assert line.ref == f"{code}/2"
        said = str(pilot.app.screen.query_one("SaidLine", Static).content)
        assert "Next: " in said
        assert "d books it as discarded" in said
        await pilot.press("d", "1")
        gone = [one.number for one in p.containers_of(batch_named(p, code)) if not one.here]
        assert gone == [2], "and not one of its sisters"
        await pilot.press("s", *"dull", "escape", "escape")


async def test_a_sign_that_changes_nothing_names_no_key_to_discard(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("s", *"looks sound", "enter", "1", "enter")
        said = str(pilot.app.screen.query_one("SaidLine", Static).content)
        assert "discards it" not in said
