"""Days in a note: the older day counts, however it is named, and a date on a pack that was over. A
plan and a day that is of something else change nothing. Today is Wednesday 25 November 2026."""

from __future__ import annotations

from datetime import date

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.correct import correct
from tests.services.batchwork.noting import judged_otherwise, quoted, tried, tried_each

STEW = "2 boxes beef stew, cooked meal, fridge"
CHICKEN = "2 lb chicken breasts, fresh, fridge"
GROUND = "2 packs ground beef, bought in, fridge"
MILK = "2 cartons milk, bought in, fridge"
TROUT = "2 packs hot smoked trout, fridge"
GARLIC = "3 jars garlic in oil, in oil, fridge"
RICE = "1 box cooked rice, cooked meal, fridge"
PEAS = "3 bags peas, frozen, freezer"
CRISPS = "2 bags crackers, bought in, larder"

OLDER = {
    STEW: (
        "cooked 30.10.", "cooked on 30/10", "cooked on 30.10", "cooked 20.11", "cooked 11/20",
        "sunday's leftovers", "left over from sunday's dinner", "in the fridge since sunday",
        "3d ago", "3 days old", "cooked 3d ago", "cooked three days back", "from sunday's roast",
        "sunday leftovers", "leftovers of sunday", "sundays leftovers", "since sunday",
        "been in the fridge since sunday", "stood in the fridge from sunday", "last sunday",
        "use by 3 nov", "use by 22.11.", "eat by sunday 22 nov", "best before 20 nov",
        "sunday's stew", "20 nov", "cooked on the 20th of november", "nov 20th",
        "cooked on the weekend", "weekend leftovers", "from the weekend", "thursday's", "5 d old",
        "4 nights ago", "three nights old", "72 hours old", "72 hours ago", "dated 20 nov",
        "label says 20 nov", "in since friday", "from dinner on friday", "thawed on sunday",
        "left from saturday night", "yesterday's leftovers", "made it 3 days before",
        "have had it since friday", "kept since friday", "chilled since friday",
        "already 4 days in the fridge", "in the fridge 4 days already", "on day 4",
        "out of the freezer since sunday", "cooked on 20/11/2026", "made 20.11.26",
        "in the fridge since sunday, smells fine", "Sat's", "made 19-11-2026", "21. Nov",
        "cooked 2026-11-20", "made it last wk", "in the fridge over a week",
        "soup from sunday lunch",
        "rest of sunday's chicken", "4 days now",
    ),
    CHICKEN: (
        "bought 20.11.", "in the fridge since sunday", "3 days old", "use by 22 nov",
        "use by 3 nov", "thawed on sunday", "thawed sunday", "defrosted on sunday",
        "thawed 2 days ago", "thawed since monday", "out of the freezer since sunday",
        "taken out of the freezer on sunday", "from the freezer on monday", "bought 3d ago",
        "in since sunday", "sell by 20 nov", "best by 20 nov",
    ),
    GROUND: ("in the fridge since sunday", "use by 3 nov", "thawed on sunday", "3d old"),
    MILK: (
        "use by 3 nov", "best before 20 nov", "sell by 20 nov", "opened 20.11.",
        "open since sunday", "opened on 30/10",
    ),
    TROUT: ("smoked on 30.10.", "smoked 10 nov", "in the fridge since 10 nov"),
    GARLIC: ("in the fridge since friday", "made sunday", "6 days old"),
    RICE: ("monday's", "from monday's curry", "in the fridge since monday", "2 days old"),
}  # fmt: skip
NONE = {
    STEW: (
        "grandma's sunday recipe", "eat by monday", "for sunday lunch", "for sunday's dinner",
        "eat by friday", "use by 30 nov", "sunday dinner", "sunday roast style",
        "monday's supper", "for thursday", "keep for christmas", "before sunday",
        "eat by the weekend", "goes with sunday roast", "recipe from the 20th century",
        "use within 3 days", "keeps 3 days", "3 days in the fridge at most", "by wednesday",
        "until friday", "recipe from sunday's paper", "will be eaten on sunday",
        "on sunday's menu", "next sunday's lunch", "like sunday's", "cooked 3 hours",
        "thaw on sunday", "cook on sunday", "day's work", "20 portions", "3/4 full", "serves 4",
        "2.5 lb each", "1/2 lb", "cooked at 2.30", "eat by 5.30", "cooked 1/2 and froze 1/2",
        "cooked today", "today's dinner", "wednesday's soup tonight", "30 nov", "day 1",
        "cooked 25.11.", "cooked on 25/11", "cooked 11/25", "made wednesday",
        "4 days in the fridge",
        "in the fridge since noon", "no rain since sunday", "from sunday market", "not from sunday",
        "for the 30th", "for day 4 of the trip", "monday's for jane", "saturday's treat",
        "made for thursday's party", "from our friday box", "1.5 l", "cooked 2.5 hours",
    ),
    CHICKEN: (
        "for sunday lunch", "eat by monday", "use by 30 nov", "from the sunday market",
        "grill on sunday", "thaws by sunday", "freeze by friday", "thawing for tonight",
        "use by 26.11.",
    ),
    GROUND: ("use by 27 nov", "for sunday"),
    MILK: ("best before 3 dec", "use by 30 nov"),
    f"{STEW}, 22 nov": ("sunday's leftovers", "cooked 22.11.", "3 days old", "since sunday"),
    PEAS: ("frozen on sunday", "picked on sunday"),
    CRISPS: ("best before 20 nov",),
}  # fmt: skip


@pytest.mark.parametrize("line", OLDER)
def test_an_older_day_of_a_note_leaves_no_last_day(chilled: Pantry, line: str) -> None:
    assert tried(chilled, line).verdict in (Verdict.SOUND, Verdict.EAT_SOON)
    found = tried_each(chilled, line, OLDER[line])
    assert quoted(found) == set(found)
    assert {note for note, one in found.items() if one.verdict is not Verdict.UNKNOWN} == set()


@pytest.mark.parametrize("line", NONE)
def test_a_plan_or_another_day_changes_nothing(chilled: Pantry, line: str) -> None:
    found = tried_each(chilled, line, NONE[line])
    assert quoted(found) == set()
    assert judged_otherwise(chilled, line, found) == set()


def test_a_day_is_quoted_as_it_was_typed(chilled: Pantry) -> None:
    for note in ("cooked 30.10.", "cooked on 30/10", "sunday's leftovers"):
        assert f"Its note says {note.rstrip('.')!r}" in tried(chilled, STEW, note).reasons[0] or (
            f'Its note says "{note}"' in tried(chilled, STEW, note).reasons[0]
        )


def test_a_use_by_of_a_note_ends_no_later_than_it_says(chilled: Pantry) -> None:
    found = tried(chilled, MILK, "use by 28 nov")
    assert (found.discard_after, found.best_by) == (date(2026, 11, 28), date(2026, 11, 28))
    assert found.verdict in (Verdict.SOUND, Verdict.EAT_SOON)


def test_a_day_of_a_note_counts_once_it_is_said(chilled: Pantry) -> None:
    code = putup.put_up(chilled, putup.read(chilled, f"{STEW}, 2 days ago")).code
    (batch,) = chilled.stock.batches.values()
    assert chilled.judge(chilled.containers_of(batch)[0]).usable
    correct(chilled, code, note="sunday's leftovers")
    (batch,) = chilled.stock.batches.values()
    assert not chilled.judge(chilled.containers_of(batch)[0]).usable
