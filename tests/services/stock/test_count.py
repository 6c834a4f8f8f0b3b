"""A round: what differs is booked by its kind, in one transaction, and can be taken back."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from pantry_tui.app.texts import difference_text
from pantry_tui.core.log.payloads import Count
from pantry_tui.core.words import Verdict
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.batchwork import putup
from pantry_tui.services.books import logbook
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import act, one_batch, places, undo, view
from pantry_tui.services.stock import count as rounds

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    """Peaches 2A (4), beans 3A (3) on shelf 1; jam 4A (2) on shelf 2; both in the cellar."""
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        places.add(pantry, "cellar", "cellar")
        for name in ("shelf 1", "shelf 2"):
            places.add(pantry, name, "cellar", "cellar")
        for line in (
            "4 pint jars peaches, boiling-water canned, shelf 1",
            "3 pint jars runner beans, pressure canned, shelf 1",
            "2 jars strawberry jam, jam, shelf 2",
        ):
            putup.put_up(pantry, putup.read(pantry, line))
        yield pantry


def up(p: Pantry, line: str) -> str:
    return putup.put_up(p, putup.read(p, line)).code


def counts(p: Pantry) -> dict[str, int]:
    found: dict[str, int] = {}
    for row in view.due(p):
        found[row.code] = found.get(row.code, 0) + row.count
    return found


def test_differences_are_booked_by_their_kind(p: Pantry) -> None:
    cellar = p.find_place("cellar")
    by_code = {line.code: line for line in rounds.lines(p, cellar)}
    assert [line.place for line in rounds.lines(p, cellar)] == sorted(
        line.place for line in rounds.lines(p, cellar)
    )
    rounds.count(p, cellar, by_code["2A"].key, 3)
    rounds.count(p, cellar, by_code["3A"].key, 0)
    rounds.count(p, cellar, by_code["4A"].key, 4)
    booked = {one.code: one.booked_as for one in rounds.differences(p, cellar)}
    assert booked == {"2A": "unrecorded use", "3A": "missing", "4A": "found"}
    before = len(p.events)
    rounds.finish(p, cellar)
    done = p.events[before:]
    assert len({one.together for one in done}) == 1, "one transaction"
    counted = [one.payload for one in done if isinstance(one.payload, Count)]
    assert [p.places[one.place].name for one in counted] == ["shelf 1", "shelf 2", "cellar"]
    assert [one.within for one in counted] == [cellar.id, cellar.id, ""]
    says = [one.says for one in logbook.entries(p)][-3:]
    assert says[0] == "counted cellar › shelf 1, with cellar"
    assert "fewer" in says[-1]
    assert counts(p) == {"2A": 3, "4A": 4}
    assert any("unrecorded use" in one for one in one_batch.show(p, "2A").gone)
    assert rounds.draft(p, cellar).seen == {}
    undo.undo(p)
    assert counts(p) == {"2A": 4, "3A": 3, "4A": 2}


def test_what_was_missing_comes_back_when_it_is_found(p: Pantry) -> None:
    shelf = p.find_place("shelf 1")
    rounds.from_counts(p, shelf, {"2A": 2})
    rounds.finish(p, shelf)
    assert counts(p)["2A"] == 2
    rounds.from_counts(p, shelf, {"2A": 5})
    rounds.finish(p, shelf)
    names = {name for row in one_batch.show(p, "2A").rows for name in row.container_ids}
    assert names == {"2A/1", "2A/2", "2A/3", "2A/4", "2A/5"}, "two back, one never recorded"


def test_one_batch_found_in_two_places_gets_numbers_of_its_own(p: Pantry) -> None:
    act.move(p, "2A/4", "shelf 2")
    cellar = p.find_place("cellar")
    for line in rounds.lines(p, cellar):
        if line.code == "2A":
            rounds.count(p, cellar, line.key, line.expected + 2)
    rounds.finish(p, cellar)
    names = [name for row in one_batch.show(p, "2A").rows for name in row.container_ids]
    assert sorted(names) == [f"2A/{n}" for n in range(1, 9)]
    assert counts(p)["2A"] == 8


def test_a_round_survives_a_closed_program_and_goes_on(p: Pantry) -> None:
    shelf = p.find_place("shelf 1")
    first = rounds.lines(p, shelf)[0]
    rounds.count(p, shelf, first.key, 1)
    with open_pantry(p.path, TODAY) as again:
        place = again.find_place("shelf 1")
        assert rounds.draft(again, place).at == first.key
        assert rounds.lines(again, place)[0].seen == 1
        assert counts(again) == counts(p), "nothing is booked yet"
        rounds.give_up(again, place)
        assert rounds.lines(again, place)[0].seen is None


def test_what_nobody_recorded_is_added_with_no_date_and_judged_strictly(p: Pantry) -> None:
    shelf = p.find_place("shelf 1")
    with pytest.raises(BadInput):
        rounds.add_find(p, shelf, "2 jars zzyzx, dried")
    rounds.add_find(p, shelf, "2 pint jars pears, boiling-water canned")
    rounds.add_find(p, shelf, "1 jar plums, boiling-water canned")
    rounds.finish(p, shelf)
    rows = {row.food: row for row in view.due(p)}
    assert rows["pears"].count == 2
    assert rows["pears"].verdict is Verdict.UNKNOWN
    assert rows["pears"].best_by is None
    assert rows["pears"].code != rows["plums"].code


def test_the_place_remembers_and_the_stalest_fullest_comes_next(p: Pantry) -> None:
    assert all(one.days is None for one in rounds.next_places(p))
    assert rounds.next_places(p)[0].place.name == "shelf 1", "it holds most"
    count_all(p, "shelf 1")
    p.today += timedelta(days=10)
    following = [(one.place.name, one.days) for one in rounds.next_places(p)]
    assert following == [("shelf 2", None), ("shelf 1", 10)]


def test_what_stands_in_a_place_is_counted_with_it(p: Pantry) -> None:
    """Each shelf as far as its lines were looked at, and no more than was."""
    putup.put_up(p, putup.read(p, "2 jars plum jam, jam, cellar"))
    count_all(p, "cellar")
    assert {one.days for one in rounds.next_places(p)} == {0}
    undo.undo(p)
    assert {one.days for one in rounds.next_places(p)} == {None}
    cellar = p.find_place("cellar")
    for line in rounds.lines(p, cellar):
        if line.food in ("runner beans", "strawberry jam"):
            rounds.count(p, cellar, line.key, line.expected)
    rounds.finish(p, cellar)
    said = {one.place.name: rounds.since(one) for one in rounds.next_places(p)}
    assert said == {
        "cellar": "never counted whole, in part today",
        "shelf 1": "never counted whole, in part today",
        "shelf 2": "counted today",
    }


def count_all(p: Pantry, place: str) -> None:
    shelf = p.find_place(place)
    for line in rounds.lines(p, shelf):
        rounds.count(p, shelf, line.key, line.expected)
    rounds.finish(p, shelf)


def test_a_count_that_is_begun_stands_first_and_says_how_far_it_got(p: Pantry) -> None:
    shelf = p.find_place("shelf 2")
    assert rounds.next_places(p)[0].place.name == "shelf 1"
    line = rounds.lines(p, shelf)[0]
    rounds.count(p, shelf, line.key, line.expected)
    first = rounds.next_places(p)[0]
    assert first.place.name == "shelf 2"
    total = len(rounds.lines(p, shelf))
    assert rounds.since(first) == f"begun, 1 of {total} line{'s' * (total > 1)} counted"
    rounds.uncount(p, shelf, line.key)
    assert rounds.next_places(p)[0].place.name == "shelf 1"


def test_a_count_that_left_out_a_line_is_one_in_part(p: Pantry) -> None:
    shelf = p.find_place("shelf 1")
    rounds.count(p, shelf, rounds.lines(p, shelf)[0].key, rounds.lines(p, shelf)[0].expected)
    assert "not counted" in rounds.finish(p, shelf).message
    assert p.find_place("shelf 1").checked is None
    part = next(one for one in rounds.next_places(p) if one.place.name == "shelf 1")
    assert (part.days, part.in_part) == (None, 0)
    assert rounds.since(part) == "never counted whole, in part today"
    p.today += timedelta(days=1)
    count_all(p, "shelf 1")
    whole = next(one for one in rounds.next_places(p) if one.place.name == "shelf 1")
    assert rounds.since(whole) == "counted today", "the part is no news beside the whole"


def test_counts_that_cannot_be_are_refused(p: Pantry) -> None:
    shelf = p.find_place("shelf 1")
    for bad in (-1, 1000):
        with pytest.raises(BadInput):
            rounds.count(p, shelf, rounds.lines(p, shelf)[0].key, bad)
    with pytest.raises(Refused):
        rounds.from_counts(p, shelf, {"4A": 1})
    with pytest.raises(BadInput):
        rounds.from_counts(p, shelf, {"9Z": 1})


def test_a_crate_is_weighed_and_a_jar_is_looked_at(larder: Pantry) -> None:
    p = larder
    crate = up(p, "1 40 lb crate potatoes, cellar-stored, larder")
    jar = up(p, "2 pint jars dill pickles, vinegar pickle, larder, vinegar=5%")
    place = p.find_place("larder")
    less = rounds.by_amount(p, place, {f"{crate}/1": "31 lb", f"{jar}/1": "half"})
    told = rounds.finish(p, place, less).message
    assert f"9 lb of {crate}/1 unrecorded use" in told
    held = {row.code: row.amount for row in view.due(p) if row.amount}
    assert held == {crate: "31 lb", jar: "1/2 pint"}
    assert rounds.by_amount(p, place, {f"{crate}/1": "31 lb"}) == [], "nothing differs"
    with pytest.raises(Refused, match="is more"):
        rounds.by_amount(p, place, {f"{crate}/1": "32 lb"})
    undo.undo(p)
    assert {row.amount for row in view.due(p)} == {"40 lb", ""}


def test_a_pile_is_counted_piece_by_piece(larder: Pantry) -> None:
    p = larder
    code = up(p, "10 winter squash, cellar-stored, larder")
    place = p.find_place("larder")
    (line,) = rounds.lines(p, place)
    assert (line.expected, line.pieces) == (10, True)
    rounds.from_counts(p, place, {code: 7})
    assert "3 winter squash unrecorded use" in rounds.finish(p, place).message
    assert view.due(p)[0].amount == "7"
    with pytest.raises(BadInput, match="Only 7"):
        rounds.from_counts(p, place, {code: 8})
    rounds.from_counts(p, place, {code: 0})
    rounds.finish(p, place)
    assert not view.due(p)


@pytest.fixture
def other(p: Pantry) -> Iterator[Pantry]:
    """A second window on the same store."""
    with open_pantry(p.path, TODAY) as pantry:
        yield pantry


def test_a_line_that_another_window_counted_is_not_overwritten_unseen(
    p: Pantry, other: Pantry
) -> None:
    shelf = p.find_place("shelf 1")
    line = rounds.lines(p, shelf)[0]
    shown = rounds.draft(p, shelf)
    rounds.count(other, shelf, line.key, 1, saw=shown)
    with pytest.raises(Refused, match=rf"^{line.code} .* in another window .* says 1 now"):
        rounds.count(p, shelf, line.key, 3, saw=shown)
    assert rounds.draft(p, shelf).seen == {line.key: 1}
    rounds.count(p, shelf, line.key, 3, saw=rounds.draft(p, shelf))
    assert rounds.draft(other, shelf).seen == {line.key: 3}, "whoever has seen it may"


def test_two_windows_count_one_place_and_both_counts_stand(p: Pantry, other: Pantry) -> None:
    shelf = p.find_place("shelf 1")
    first, second = rounds.lines(p, shelf)[:2]
    shown = rounds.draft(p, shelf)
    rounds.count(p, shelf, first.key, 1, saw=shown)
    rounds.count(other, shelf, second.key, 2, saw=shown)
    assert rounds.draft(p, shelf).seen == {first.key: 1, second.key: 2}


@pytest.mark.parametrize("end", [rounds.finish, rounds.give_up, rounds.take_back])
def test_who_ends_a_count_is_told_of_what_another_window_counted(
    p: Pantry, other: Pantry, end: Callable[..., object]
) -> None:
    shelf = p.find_place("shelf 1")
    first, second = rounds.lines(p, shelf)[:2]
    rounds.count(p, shelf, first.key, 1)
    shown, before = rounds.draft(p, shelf), len(p.events)
    rounds.count(other, shelf, second.key, 0)
    with pytest.raises(Refused, match=second.food):
        end(p, shelf, saw=shown)
    rounds.uncount(other, shelf, second.key)
    rounds.add_find(other, shelf, "1 jar plums, boiling-water canned")
    with pytest.raises(Refused, match="unlisted"):
        end(p, shelf, saw=shown)
    assert len(p.events) == before
    end(p, shelf, saw=rounds.draft(p, shelf))


def test_a_count_that_another_window_booked_is_not_booked_again(p: Pantry, other: Pantry) -> None:
    shelf = p.find_place("shelf 1")
    first = rounds.lines(p, shelf)[0]
    rounds.count(p, shelf, first.key, 1)
    shown = rounds.draft(p, shelf)
    rounds.finish(other, shelf, saw=shown)
    before = len(other.events)
    with pytest.raises(Refused, match="ended in another window"):
        rounds.finish(p, shelf, saw=shown)
    with open_pantry(p.path, TODAY) as again:
        assert len(again.events) == before


def test_a_count_by_command_leaves_the_one_that_a_screen_has_begun(p: Pantry) -> None:
    shelf = p.find_place("shelf 1")
    lines = {line.code: line for line in rounds.lines(p, shelf)}
    rounds.count(p, shelf, lines["3A"].key, 0)
    begun = rounds.draft(p, shelf)
    found = rounds.count_now(p, shelf, {"2A": 2})
    assert [one.code for one in found.differs] == ["2A"]
    assert counts(p)["3A"] == 3, "what the screen counted is not booked"
    assert rounds.draft(p, shelf) == begun
    with pytest.raises(BadInput):
        rounds.count_now(p, shelf, {"9Z": 1})
    assert rounds.draft(p, shelf) == begun


def test_more_than_was_ever_put_up_is_shown_as_perhaps_a_slip_before_it_is_booked(
    p: Pantry,
) -> None:
    """A figure typed twice makes jars that nobody put up."""
    cellar = p.find_place("cellar")
    by_code = {line.code: line for line in rounds.lines(p, cellar)}
    rounds.count(p, cellar, by_code["2A"].key, 44)
    rounds.count(p, cellar, by_code["3A"].key, 2)
    found = rounds.differences(p, cellar)
    assert {one.code: one.ever for one in found} == {"2A": 4, "3A": None}
    assert "4 were ever put up: a slip?" in difference_text(found, 0)
