"""Examples worked by hand: places that stand in places. Each line as in `by_hand_cold`."""

from __future__ import annotations

from collections.abc import Callable

from tests.judging.by_hand_cold import Answer, T
from tests.judging.telling import Telling


def boxed(climate: str | None = "fridge", target: float | None = None) -> Telling:
    """A stew in a box in the fridge."""
    t = T().on(-1, 10).place("box", climate, "fridge", target)
    return t.on(0, 10).put("stew", "cooked meal", "box")


def iced() -> Telling:
    """Ground beef in the ice box of the fridge."""
    t = T().on(-1, 10).place("ice box", "freezer", "fridge")
    return t.on(0, 10).put("ground beef", "frozen", "ice box")


WITHIN: list[tuple[str, Callable[[], Answer], Answer]] = [
    (
        "law 7.2: what was read of the fridge strikes what stands in its box",
        lambda: boxed().on(1, 12).read("fridge", 45.0, since=121).answer(1, 13),
        (1, False),
    ),
    (
        "and what stands in a drawer of that box",
        lambda: (
            T()
            .on(-1, 10)
            .place("box", "fridge", "fridge")
            .place("drawer", "fridge", "box")
            .on(0, 10)
            .put("stew", "cooked meal", "drawer")
            .on(1, 12)
            .read("fridge", 45.0, since=121)
            .answer(1, 13)
        ),
        (1, False),
    ),
    (
        "of another fridge it says nothing",
        lambda: boxed().on(1, 12).read("second fridge", 45.0, since=121).answer(1, 13),
        (3, True),
    ),
    (
        "lax: the box was read cold an hour before",
        lambda: (
            boxed()
            .on(1, 11)
            .read("box", 38.0)
            .on(1, 12)
            .read("fridge", 45.0, since=600)
            .answer(1, 13)
        ),
        (3, True),
    ),
    (
        "a target above 40 F is the warmth of its box too",
        lambda: boxed().on(1, 8).change("fridge", None, 45.0).answer(1, 13),
        (1, False),
    ),
    (
        "unless another was said of the box",
        lambda: boxed(target=38.0).on(1, 8).change("fridge", None, 45.0).answer(1, 13),
        (3, True),
    ),
    (
        "README: a box in the fridge is as the fridge is, also when it is one no more",
        lambda: boxed(None).on(1, 8).change("fridge", "room").answer(1, 13),
        (1, False),
    ),
    (
        "also where the box was said to be a fridge: what is like it becomes what it becomes",
        lambda: boxed().on(1, 8).change("fridge", "room").answer(1, 13),
        (1, False),
    ),
    (
        "law 7.2: the power of the fridge is that of its box",
        lambda: boxed().on(1, 8).cut("fridge", 4.5).answer(1, 20),
        (1, False),
    ),
    (
        "cuts of both adjoin and add up",
        lambda: boxed().on(1, 8).cut("box", 3.5).on(1, 12).cut("fridge", 3.5).answer(1, 20),
        (1, False),
    ),
    (
        "lax: what was read of a fridge says nothing of its ice box",
        lambda: iced().on(5, 12).read("fridge", 50.0, since=600).answer(30),
        (None, True),
    ),
    (
        "its power is: a freezer, not said to be full, holds a day",
        lambda: iced().on(5, 8).cut("fridge", 20).answer(30),
        (None, True),
    ),
    (
        "and after that day two hours",
        lambda: iced().on(5, 8).cut("fridge", 27).answer(30),
        (6, False),
    ),
    (
        "a basket in a freezer is as warm as the freezer was read",
        lambda: (
            T()
            .on(-1, 10)
            .place("basket", "freezer", "chest")
            .on(0, 10)
            .put("ground beef", "frozen", "basket")
            .on(5, 12)
            .read("chest", 50.0, since=180)
            .answer(30)
        ),
        (5, False),
    ),
]
