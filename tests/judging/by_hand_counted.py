"""Examples worked by hand: what a count finds again. Each line as in `by_hand_cold`."""

from __future__ import annotations

from collections.abc import Callable

from tests.judging.by_hand_cold import Answer, T, stew


def gone_one_open() -> T:
    """Two jars, one of them open, both missing since the third day; it is the fourth."""
    jars = T().on(0, 10).put("runner beans", "pressure canned", "larder")
    gone = jars.on(3, 9).opened("A/2").on(3, 12).left("missing", "A/1").left("missing", "A/2")
    return gone.on(4, 9)


COUNTED: list[tuple[str, Callable[[], Answer], Answer]] = [
    (
        "what went is nothing to eat",
        lambda: stew().on(1, 9).left().answer(2),
        (3, False),
    ),
    (
        "found again it is as old as it was",
        lambda: stew().on(1, 9).left().on(2, 9).counted("fridge", 2).answer(2),
        (3, True),
    ),
    (
        "its day went on while it was gone",
        lambda: stew().on(1, 9).left().on(5, 9).counted("fridge", 2).answer(5),
        (3, False),
    ),
    (
        "house law 7.2: its fridge was warm while nobody knew that it stood there",
        lambda: (
            stew()
            .on(1, 9)
            .left()
            .on(1, 20)
            .read("fridge", 45.0, since=300)
            .on(2, 9)
            .counted("fridge", 2)
            .answer(2)
        ),
        (1, False),
    ),
    (
        "one of two that left, one of them bad: no better than the worst",
        lambda: gone_one_open().counted("larder", 1).answer(5),
        (3, False),
    ),
    (
        "both of them: each is itself",
        lambda: gone_one_open().counted("larder", 2).answer(5),
        (None, True),
    ),
    (
        "a count of no more than what stands there finds nothing",
        lambda: stew().on(1, 9).left().on(2, 9).counted("fridge", 1).answer(2),
        (3, False),
    ),
]
