"""An accepted week and what is told after it: who comes, what is wanted on which day. What is for
today stays where it was accepted, unless the very thing is named."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from pantry_tui.cli.printing import week as printed
from pantry_tui.core.words import State
from pantry_tui.errors import Refused
from pantry_tui.services.output.kitchen import kitchen
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import appetite, wishes
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.rows import Take
from pantry_tui.services.stock import act, undo, view
from tests.services.plan.putting_up import CANNED, TODAY, fill, up

FRIDAY = TODAY + timedelta(days=2)


@pytest.fixture
def p(four_places: Pantry) -> Pantry:
    return four_places


def on(p: Pantry, day: date) -> list[Take]:
    return [take for take in weeks.week(p).take if day in take.days]


def what(takes: list[Take]) -> set[tuple[str, ...]]:
    return {(take.food, take.amount, *take.containers) for take in takes}


def test_guests_told_after_a_week_is_accepted_are_said_and_the_days_to_come_reworked(
    p: Pantry,
) -> None:
    fill(p)
    weeks.accept(p)
    assert not any("planned for" in one for one in weeks.week(p).notes)
    tonight, before = what(on(p, TODAY)), sum(take.servings for take in on(p, FRIDAY))
    assert tonight
    appetite.read_table(p, "8 on friday")
    (said,) = [one for one in weeks.week(p).notes if "planned for" in one]
    assert said.startswith("Fri 27 Nov 2026: 8 at the table, and planned for 2. ")
    assert "week --accept" in said
    assert "today stays" in weeks.accept(p).message
    assert what(on(p, TODAY)) == tonight
    assert sum(take.servings for take in on(p, FRIDAY)) > before
    assert not any("planned for" in one for one in weeks.week(p).notes)


def test_days_away_told_later_are_said_once_and_reworked(p: Pantry) -> None:
    fill(p)
    weeks.accept(p)
    appetite.read_table(p, "away friday to sunday")
    (said,) = [one for one in weeks.week(p).notes if "planned for" in one]
    assert said.startswith("Fri 27 Nov 2026 to Sun 29 Nov 2026: nobody at home, and planned for 2.")
    weeks.accept(p)
    assert not on(p, FRIDAY)


def test_who_says_away_of_an_accepted_week_hears_that_it_is_accepted_again(p: Pantry) -> None:
    fill(p)
    away, other = "away friday to sunday", "away 20 dec to 22 dec"
    told = " ".join(appetite.read_table(p, away).warnings)
    assert "week --accept" not in told, "nothing is accepted yet"
    appetite.read_table(p, "usual friday to sunday")
    weeks.accept(p)
    assert not appetite.read_table(p, other).warnings, "it is another week"
    (said,) = appetite.read_table(p, away).warnings
    assert "`week --accept`" in said
    assert appetite.set_people(p, 3).warnings == (said,)
    appetite.set_people(p, 2)
    assert not appetite.read_table(p, "usual friday to sunday").warnings, "as it was planned"


def test_on_a_day_on_which_nobody_is_at_home_nothing_lies_and_what_lay_there_is_named(
    p: Pantry,
) -> None:
    fill(p)
    weeks.accept(p)
    only = {
        (take.code, take.food)
        for take in on(p, FRIDAY)
        if take.days == (FRIDAY,) and not any(take.code == one.code for one in on(p, TODAY))
    }
    assert on(p, FRIDAY)
    appetite.read_table(p, "away friday to 1 dec")
    found = weeks.week(p)
    assert not [take for take in found.take if max(take.days) >= FRIDAY]
    assert found.bare == {FRIDAY + timedelta(days=n): "away: nobody at home" for n in range(5)}
    (said,) = [one for one in found.notes if "planned for" in one]
    assert "No day has " in said
    assert all(f"{code} {food}" in said for code, food in only)
    with pytest.raises(Refused, match="household usual 2026-11-27"):
        weeks.eaten(p, FRIDAY)
    p.today = FRIDAY + timedelta(days=1)
    assert not any("Fri 27 Nov 2026: not marked" in one for one in weeks.week(p).notes)


def test_a_day_of_eating_out_is_in_its_place_and_no_sentence_below(p: Pantry) -> None:
    fill(p)
    wishes.out(p, FRIDAY)
    appetite.read_table(p, "8 on sunday")
    found = weeks.week(p)
    assert found.bare == {FRIDAY: "you eat out"}
    assert [day for day, _ in found.seats_said] == [FRIDAY + timedelta(days=2)]
    lines = printed.week(found)
    (at,) = [n for n, line in enumerate(lines) if "you eat out" in line]
    assert lines[at].split() == ["Fri", "27", "Nov", "2026", "you", "eat", "out"]
    assert "Thu 26 Nov" in lines[at - 1]
    assert "Sat 28 Nov" in lines[at + 1]
    paper = kitchen(p)
    (row,) = [n for n, cells in enumerate(paper.rows) if "you eat out" in cells]
    above = 0
    for title, many in paper.parts:
        if above == row:
            assert (title, many) == ("Fri 27 Nov 2026", 1)
        above += many
    assert above == len(paper.rows)


def test_what_is_eaten_stays_eaten_when_the_rest_is_reworked(p: Pantry) -> None:
    fill(p)
    weeks.accept(p)
    weeks.eaten(p, TODAY)
    eaten = weeks.week(p).eaten
    assert eaten
    p.today += timedelta(days=1)
    weeks.accept(p)
    assert weeks.week(p).eaten == eaten
    undo.undo(p)
    assert weeks.week(p).eaten == eaten


def test_a_pin_on_a_later_day_leaves_tonight_alone(p: Pantry) -> None:
    stews, crate = fill(p)
    wishes.pin(p, crate, TODAY)
    weeks.accept(p)
    later = max(take.day for take in weeks.week(p).take)
    tonight = what(on(p, TODAY))
    mine = [take for take in on(p, TODAY) if take.code == stews]
    assert mine
    assert any(take.code == crate for take in on(p, TODAY))
    for code in (stews, crate):
        wishes.pin(p, code, later)
        assert what(on(p, TODAY)) == tonight
        assert any(take.code == code for take in on(p, later))
    wishes.pin(p, mine[0].containers[0], later)
    assert what(on(p, TODAY)) != tonight, "the very jar was named"


def test_the_last_of_it_may_be_moved_from_tonight(p: Pantry) -> None:
    code = up(p, f"1 pint jar beef, {CANNED}")
    weeks.accept(p)
    assert on(p, TODAY)
    wishes.pin(p, code, FRIDAY)
    assert not on(p, TODAY)
    assert [take.code for take in on(p, FRIDAY)] == [code]


def test_away_is_said_once_and_what_is_thawed_is_told_what_to_do_with(p: Pantry) -> None:
    code = up(p, "1 1 lb pack ground beef, frozen, freezer, 2026-11-01")
    act.thaw(p, code)
    appetite.read_table(p, "away tomorrow to 3 dec")
    found = weeks.week(p)
    assert len(found.table) == 6
    assert [text for _, text in found.table_said] == [
        "Thu 26 Nov 2026 to Tue 1 Dec 2026: nobody at home."
    ]
    (said,) = [one for one in weeks.week(p).notes if "ground beef" in one]
    assert "nobody eats at home until then: cook it and freeze the meal, or give it away" in said
    assert "discard it after" in said
    assert "all the same" not in said


def test_eating_out_is_said_day_by_day(p: Pantry) -> None:
    for day in (FRIDAY, FRIDAY + timedelta(days=1)):
        wishes.out(p, day)
    assert [day for day, _ in weeks.week(p).table_said] == [FRIDAY, FRIDAY + timedelta(days=1)]


def test_a_day_that_is_eaten_gets_no_second_dinner(p: Pantry) -> None:
    stews, _ = fill(p)
    weeks.accept(p)
    weeks.eaten(p, TODAY)
    assert TODAY not in {take.day for take in weeks.week(p).take}
    weeks.accept(p)
    assert TODAY not in {take.day for take in weeks.week(p).take}
    wishes.out(p, FRIDAY)
    assert TODAY not in {take.day for take in weeks.week(p).take}
    wishes.leave_out(p, stews)
    assert TODAY not in {take.day for take in weeks.week(p).take}
    assert on(p, TODAY + timedelta(days=1))


def test_what_must_be_eaten_and_is_skipped_is_named(p: Pantry) -> None:
    code = up(p, "1 1-lb pack ground beef, frozen, freezer, 2026-11-01")
    act.thaw(p, code)
    wishes.leave_out(p, code)
    notes = weeks.week(p).notes
    assert any("ground beef must be eaten by" in one and "left out" in one for one in notes)


def test_a_day_that_was_not_marked_is_still_to_be_marked_when_another_is_eaten_out(
    p: Pantry,
) -> None:
    appetite.set_people(p, 4)
    up(p, "10 quart jars chickens, pressure canned, pantry, 2026-09-10, minutes=90 psi=11")
    weeks.accept(p)
    p.today = TODAY + timedelta(days=1)
    before = weeks.week(p).take
    wishes.out(p, p.today)
    found = weeks.week(p).take
    assert {take.containers for take in found} <= {take.containers for take in before}
    assert all(take.servings == 8 for take in found), "no evening has two jars"
    weeks.eaten(p, TODAY)
    assert [row.state for row in view.due(p) if row.state is State.OPEN] == [State.OPEN]
