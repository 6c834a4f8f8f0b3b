"""A jam with little sugar, or none, by its record or its note; and what only sounds like one."""

from __future__ import annotations

import pytest

from pantry_tui.core.dataclass import replace
from pantry_tui.core.keeping.doubt import NOTE_STANDS, of_a_silent_note
from pantry_tui.core.keeping.packs import LOW_SUGAR, packed
from pantry_tui.core.model import Batch
from pantry_tui.core.safety.low_sugar import low_sugar, notes_low_sugar
from pantry_tui.core.words import Method
from tests.core.keeping.told import MADE, Told, facts_of


@pytest.mark.parametrize(
    "note",
    [
        "half the sugar", "low sugar", "low-sugar", "Less sugar", "a third less sugar",
        "50% less sugar", "no sugar", "sugar free", "sugar-free", "reduced sugar",
        "without sugar", "no added sugar", "made with half the usual sugar", "unsweetened",
        "sweetened with stevia", "sugar halved", "sugar was reduced", "light on sugar",
        "half sugar", "low sugar pectin", "cut the sugar by half", "not much sugar",
        "only half the amount of sugar", "set well; very little sugar, nice colour",
        "left out the sugar", "low sugar for a diabetic",
    ],
)  # fmt: skip
def test_words_for_little_sugar(note: str) -> None:
    assert notes_low_sugar(note)


@pytest.mark.parametrize(
    "note",
    [
        "", "half the sugar was brown", "brown sugar", "full sugar", "next time less sugar",
        "needs less sugar", "could do with less sugar", "no sugar crystals", "not low sugar",
        "not a low sugar jam", "too much sugar", "sugar on the rim", "no sugar left over",
        "sugar snap", "sugar 1:1", "half brown sugar, half white", "no sweeteners",
        "equal sugar and fruit", "would like less sugar", "sugar from the low shelf",
        "half sugar half honey", "unlike last year low sugar one", "low acid", "half pints",
        "a little rum", "no pectin", "jam sugar",
    ],
)  # fmt: skip
def test_innocents(note: str) -> None:
    assert not notes_low_sugar(note)


def jam(food: str = "strawberry jam", method: Method = Method.JAM, **record: str) -> Batch:
    return Batch("b", "2A", facts_of(food), method, MADE, process=tuple(record.items()))


def test_a_record_and_a_note_are_read_of_jams_alone() -> None:
    assert low_sugar(jam(sugar="none"))
    assert not low_sugar(jam(sugar="60%"))
    assert low_sugar(replace(jam("strawberries"), note="half the sugar"))
    assert low_sugar(replace(jam(method=Method.BOUGHT), note="no sugar"))
    assert not low_sugar(replace(jam("peaches", Method.BOILING_WATER), note="no sugar"))
    assert not low_sugar(jam())


@pytest.mark.parametrize("method", [Method.JAM, Method.BOILING_WATER, Method.BOUGHT])
def test_once_opened_it_has_three_weeks_instead_of_a_month(method: Method) -> None:
    """National Center for Home Food Preservation, jams and jellies: shorter than full-sugar jam,
    which has a month; opened freezer jam, three weeks."""
    for note, days in (("half the sugar", 21), ("nice", 31), ("next time less sugar", 31)):
        told = Told("strawberry jam", method, "fridge", size="jar").at(0, 11).open()
        told.batch = replace(told.batch, note=note)
        best = told.judged(0).best_by
        assert best is not None
        assert (best - MADE).days == days, (method, note)
    named = Told("low-sugar jams", method, "fridge", size="jar").at(0, 11).open().judged(0)
    assert named.best_by is not None
    assert (named.best_by - MADE).days == 21


def test_shut_it_keeps_its_year() -> None:
    told = Told("strawberry jam", Method.JAM, "larder")
    told.batch = replace(told.batch, note="half the sugar")
    assert LOW_SUGAR in packed(told.batch.food, told.batch, opened=False).classes
    best = told.judged(0).best_by
    assert best is not None
    assert (best - MADE).days == 365


def test_nobody_is_told_that_such_a_note_changes_no_date() -> None:
    told = replace(jam(), note="half the sugar")
    assert of_a_silent_note(told) == ""
    assert NOTE_STANDS in of_a_silent_note(replace(jam(), note="set well"))
