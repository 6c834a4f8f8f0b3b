"""Examples worked by hand from the papers: power cuts. Each line as in `by_hand_cold`."""

from __future__ import annotations

from collections.abc import Callable

from tests.judging.by_hand_cold import Answer, T, beef, stew

POWER: list[tuple[str, Callable[[], Answer], Answer]] = [
    (
        "README: fridge 4 h",
        lambda: stew().on(1, 8).cut("fridge", 4).answer(1, 20),
        (3, True),
    ),
    (
        "HR60: a fridge over 4 h: perishables then discarded",
        lambda: stew().on(1, 8).cut("fridge", 4.5).answer(1, 20),
        (1, False),
    ),
    (
        "twice 3.5 h with half an hour between add up",
        lambda: stew().on(1, 8).cut("fridge", 3.5).on(1, 12).cut("fridge", 3.5).answer(1, 20),
        (1, False),
    ),
    (
        "overlapping cuts are one: 8 to 11 and 10 to 12 make four hours",
        lambda: stew().on(1, 8).cut("fridge", 3).on(1, 10).cut("fridge", 2).answer(1, 20),
        (3, True),
    ),
    (
        "law 7.2: moved out first and booked afterwards, it was there all the same",
        lambda: (
            stew()
            .on(1, 16)
            .moved("second fridge")
            .on(1, 8, booked=(1, 17))
            .cut("fridge", 7)
            .answer(1, 20)
        ),
        (1, False),
    ),
    (
        "put in the day after a cut, it is not touched by it",
        lambda: (
            T()
            .on(0, 10)
            .put("stew", "cooked meal", "fridge")
            .on(-1, 8, booked=(1, 9))
            .cut("fridge", 9)
            .answer(1, 20)
        ),
        (3, True),
    ),
    (
        "README: freezer 48 h full",
        lambda: beef().on(5, 8).cut("chest", 48, "full").answer(30),
        (None, True),
    ),
    (
        "README: freezer 24 h half full, then two hours",
        lambda: beef().on(5, 8).cut("chest", 27, "half").answer(30),
        (6, False),
    ),
    (
        "law 7.7: fullness not told: the stricter reading",
        lambda: beef().on(5, 8).cut("chest", 40).answer(30),
        (6, False),
    ),
    (
        "the same, said to be full",
        lambda: beef().on(5, 8).cut("chest", 40, "full").answer(30),
        (None, True),
    ),
    (
        "a cut since nobody knows when: since the last cold reading",
        lambda: (
            stew().on(1, 8).read("fridge", 38.0).on(1, 13).cut_since_unknown("fridge").answer(2)
        ),
        (1, False),
    ),
    (
        "law 7.1: a cut that is still to come has done nothing",
        lambda: stew().on(9, 8, booked=(1, 9)).cut("fridge", 9).answer(2),
        (3, True),
    ),
    (
        "README: freezer 48 h full, then two hours",
        lambda: beef().on(5, 8).cut("chest", 51, "full").answer(30),
        (7, False),
    ),
]
