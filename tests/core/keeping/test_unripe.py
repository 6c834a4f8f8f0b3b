"""A ferment that was called ready before any publication would call it so."""

from __future__ import annotations

import pytest

from pantry_tui.core.words import Method, State
from tests.core.keeping.told import Told


def ferment(food: str, days: float, place: str = "vault", ph: str = "") -> Told:
    more = {"ph": ph} if ph else {}
    told = Told(food, Method.LACTIC, place, State.IN_PROGRESS, 10, **more)
    return told.at(int(days), 12).ready().at(int(days), 13).move("fridge")


@pytest.mark.parametrize(
    ("food", "place", "least"),
    [
        # Michigan State University Extension, sauerkraut: three to four weeks at 70 to 75 F, five
        # to six at 60 to 65 F. The shorter one counts: nobody knows how warm each day was.
        ("sauerkraut", "kitchen", 21),
        ("sauerkraut", "vault", 21),
        # USDA AIB 539, fermented dill pickles: three to four weeks at 70 to 75 F.
        ("dill pickles", "kitchen", 21),
        # Colorado State University Extension, kimchi: a day or two at room warmth.
        ("kimchi", "kitchen", 1),
        # UC Master Food Preservers, vegetables: two to seven weeks.
        ("carrots", "kitchen", 14),
        ("chickpeas", "kitchen", 14),
    ],
)
def test_no_sooner_than_the_shortest_published_time(food: str, place: str, least: int) -> None:
    soon = ferment(food, least - 1, place).judged(least)
    assert not soon.usable
    assert "Called ready after" in soon.reasons[0]
    done = ferment(food, least, place).judged(least + 1)
    assert done.usable
    assert not any("Called ready" in one for one in done.reasons)


def test_what_is_still_working_is_told_nothing_of_it() -> None:
    told = Told("sauerkraut", Method.LACTIC, "vault", state=State.IN_PROGRESS)
    assert not any("Called ready" in one for one in told.judged(3).reasons)


def test_what_was_put_up_finished_is_taken_at_its_word() -> None:
    assert Told("sauerkraut", Method.LACTIC, "fridge").judged(1).usable


def test_a_measured_ph_says_more_than_the_days() -> None:
    assert ferment("carrots", 5, ph="3.8").judged(6).usable
    assert ferment("carrots", 5, ph="4.6").judged(6).usable
    assert not ferment("carrots", 5, ph="4.7").judged(6).usable
    assert not ferment("carrots", 5, ph="unknown").judged(6).usable


def test_in_the_cold_only_what_is_published_to_work_there_does() -> None:
    """Colorado State University Extension: kimchi takes three or four days in the refrigerator."""
    assert ferment("kimchi", 3, "fridge").judged(4).usable
    assert not ferment("sauerkraut", 40, "fridge").judged(41).usable


def test_it_does_not_become_ripe_by_waiting_in_the_cold() -> None:
    assert not ferment("sauerkraut", 2).judged(60).usable
