"""Which records an event changes: what is not named here is not folded again after it."""

from __future__ import annotations

from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.payloads import batch_of, place_of, touches
from pantry_tui.core.words import Climate, Rating, State, Verdict
from tests.core.log.book import moved, put_up


def test_the_batch_of_a_container() -> None:
    assert batch_of("0123.4") == "0123"


def test_an_act_touches_its_batch_and_a_reading_none() -> None:
    assert touches(moved("fridge")) == ("b",)
    assert touches(said.Rated("b", Rating.AGAIN)) == ("b",)
    assert touches(said.Reading("fridge", 38.0)) == ()
    assert touches(said.Household(people=2)) == ()


def test_a_count_touches_all_it_found_or_missed_each_once() -> None:
    count = said.Count(
        "larder",
        gone=(said.Gone("b.1", said.Fate.MISSING), said.Gone("b.2", said.Fate.USED)),
        back=(said.Back("c.1", "larder"),),
        new=(said.Found("d", "larder", State.SEALED, ("d.9",)),),
    )
    assert touches(count) == ("b", "c", "d")
    assert touches(said.Count("larder")) == ()


def test_a_put_up_touches_what_it_was_made_from_too() -> None:
    made = put_up(1, batch="j")._replace(parts=(said.Part("b.1"), said.Part("b.2")))
    assert touches(made) == ("j", "b")


def test_a_power_cut_touches_what_older_logs_marked() -> None:
    marks = tuple(said.Mark(id_, Verdict.DISCARD, "") for id_ in ("b.1", "c.1", "b.2"))
    assert touches(said.Outage("freezer", marks=marks)) == ("b", "c")


def test_only_what_speaks_of_a_place_itself_changes_its_record() -> None:
    for payload in (
        said.Reading("p", 38.0),
        said.Outage("p"),
        said.Count("p"),
        said.PlaceAdded("p", "fridge", Climate.FRIDGE),
        said.PlaceChanged("p", name="big fridge"),
        said.PlaceRemoved("p"),
    ):
        assert place_of(payload) == "p"
    assert place_of(moved("p")) == ""
    assert place_of(put_up(1, place="p")) == ""
