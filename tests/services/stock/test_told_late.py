"""What was done in time and is told late is booked as it happened; what it is now is judged after
it. Only time gives way: what is known to be wrong with it stands in its way at any moment."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.errors import Refused
from pantry_tui.services.batchwork import putup
from pantry_tui.services.batchwork.repack import repack
from pantry_tui.services.clock import Clock
from pantry_tui.services.lookup import signs
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import act, places, readings
from pantry_tui.services.stock.seen import At

MADE = date(2026, 11, 20)
LATE = Clock(date(2026, 11, 24), 12 * 60)
#: Fresh mince: one day.
IN_TIME, TOO_LATE = At(MADE, 18 * 60), At(date(2026, 11, 22), 18 * 60)
DAY_ALONE, DAY_TOO_LATE = At(date(2026, 11, 21)), At(date(2026, 11, 22))

Act = Callable[[Pantry, At | None], object]
ACTS: dict[str, Act] = {
    "use": lambda p, at: act.use(p, "2A", at=at),
    "give": lambda p, at: act.give(p, "2A", at=at),
    "open": lambda p, at: act.open_(p, "2A", at=at),
    "repack": lambda p, at: repack(p, "2A", "2 1-lb packs, frozen, freezer", at=at),
    "part": lambda p, at: repack(p, "2A", "2 1-lb packs, fridge", at=at),
}


@pytest.fixture
def path(tmp_path: Path) -> Path:
    store = tmp_path / "store.db"
    began = Clock(MADE, 600)
    create(store, people=2, clock=began)
    with open_pantry(store, began) as p:
        for name in ("fridge", "freezer", "room"):
            places.add(p, name, name)
        putup.put_up(p, putup.read(p, "1 2-lb pack ground beef, fresh, fridge"))
    return store


@pytest.mark.parametrize("what", ACTS)
@pytest.mark.parametrize("at", [IN_TIME, DAY_ALONE])
def test_what_was_done_in_time_is_booked(path: Path, what: str, at: At) -> None:
    with open_pantry(path, LATE) as p:
        ACTS[what](p, at)
        assert p.events[-1].day == at.day


@pytest.mark.parametrize("what", ACTS)
@pytest.mark.parametrize("at", [None, At(LATE.today), TOO_LATE, DAY_TOO_LATE])
def test_what_came_too_late_is_refused(path: Path, what: str, at: At | None) -> None:
    with open_pantry(path, LATE) as p, pytest.raises(Refused, match="discard"):
        ACTS[what](p, at)


@pytest.mark.parametrize("what", ACTS)
def test_a_sign_seen_since_stands_in_the_way(path: Path, what: str) -> None:
    with open_pantry(path, LATE) as p:
        signs.mark(p, "2A", "mould")
        with pytest.raises(Refused):
            ACTS[what](p, IN_TIME)


@pytest.mark.parametrize("what", ACTS)
def test_the_warm_before_it_stands_in_the_way(path: Path, what: str) -> None:
    """Booked late too: by the moment that is told it had stood too warm for three hours."""
    with open_pantry(path, LATE) as p:
        readings.read(p, "fridge", 55, since=180, at=At(MADE, 17 * 60))
        with pytest.raises(Refused):
            ACTS[what](p, IN_TIME)


@pytest.mark.parametrize("what", ACTS)
def test_it_is_told_what_it_is_now(path: Path, what: str) -> None:
    """What was opened or parted in time has gone over since; what was frozen has not."""
    with open_pantry(path, LATE) as p:
        done = ACTS[what](p, IN_TIME)
        left = [c for c in p.stock.containers.values() if c.here]
        verdicts = {p.judge(c).verdict for c in left}
        if what in ("open", "part"):
            assert verdicts == {Verdict.DISCARD}
            assert "discard" in str(done).casefold()
        elif what == "repack":
            assert verdicts == {Verdict.SOUND}


@pytest.mark.parametrize("what", ["repack", "part"])
def test_a_repack_told_late_was_made_on_its_day(path: Path, what: str) -> None:
    with open_pantry(path, LATE) as p:
        done = ACTS[what](p, IN_TIME)
    assert done.reading.made == MADE  # type: ignore[attr-defined]


@pytest.mark.parametrize("at", [None, At(MADE, 13 * 60), At(MADE, 14 * 60 + 30)])
def test_only_what_came_back_into_the_cold_in_time_need_not_go(path: Path, at: At | None) -> None:
    with open_pantry(path, Clock(MADE, 12 * 60)) as p:
        act.move(p, "2A", "room")
    with open_pantry(path, Clock(MADE, 15 * 60)) as p:
        done = act.move(p, "2A", "fridge", at=at)
        (pack,) = p.stock.containers.values()
        gone = p.judge(pack).verdict is Verdict.DISCARD
    assert gone == (at is None or at.minute != 13 * 60)
    assert any("must go" in one for one in done.warnings) == gone
