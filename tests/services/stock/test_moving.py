"""The answer to a move says what to do with what may not stand there, and how soon: by the moment
on which it was moved, not by that of the booking."""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from pantry_tui.core import dates
from pantry_tui.core.words import Verdict
from pantry_tui.errors import Refused
from pantry_tui.services.batchwork import putup, repack
from pantry_tui.services.clock import Clock
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import act, one_batch, places
from pantry_tui.services.stock.freezing import freeze
from pantry_tui.services.stock.seen import At

TODAY = date(2026, 11, 25)
NOON = 12 * 60
COLD = (
    "2 jars dill pickles, fridge pickle, fridge, 2026-11-20",
    "2 jars strawberry freezer jam, fridge, 2026-11-20",
    "2 boxes chicken soup, fridge, 2026-11-24",
    "30 eggs, fridge, 2026-11-20",
)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        pantry.clock = Clock(TODAY, NOON)
        for name, climate in (("larder", "pantry"), ("fridge", "fridge"), ("freezer", "freezer")):
            places.add(pantry, name, climate)
        yield pantry


def _up(p: Pantry, line: str) -> str:
    return putup.put_up(p, putup.read(p, line)).code


def _verdict(p: Pantry, code: str) -> Verdict:
    return one_batch.show(p, code).rows[0].verdict


@pytest.mark.parametrize("line", COLD)
def test_the_two_hours_run_from_the_move_that_was_told(p: Pantry, line: str) -> None:
    fresh, hour_ago, over, before = (_up(p, line) for _ in range(4))
    said = act.move(p, fresh, "larder").warnings[0]
    assert "within 120 minutes" in said
    said = act.move(p, hour_ago, "larder", at=At(TODAY, NOON - 60)).warnings[0]
    assert "within 60 minutes" in said
    assert _verdict(p, hour_ago) is not Verdict.DISCARD
    for code, then in ((over, At(TODAY, NOON - 121)), (before, At(date(2026, 11, 24), 20 * 60))):
        said = act.move(p, code, "larder", at=then).warnings[0]
        assert "discard it" in said
        assert "minutes" not in said
        assert "book that too" in said
        assert _verdict(p, code) is Verdict.DISCARD


def test_what_thawed_too_long_ago_is_not_told_to_be_frozen_again(p: Pantry) -> None:
    code = _up(p, "2 packs ground beef, frozen, freezer, 2026-11-01")
    act.thaw(p, f"{code}/1", at=At(date(2026, 11, 20)))
    act.thaw(p, f"{code}/2", at=At(date(2026, 11, 24)))
    (late,) = act.move(p, f"{code}/1", "freezer").warnings
    assert "must go" in late
    assert "Never taste" in late
    (good,) = act.move(p, f"{code}/2", "freezer").warnings
    assert "allowed" in good
    assert "(Thu 26 Nov 2026) stays as it was" in good


def test_what_must_go_is_told_so_wherever_it_is_moved(p: Pantry) -> None:
    code = _up(p, "2 boxes chicken soup, fridge, 2026-11-10")
    assert _verdict(p, code) is Verdict.DISCARD
    (said,) = act.move(p, code, "freezer").warnings
    assert "must go, wherever it stands" in said


def test_a_move_of_before_says_since_when_it_is_thawed(p: Pantry) -> None:
    code = _up(p, "2 bags strawberries, frozen, freezer, 2026-11-01")
    said = act.move(p, code, "fridge", at=At(date(2026, 11, 20)))
    assert "thawed from Fri 20 Nov 2026" in said.message
    assert "discard it" in said.warnings[0]
    assert "book that too" not in said.warnings[0]


def test_what_is_put_into_a_freezer_as_it_stands_is_told_its_last_day(p: Pantry) -> None:
    code = _up(p, "2 boxes beef soup, fridge")
    (told,) = act.move(p, f"{code}/1", "freezer").warnings
    last = p.judge(p.stock.containers[f"{_id(p, code)}.1"]).discard_after
    assert last is not None
    assert f"keeps its last day there too, {dates.say(last)}" in told
    assert f"repack {code}/1" in told
    frozen = repack.repack(p, f"{code}/2", "1 box, freezer")
    assert frozen.discard_after is None, "put up anew while it was good, it is frozen food"


@pytest.mark.parametrize(
    "line",
    [
        "2 packs ground beef, fresh, fridge",
        "2 packs chicken thighs, bought in, fridge",
        "2 quart cartons milk, bought in, fridge",
    ],
)
@pytest.mark.parametrize("opened", [False, True])
def test_what_no_figure_names_in_a_freezer_is_told_how_it_becomes_frozen_food(
    p: Pantry, line: str, opened: bool
) -> None:
    code = _up(p, line)
    if opened:
        act.open_(p, f"{code}/1")
    before = p.judge(p.stock.containers[f"{_id(p, code)}.1"]).discard_after
    (told,) = act.move(p, f"{code}/1", "freezer").warnings
    last = p.judge(p.stock.containers[f"{_id(p, code)}.1"]).discard_after
    assert before is not None
    assert last is not None
    assert last <= before
    assert dates.say(last) in told
    assert "correct" not in told
    advised = re.search(r'`repack (\S+) "([^"]+)"`', told)
    assert advised is not None
    frozen = repack.repack(p, advised[1], advised[2])
    assert (frozen.verdict, frozen.discard_after) == (Verdict.SOUND, None)


def test_what_stood_in_a_freezer_beyond_its_last_day_is_not_saved(p: Pantry) -> None:
    code = _up(p, "2 packs ground beef, fresh, fridge")
    act.move(p, code, "freezer")
    p.today += timedelta(days=2)
    assert _verdict(p, code) is Verdict.DISCARD
    with pytest.raises(Refused):
        repack.repack(p, f"{code}/1", "1 box, freezer")


def _id(p: Pantry, code: str) -> str:
    batch = p.batch(code)
    assert batch is not None
    return batch.id


@pytest.mark.parametrize("line", [COLD[2], "2 bags peas, frozen, freezer, 2026-11-20"])
def test_what_was_moved_out_and_back_within_a_minute_stood_no_longer_out(
    p: Pantry, line: str
) -> None:
    code = _up(p, line)
    home = p.where(p.containers_of(p.batch(code))[0])  # type: ignore[arg-type]
    act.move(p, f"{code}/1", "larder")
    told = act.move(p, f"{code}/1", home)
    assert not any("may not stay" in one for one in told.warnings)
    p.clock = Clock(TODAY, NOON + 180)
    rows = one_batch.show(p, code).rows
    assert all(one.usable for one in rows)
    act.move(p, f"{code}/2", "larder")
    p.clock = Clock(TODAY, NOON + 360)
    assert any(not one.usable for one in one_batch.show(p, code).rows)


def test_of_two_hours_that_were_told_either_may_be_the_later(p: Pantry) -> None:
    code = _up(p, COLD[2])
    p.clock = Clock(TODAY, NOON + 180)
    for place in ("larder", "fridge"):
        act.move(p, f"{code}/1", place, at=At(TODAY, NOON))
    assert any(not one.usable for one in one_batch.show(p, code).rows)


@pytest.mark.parametrize("ref", ["{}", "{}/2"])
def test_what_is_over_of_the_same_batch_is_said(p: Pantry, ref: str) -> None:
    code = _up(p, "3 bags peas, frozen, freezer, 2026-11-01")
    act.thaw(p, f"{code}/1", at=At(TODAY - timedelta(days=8)))
    told = act.use(p, ref.format(code))
    assert told.containers == (f"{code}/2",)
    (over,) = (one for one in told.warnings if "must go" in one)
    assert f"{code}/1 peas in fridge is thawed" in over
    assert f"`discard {code}/1`" in over
    act.discard(p, f"{code}/1", why="too old")
    assert not any("must go" in one for one in act.use(p, f"{code}/3").warnings)


def test_what_is_begun_and_good_is_no_reason_to_discard(p: Pantry) -> None:
    code = _up(p, "3 bags peas, frozen, freezer, 2026-11-01")
    act.thaw(p, f"{code}/1")
    assert not any("must go" in one for one in act.use(p, f"{code}/2").warnings)


@pytest.mark.parametrize(
    ("line", "laid"),
    [
        ("1 box of 12 eggs, fresh, freezer", True),
        ("1 box of 12 eggs, frozen, freezer", False),
        ("2 pint jars eggs, fresh, freezer", True),
        ("1 box of 12 beaten eggs, frozen, freezer", False),
        ("2 half-pint jars eggs, frozen, freezer", False),
        ("1 bag eggs, frozen, freezer", False),
    ],
)
def test_eggs_that_go_into_a_freezer_as_they_were_laid_are_not_sound(
    p: Pantry, line: str, laid: bool
) -> None:
    made = putup.put_up(p, putup.read(p, line))
    assert (made.verdict is not Verdict.SOUND) is laid


def test_fresh_eggs_are_moved_into_a_freezer_and_never_frozen_there(p: Pantry) -> None:
    code = _up(p, "2 boxes of 12 eggs, fresh, fridge, 2026-11-20")
    told = freeze(p, [f"{code}/1"], "freezer")
    assert told.containers == (f"{code}/1",)
    assert any("may not stand" in one for one in told.warnings)


@pytest.mark.parametrize(
    ("line", "laid"),
    [
        ("2 boxes, freezer", True),
        ("2 boxes, frozen, freezer", False),
        ("2 boxes, freezer, note=beaten", False),
    ],
)
def test_fresh_eggs_that_are_only_filled_over_into_a_freezer_are_in_their_shells(
    p: Pantry, line: str, laid: bool
) -> None:
    code = _up(p, "2 boxes of 12 eggs, fresh, fridge, 2026-11-20")
    made = repack.repack(p, f"{code}/1", line)
    assert (made.verdict is not Verdict.SOUND) is laid
