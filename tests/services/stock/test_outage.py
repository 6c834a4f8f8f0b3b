"""A power cut in a store: every item judged, one booking, one undo."""

from __future__ import annotations

import time
from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.app.rowtext import row_detail, short_last_day
from pantry_tui.app.texts import batch_text
from pantry_tui.cli.printing.stock import batch, due
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.log import payloads as said
from pantry_tui.core.words import Verdict
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.batchwork import putup
from pantry_tui.services.clock import Clock
from pantry_tui.services.lookup import signs
from pantry_tui.services.output import jsonable
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import act, correct, cut_hours, outage, places, undo, view
from pantry_tui.services.stock.came_later import came_later
from pantry_tui.services.stock.one_batch import show
from pantry_tui.services.stock.seen import At

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for name, climate in (("fridge", "fridge"), ("freezer", "freezer"), ("larder", "pantry")):
            places.add(pantry, name, climate)
        for line in (
            "3 bags ground beef, frozen, freezer, 1 nov",
            "4 bags strawberries, frozen, freezer, 1 nov",
            "2 loaves bread, frozen, freezer, 1 nov",
            "1 tub lasagne, cooked meal, fridge",
            "1 jar garlic, in oil, fridge",
            "2 jars strawberry jam, jam, fridge",
        ):
            putup.put_up(pantry, putup.read(pantry, line.replace("loaves", "bags")))
        yield pantry


def actions(p: Pantry, place: str, hours: float, **known: object) -> dict[str, str]:
    where = p.find_place(place)
    cut = outage.cut_of(p, where, *outage.lasting(p, hours), **known)  # type: ignore[arg-type]
    return {row.food: row.action for row in outage.judge_all(p, where, cut)}


def hours(start: str, end: str) -> float:
    first, last = cut_hours.times(start, end, TODAY)
    assert first is not None
    return (last - first).total_seconds() / 3600


def test_within_the_hold_time_everything_keeps(p: Pantry) -> None:
    assert set(actions(p, "fridge", 4).values()) == {"keep"}
    assert set(actions(p, "freezer", 48, full=True).values()) == {"keep"}
    assert set(actions(p, "freezer", 24).values()) == {"keep"}


def test_beyond_it_each_item_is_judged_by_its_own_row(p: Pantry) -> None:
    cold = actions(p, "fridge", 10)
    assert cold["lasagne"] == cold["garlic"] == "discard"
    assert cold["strawberry jam"] == "keep"
    warm = actions(p, "freezer", 60, full=True, ice=False)
    assert warm["ground beef"] == "discard"
    assert warm["bread"] != "discard"
    icy = actions(p, "freezer", 60, full=True, ice=True)
    assert icy["ground beef"] != "discard"


def test_an_item_that_keeps_through_a_cut_is_no_better_than_it_was(p: Pantry) -> None:
    putup.put_up(p, putup.read(p, "1 tub mayonnaise, bought in, fridge, sold=chilled"))
    rows = {row.food: row for row in view.everything(p)}
    assert rows["mayonnaise"].verdict is Verdict.UNKNOWN
    where = p.find_place("fridge")
    found = outage.judge_all(p, where, outage.cut_of(p, where, *outage.lasting(p, 5)))
    after = {row.food: (row.verdict, row.action) for row in found}
    assert after["mayonnaise"] == (Verdict.UNKNOWN, "keep")


def test_it_is_booked_in_one_go_and_taken_back_in_one(p: Pantry) -> None:
    where = p.find_place("freezer")
    cut = outage.cut_of(p, where, *outage.lasting(p, 60), ice=False)
    before, stock = len(p.events), p.stock
    outage.book(p, where, cut)
    assert len(p.events) == before + 1
    beef = next(row for row in view.due(p) if row.food == "ground beef")
    assert beef.verdict is Verdict.DISCARD
    assert "power cut" in " ".join(beef.reasons).lower()
    with pytest.raises(Refused):
        act.use(p, beef.code)
    undo.undo(p)
    assert p.stock == stock
    outage.book(p, where, cut, discard=True)
    assert not any(row.food == "ground beef" for row in view.due(p))
    undo.undo(p)
    assert p.stock == stock, "one undo takes the whole evening back"


def test_what_must_go_is_counted_and_the_first_of_it_named_with_what_to_type(p: Pantry) -> None:
    where = p.find_place("freezer")
    cut = outage.cut_of(p, where, *outage.lasting(p, 60), ice=False)
    gone = [row for row in outage.judge_all(p, where, cut) if row.verdict in UNFIT]
    done = outage.book(p, where, cut)
    first, n = gone[0], sum(row.count for row in gone)
    name = first.container_ids[0]
    assert n > 1
    assert done.warnings[0].startswith(f"{n} must go. The first of them is {name} {first.food} in ")
    assert done.warnings[0].endswith(f'`discard {name} --why "power cut"`.')
    undo.undo(p)
    thrown = outage.book(p, where, cut, discard=True)
    assert f"{n} discarded" in thrown.message
    assert not any("must go" in one for one in thrown.warnings)


def test_what_a_cut_threw_away_has_no_last_day_but_the_day_since_when(p: Pantry) -> None:
    """The day before the cut was no last day: it was fit until the power went off."""
    where = p.find_place("freezer")
    start, end = cut_hours.times("2026-11-22 06:00", "2026-11-24 23:00", TODAY)
    outage.book(p, where, outage.cut_of(p, where, start, end, ice=False))
    beef = next(row for row in view.due(p) if row.food == "ground beef")
    assert (beef.discard_after, beef.last_day, beef.good_until) == (None, None, None)
    assert beef.why_no_last_day == "must go since 2026-11-22"
    assert not any("Best by" in one for one in beef.reasons)
    shown = show(p, beef.code)
    for told in (batch_text(shown), "\n".join(batch(shown)), row_detail(beef)):
        assert "must go since Sun 22 Nov 2026" in told
        assert "21 Nov" not in told
    assert short_last_day(beef) == "must go now"
    (row,) = (one for one in jsonable.due(view.due(p)) if one["code"] == beef.code)
    assert (row["discard_after"], row["days_left"]) == (None, None)
    assert row["discard_after_why"] == "must go since 2026-11-22"
    assert "must go since 2026-11-22" in "\n".join(due(view.due(p)))


def test_a_cut_changes_nothing_on_a_shelf_and_times_must_be_times(p: Pantry) -> None:
    with pytest.raises(Refused):
        outage.cut_of(p, p.find_place("larder"), *outage.lasting(p, 10))
    assert hours("22:00", "06:00") == 8
    assert hours("2026-11-24 18:00", "2026-11-25 06:30") == 12.5
    assert cut_hours.times("unknown", "06:00", TODAY)[0] is None
    for start, end in (("soon", "06:00"), ("25:00", "06:00"), ("2026-11-25 07:00", "06:00")):
        with pytest.raises(BadInput):
            cut_hours.times(start, end, TODAY)


def test_what_was_written_down_after_a_cut_is_named_and_not_passed_over(p: Pantry) -> None:
    """Whoever takes stock on the evening after a cut is told what the answer leaves out."""
    where = p.find_place("freezer")
    first, last = cut_hours.times("18:00", "09:00", TODAY)
    cut = outage.cut_of(p, where, first, last, ice=False)
    assert came_later(p, where, cut) == ""
    done = putup.put_up(p, putup.read(p, "2 packs pork, frozen, freezer"), at=At(TODAY, 20 * 60))
    said = came_later(p, where, cut)
    assert done.code in said
    assert "put its day right" in said
    assert done.code not in {row.code for row in outage.judge_all(p, where, cut)}
    correct.correct(p, done.code, made="2026-11-01")
    assert came_later(p, where, cut) == ""
    assert done.code in {row.code for row in outage.judge_all(p, where, cut)}
    long_ago = cut_hours.times("2026-11-01 18:00", "2026-11-02 09:00", TODAY)
    assert came_later(p, where, outage.cut_of(p, where, *long_ago)) == ""


def test_what_was_written_down_while_the_power_was_off_is_named_too(p: Pantry) -> None:
    where = p.find_place("freezer")
    cut = outage.cut_of(p, where, *cut_hours.times("08:00", "11:00", TODAY), ice=False)
    done = putup.put_up(p, putup.read(p, "2 packs pork, frozen, freezer"), at=At(TODAY, 10 * 60))
    assert done.code in came_later(p, where, cut)
    earlier = putup.put_up(p, putup.read(p, "2 packs beef, frozen, freezer"), at=At(TODAY, 7 * 60))
    assert earlier.code not in came_later(p, where, cut)


@pytest.mark.parametrize(
    ("start", "end", "lasted"),
    [
        ("2026-10-25 00:30", "2026-10-25 04:00", 4.5),  # the clock was put back at 03:00
        ("2026-10-25 01:45", "2026-10-25 02:30", 1.75),  # 02:30 came twice: the later one
        ("2026-10-25 02:30", "2026-10-25 04:00", 2.5),  # ... and here the earlier
        ("2026-10-20 12:00", "2026-10-20 16:00", 4),  # both before it, booked after it
    ],
)
def test_a_cut_over_the_night_of_the_change_lasts_as_long_as_it_did(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, start: str, end: str, lasted: float
) -> None:
    monkeypatch.setenv("TZ", "Europe/Berlin")
    time.tzset()
    try:
        create(tmp_path / "home.db")
        noon = Clock(date(2026, 10, 25), 12 * 60)
        with open_pantry(tmp_path / "home.db", noon) as p:
            places.add(p, "fridge", "fridge")
            first, last = cut_hours.times(start, end, p.today)
            cut = outage.cut_of(p, p.find_place("fridge"), first, last)
            assert (cut.end.last - cut.start.first) / 60 == lasted
            assert cut.start.day == date.fromisoformat(start[:10])
    finally:
        monkeypatch.undo()
        time.tzset()


def thrown(p: Pantry) -> dict[str, str]:
    """What the log says of what was discarded, by food."""
    return {
        p.stock.batches[one.payload.batch].food.name: one.payload.why
        for one in p.events
        if isinstance(one.payload, said.Discard)
    }


def test_what_had_to_go_before_the_cut_is_logged_for_its_own_reason(p: Pantry) -> None:
    for line in (
        "1 pint jar bean soup, cooked meal, fridge, 10 nov",
        "2 pint jars runner beans, pressure canned, fridge",
        "1 pint jar carrots, pressure canned, minutes=5 psi=5, larder, 1 nov",
        "1 tub chicken stock, cooked meal, fridge, today",
    ):
        putup.put_up(p, putup.read(p, line))
    codes = {row.food: row for row in view.everything(p)}
    beans = codes["runner beans"]
    act.move(p, codes["carrots"].code, "fridge")
    signs.mark(p, beans.container_ids[0], "bulging or leaking")
    where = p.find_place("fridge")
    cut = outage.cut_of(p, where, *outage.lasting(p, 12))
    done = outage.book(p, where, cut, discard=True)
    told = thrown(p)
    assert told["bean soup"] == "past its date"
    assert told["runner beans"] == "swollen lid"
    assert told["carrots"] == "process in doubt"
    assert told["lasagne"] == told["chicken stock"] == "power cut of 12 h"
    how = [one for one in done.warnings if "second bag" in one]
    assert any("runner beans" in one for one in how)
    assert any("carrots" in one for one in how)
    assert not any("lasagne" in one for one in how)


def test_what_the_cut_itself_ended_is_logged_as_the_cut_though_its_date_is_over_by_now(
    p: Pantry,
) -> None:
    putup.put_up(p, putup.read(p, "1 tub bean soup, cooked meal, fridge, 20 nov"))
    where = p.find_place("fridge")
    start, end = cut_hours.times("2026-11-21 06:00", "2026-11-21 20:00", TODAY)
    outage.book(p, where, outage.cut_of(p, where, start, end), discard=True)
    assert thrown(p)["bean soup"] == "power cut of 14 h"


def test_the_first_to_go_is_named_with_its_own_reason(p: Pantry) -> None:
    putup.put_up(p, putup.read(p, "1 tub bean soup, cooked meal, fridge, 10 nov"))
    where = p.find_place("fridge")
    done = outage.book(p, where, outage.cut_of(p, where, *outage.lasting(p, 1)))
    assert '--why "past its date"' in done.warnings[0]


def test_a_jar_that_may_not_be_tasted_says_how_it_is_thrown_away_whatever_the_reason(
    p: Pantry,
) -> None:
    putup.put_up(p, putup.read(p, "2 pint jars carrots, pressure canned, psi=5, larder, 1 nov"))
    putup.put_up(p, putup.read(p, "2 jars raspberry jam, jam, fridge, 1 nov"))
    codes = {row.food: row.code for row in view.everything(p)}
    told = act.discard(p, codes["carrots"], why="nobody would eat it").warnings
    assert any("second bag" in one for one in told)
    told = act.discard(p, codes["raspberry jam"], why="nobody would eat it").warnings
    assert not any("bag" in one for one in told)
