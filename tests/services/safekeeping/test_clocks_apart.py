"""Two computers whose clocks differ by minutes, and one log made of theirs: no food loses more by
it than those minutes."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from datetime import date, timedelta
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pantry_tui.core.log.payloads import ClockAhead
from pantry_tui.services.batchwork import putup
from pantry_tui.services.clock import Clock
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.safekeeping.transfer import export_log, import_log
from pantry_tui.services.stock import act, moving, places, readings
from tests.examples import many

LONG_SINCE = Clock(date(2026, 9, 1), 600)
START = date(2026, 11, 28)
Act = Callable[[Pantry], object]
Days = dict[tuple[str, int], date | None]


def up(line: str) -> Act:
    return lambda p: putup.put_up(p, putup.read(p, line))


#: What the other computer books, each a minute after the one before, and nothing the household
#: had before hurts: it moves days only by when it happens.
ACTS: dict[str, Act] = {
    "soup": up("3 boxes chicken soup, fridge"),
    "mince": up("2 packs ground beef, fresh, fridge"),
    "thaw": lambda p: act.thaw(p, "2A/1"),
    "open": lambda p: act.open_(p, "3A/1"),
    "to table": lambda p: moving.move(p, "4A/1", "kitchen"),
    "back": lambda p: moving.move(p, "4A/1", "fridge"),
    "read": lambda p: readings.read(p, "fridge", 38),
}


def by(minute: int) -> Clock:
    days, left = divmod(minute, 1440)
    return Clock(START + timedelta(days=days), left)


def at(path: Path, minute: int, *acts: Act) -> None:
    with open_pantry(path, by(minute)) as p:
        for one in acts:
            one(p)


@pytest.fixture(scope="module")
def shared(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """What both have: put up long ago, but a soup that was made on the day before."""
    path = tmp_path_factory.mktemp("shared") / "store.db"
    create(path, people=2, altitude_ft=800, clock=LONG_SINCE)
    with open_pantry(path, LONG_SINCE) as p:
        for name, climate in (
            ("fridge", "fridge"), ("freezer", "freezer"), ("pantry", "pantry"), ("kitchen", "room"),
        ):  # fmt: skip
            places.add(p, name, climate)
        up("2 packs ground beef, frozen, freezer")(p)
        up("2 quart jars peaches, boiling-water canned minutes=25 pack=hot, pantry")(p)
    at(path, -1440 - 600, up("2 boxes beef stew, fridge"))
    return path


def merged(shared: Path, acts: tuple[str, ...], minute: int, ahead: int, then: int = 1) -> Days:
    """The last days of all containers, by the clock of home: where the other computer's clock is
    so many minutes ahead, what it booked from `minute` on came home at once, and home booked jam
    `then` minutes after."""
    with TemporaryDirectory() as folder:
        home, other = Path(folder) / "home.db", Path(folder) / "other.db"
        log = Path(folder) / "other.json"
        shutil.copy(shared, home)
        shutil.copy(shared, other)
        for n, name in enumerate(acts):
            at(other, minute + n + ahead, ACTS[name])
        end = minute + len(acts)
        at(other, end + ahead, lambda p: export_log(p, log))
        import_log(home, log, by(end).today)
        at(home, end + then, up("2 half-pint jars plum jam, pantry minutes=10"))
        found: Days = {}
        with open_pantry(home, by(end + then)) as p:
            for box in p.stock.containers.values():
                code = p.stock.batches[box.batch].code
                found[code, box.number] = p.judge(box).discard_after
        return found


def in_turn(some: list[str]) -> tuple[str, ...]:
    """Four of them; what is taken to the table comes back."""
    return tuple(two for one in some[:4] for two in (one, "back")[: 1 + (one == "to table")])


@settings(max_examples=many(8))
@given(
    st.permutations([one for one in ACTS if one != "back"]).map(in_turn),
    st.integers(-40, 40) | st.integers(-90, 1440),
    st.integers(-30, 30),
    st.integers(0, 12),
)
def test_no_last_day_moves_further_than_the_minutes_between_the_clocks(
    shared: Path, acts: tuple[str, ...], minute: int, ahead: int, then: int
) -> None:
    right, wrong = (merged(shared, acts, minute, one, then) for one in (0, ahead))
    touched = minute - abs(ahead), minute + len(acts) + then + abs(ahead)
    nights = timedelta(days=(touched[1] // 1440) - (touched[0] // 1440))
    assert right.keys() == wrong.keys()
    for name, last in right.items():
        moved = wrong[name]
        assert (last is None) == (moved is None), name
        if last is not None and moved is not None:
            assert abs(last - moved) <= nights, name


@pytest.mark.parametrize("ahead", [4, 10, 30])
def test_supper_is_of_its_day_though_home_booked_a_week_before(shared: Path, ahead: int) -> None:
    evening = 18 * 60 + 45
    found = merged(shared, ("soup", "mince"), evening, ahead)
    assert (found["5A", 1], found["6A", 1]) == (date(2026, 12, 1), date(2026, 11, 29))


def test_what_may_be_of_the_evening_before_counts_as_of_it(shared: Path) -> None:
    """Told at ten past midnight, by a clock that was twenty minutes ahead."""
    found = merged(shared, ("soup",), -10, 20, then=0)
    assert found["5A", 1] == date(2026, 11, 30)


def test_it_is_in_the_log_that_clocks_differed_and_stands_against_nothing(
    shared: Path, tmp_path: Path
) -> None:
    home = Path(shutil.copy(shared, tmp_path / "home.db"))
    at(home, 600, ACTS["soup"])
    at(home, 580, up("2 half-pint jars plum jam, pantry minutes=10"))
    with open_pantry(home, by(600)) as p:
        assert any(isinstance(one.payload, ClockAhead) for one in p.events)
        assert all("clock" not in one for box in p.stock.containers.values()
                   for one in p.judge(box).standing)  # fmt: skip
