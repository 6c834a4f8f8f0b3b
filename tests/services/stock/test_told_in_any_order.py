"""What is told late of one container says the same in whatever order it is told."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from contextlib import ExitStack
from datetime import date
from itertools import count, permutations
from pathlib import Path

import pytest

from pantry_tui.core.model import Container
from pantry_tui.core.words import State, Verdict
from pantry_tui.errors import Refused
from pantry_tui.services.batchwork import putup, repack
from pantry_tui.services.batchwork.repack import ready_into
from pantry_tui.services.batchwork.tending import tend
from pantry_tui.services.clock import Clock
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import act, places
from pantry_tui.services.stock.moving import move
from pantry_tui.services.stock.seen import At

MADE, LATE = date(2026, 11, 2), date(2026, 11, 9)
Act = Callable[[Pantry], object]


def at(day: int, hour: float | None = None) -> At:
    return At(MADE.replace(day=day), None if hour is None else round(hour * 60))


def mine(p: Pantry) -> Sequence[Container]:
    batch = p.batch("2A")
    assert batch is not None
    return p.containers_of(batch)


def to(place: str, when: At) -> Act:
    return lambda p: move(p, "2A", place, at=when)


@pytest.fixture
def make(tmp_path: Path) -> Iterator[Callable[[str], Pantry]]:
    """A new store each time that holds what was put up on 2 November, opened a week later."""
    numbers = count()
    with ExitStack() as opened:

        def made(line: str) -> Pantry:
            store = tmp_path / f"{next(numbers)}.db"
            create(store, people=2, clock=Clock(MADE, 480))
            with open_pantry(store, Clock(MADE, 480)) as p:
                for name in ("fridge", "freezer", "cellar", "pantry"):
                    places.add(p, name, name)
                for name in ("other fridge", "third fridge"):
                    places.add(p, name, "fridge")
                putup.put_up(p, putup.read(p, line))
            return opened.enter_context(open_pantry(store, Clock(LATE, 20 * 60)))

        yield made


@pytest.mark.parametrize(
    ("line", "acts"),
    [
        (
            "1 pack trout, hot smoked, fridge",
            (to("freezer", at(6, 21)), to("other fridge", at(3, 16))),
        ),
        (
            "1 pack trout, hot smoked, fridge",
            (to("freezer", at(3, 16)), to("other fridge", at(6, 21))),
        ),
        (
            "1 pack trout, hot smoked, fridge",
            (
                to("freezer", at(3, 16)),
                to("other fridge", at(4, 16)),
                to("third fridge", at(6, 21)),
            ),
        ),
        ("5 lb carrots, fresh, fridge", (to("cellar", at(6, 21)), to("other fridge", at(3, 16)))),
    ],
)
def test_moves_are_judged_by_where_it_stood_then(
    make: Callable[[str], Pantry], line: str, acts: tuple[Act, ...]
) -> None:
    found = set()
    for order in permutations(acts):
        p = make(line)
        for one in order:
            one(p)
        (container,) = mine(p)
        judged = p.judge(container)
        found.add((p.where(container), judged.verdict, judged.discard_after))
    assert len(found) == 1, found


def test_who_tells_of_an_earlier_move_hears_where_it_stands_since(
    make: Callable[[str], Pantry],
) -> None:
    p = make("1 pack trout, hot smoked, fridge")
    to("freezer", at(6, 21))(p)
    said = move(p, "2A", "other fridge", at=at(3, 16)).message
    assert said == "Moved 2A/1 trout to other fridge. It stands in freezer since."
    with pytest.raises(Refused, match="already"):
        move(p, "2A", "freezer", at=at(7, 9))
    with pytest.raises(Refused, match="already"):
        move(p, "2A", "other fridge", at=at(4, 9))


def test_it_stands_where_it_was_said_to_be_at_last(
    make: Callable[[str], Pantry],
) -> None:
    """By hours that nobody knows either move may have been the later one."""
    p = make("20 lb carrots, cellar-stored, cellar")
    to("fridge", at(6, 9))(p)
    to("cellar", at(6))(p)
    (container,) = mine(p)
    assert p.where(container) == "cellar"
    to("fridge", at(7))(p)
    to("cellar", at(6, 20))(p)
    (container,) = mine(p)
    assert p.where(container) == "fridge", "a day later"


@pytest.mark.parametrize("opened", [True, False])
@pytest.mark.parametrize(
    "line",
    [
        "2 pint jars peaches, boiling-water canned, pantry, minutes=30, seal=tight",
        "2 half-pint jars strawberry jam, jam, pantry, minutes=10, seal=tight",
    ],
)
def test_what_was_drawn_on_a_day_was_opened_first_and_stood_in_the_cold_from_then(
    make: Callable[[str], Pantry], line: str, opened: bool
) -> None:
    """One act at an hour that nobody said: it did not stand open in the pantry meanwhile."""
    p = make(line)
    tend(p, "2A", at=at(3))
    if opened:
        act.open_(p, "2A/1", at=at(8, 9))
    act.use(p, "2A/1", "half", at=at(8))
    one, _ = mine(p)
    assert one.state is State.OPEN
    assert p.where(one) == "fridge"
    assert p.judge(one).verdict not in (Verdict.DISCARD, Verdict.UNKNOWN)


def test_a_draw_before_it_was_said_to_be_opened_opened_it(
    make: Callable[[str], Pantry],
) -> None:
    p = make("2 pint jars runner beans, pressure canned, pantry, minutes=20, psi=11")
    tend(p, "2A", at=at(3))
    act.open_(p, "2A/1", at=at(8, 9))
    opened = p.judge(mine(p)[0]).discard_after
    act.use(p, "2A/1", "half", at=at(7))
    drawn = p.judge(mine(p)[0])
    assert opened is not None
    assert drawn.verdict in (Verdict.DISCARD, Verdict.DO_NOT_TASTE)


def test_what_is_found_ready_today_is_ready_now(make: Callable[[str], Pantry]) -> None:
    p = make("1 crock kimchi, lactic ferment, cellar")
    ready_into(p, "2A", "3 quart jars, fridge", at=at(9))
    (crock,) = mine(p)
    assert max(turn.when.first for turn in crock.turns) <= p.clock.now.first


@pytest.mark.parametrize("when", [at(8), at(8, 9)])
def test_what_was_found_ready_and_filled_over_did_not_stand_ready_in_the_warm(
    make: Callable[[str], Pantry], when: At
) -> None:
    p = make("1 crock kimchi, lactic ferment, cellar")
    made = ready_into(p, "2A", "3 quart jars, fridge", at=when)
    assert made.message.startswith("Ready: 2A/1 kimchi. All of it went into 3A")
    batch = p.batch("3A")
    assert batch is not None
    assert {p.judge(one).verdict for one in p.containers_of(batch)} == {Verdict.SOUND}


@pytest.mark.parametrize("draw", [True, False])
@pytest.mark.parametrize(
    "line", ["2 packs trout, hot smoked, fridge", "2 packs bacon, bought, fridge"]
)
def test_a_draw_says_nothing_of_where_it_stood_when_it_stayed_there(
    make: Callable[[str], Pantry], line: str, draw: bool
) -> None:
    """A move that is told later shows that it was taken from where it stood since then."""
    p = make(line)
    if draw:
        act.use(p, "2A/1", "half", at=at(9, 10.5))
    else:
        act.open_(p, "2A/1", at=at(9, 10.5))
    to("pantry", at(9, 10))(p)
    one, *_ = mine(p)
    assert (p.where(one), p.judge(one).verdict) == ("pantry", Verdict.DISCARD)


def test_a_part_that_was_taken_says_nothing_of_where_the_rest_stood(
    make: Callable[[str], Pantry],
) -> None:
    p = make("2 packs trout, hot smoked, fridge")
    repack.repack(p, "2A/1", "1 pack, other fridge", "half", at=at(9, 10.5))
    to("pantry", at(9, 10))(p)
    one, *_ = mine(p)
    assert (p.where(one), p.judge(one).verdict) == ("pantry", Verdict.DISCARD)
