"""A week is proposed, accepted, and eaten day by day; nothing unfit is ever in it."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from pantry_tui.core.rotation import UNFIT
from pantry_tui.core.words import Group, State, Verdict
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services import act, appetite, signs, view
from pantry_tui.services import week as weeks
from pantry_tui.services.demo import build_demo
from pantry_tui.services.pantry import Pantry, open_pantry

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    build_demo(tmp_path / "demo.db", TODAY)
    with open_pantry(tmp_path / "demo.db", TODAY) as pantry:
        yield pantry


def test_a_week_is_fit_spread_and_thawed_in_time(p: Pantry) -> None:
    found = weeks.week(p)
    by_name = {name: row for row in view.due(p) for name in row.container_ids}
    assert len({take.day for take in found.take}) >= 5
    for take in found.take:
        assert found.start <= take.day <= found.end
        assert take.thaw_by is None or p.today <= take.thaw_by < take.day
        for name in take.containers:
            row = by_name[name]
            assert row.verdict not in UNFIT and row.verdict is not Verdict.UNKNOWN
            assert row.discard_after is None or take.day <= row.discard_after
    offered = {name for take in found.take for name in take.containers}
    must = [
        row for row in view.due(p)
        if row.state in (State.OPEN, State.THAWED) and row.verdict not in UNFIT
        and row.verdict is not Verdict.UNKNOWN
    ]  # fmt: skip
    assert all(set(row.container_ids) <= offered for row in must)


def test_accepting_books_nothing_and_eating_a_day_books_all_of_it(p: Pantry) -> None:
    before = len(p.events)
    weeks.accept(p)
    assert len(p.events) == before
    found = weeks.week(p)
    assert found.accepted
    day = found.take[0].day
    names = {name for take in found.take if take.day == day for name in take.containers}
    weeks.eaten(p, day)
    assert not any(take.day == day for take in weeks.week(p).take)
    left = {name for row in view.due(p) for name in row.container_ids}
    assert not names & left
    act.undo(p)
    assert {name for row in view.due(p) for name in row.container_ids} >= names
    with pytest.raises(Refused):
        weeks.eaten(p, day + timedelta(days=30))


def test_what_turns_unfit_leaves_the_accepted_week(p: Pantry) -> None:
    weeks.accept(p)
    take = next(t for t in weeks.week(p).take if t.food == "runner beans")
    name = take.containers[0]
    words = next(w for w in signs.possible_words(p, name) if "leak" in w)
    signs.mark(p, name, words)
    assert not any(name in t.containers for t in weeks.week(p).take)


def test_what_nobody_likes_is_not_proposed_and_a_ceiling_holds(p: Pantry) -> None:

    def eaten(group: Group) -> dict[str, float]:
        found: dict[str, float] = {}
        for take in weeks.week(p).take:
            if p.batch(take.code).food.group is group:
                found[take.food] = found.get(take.food, 0.0) + take.servings
        return found

    assert "runner beans" in eaten(Group.VEGETABLE) and eaten(Group.FISH)
    appetite.set_ceiling(p, "runner bean", "0")
    appetite.set_ceiling(p, "fish", "0")
    assert "runner beans" not in eaten(Group.VEGETABLE) and not eaten(Group.FISH)
    before = eaten(Group.FRUIT)
    appetite.set_ceiling(p, "fruit", "1")
    after = eaten(Group.FRUIT)
    assert 0 < sum(after.values()) < sum(before.values())
    appetite.set_people(p, 8)
    assert weeks.week(p).people == 8
    for bad in (("moss", "1"), ("fruit", "many"), ("fruit", "-1")):
        with pytest.raises(BadInput):
            appetite.set_ceiling(p, *bad)


def test_what_cannot_be_thawed_in_time_is_not_proposed(p: Pantry) -> None:
    code = next(row.code for row in view.due(p) if row.food == "ground beef"
                and row.state is State.THAWED)  # fmt: skip
    act.move(p, f"{code}/1", "chest freezer")  # refrozen: its date stays, and that is today
    for take in weeks.week(p).take:
        assert f"{code}/1" not in take.containers


def test_an_old_week_makes_room_for_a_new_one(p: Pantry) -> None:
    weeks.accept(p)
    p.today += timedelta(days=7)
    assert not weeks.week(p).accepted
    with pytest.raises(Refused):
        weeks.eaten(p, p.today)
