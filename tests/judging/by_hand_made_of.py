"""Examples worked by hand: what was made of what stood there. Each line as in `by_hand_cold`."""

from __future__ import annotations

from collections.abc import Callable

from tests.judging.by_hand_cold import Answer, beans, beef, stew

MADE_OF: list[tuple[str, Callable[[], Answer], Answer]] = [
    (
        "law, words: the same stew in other jars is as old as it was",
        lambda: stew().on(2, 10).repacked("stew", "cooked meal", "fridge").answer(2, 12, "B/1"),
        (3, True),
    ),
    (
        "USDA FSIS: frozen while it was fit it is frozen food",
        lambda: stew().on(2, 10).repacked("stew", "frozen", "chest").answer(60, 12, "B/1"),
        (None, True),
    ),
    (
        "frozen a day too late it is not",
        lambda: stew().on(4, 10).repacked("stew", "frozen", "chest").answer(60, 12, "B/1"),
        (None, False),
    ),
    (
        "README: what was canned has its last day in any other way: opened, beans have three days",
        lambda: beans().on(9, 9).repacked("runner beans", "fresh", "fridge").answer(9, 12, "B/1"),
        (12, True),
    ),
    (
        "the same out of a jar into jars: open food",
        lambda: (
            beans()
            .on(9, 9)
            .repacked("runner beans", "pressure canned", "fridge")
            .answer(9, 12, "B/1")
        ),
        (12, True),
    ),
    (
        "DEVELOPERS: the two hours are two hours in all: 90 minutes as a stew, 40 as its pack",
        lambda: (
            stew()
            .on(1, 12)
            .read("fridge", 45.0, since=90)
            .on(1, 13)
            .read("fridge", 38.0)
            .on(1, 14)
            .repacked("stew", "frozen", "chest")
            .on(5, 12)
            .read("chest", 50.0, since=40)
            .answer(6, 12, "B/1")
        ),
        (5, False),
    ),
    (
        "house law 7.2: found out later, it was warm all the same when it was taken",
        lambda: (
            stew()
            .on(1, 14)
            .repacked("stew", "frozen", "chest")
            .on(1, 13, booked=(2, 9))
            .read("fridge", 45.0, since=180)
            .answer(3, 12, "B/1")
        ),
        (None, False),
    ),
    (
        "the power cut of a day before is told after it was packed",
        lambda: (
            stew()
            .on(1, 20)
            .repacked("stew", "frozen", "chest")
            .on(1, 8, booked=(2, 9))
            .cut("fridge", 9)
            .answer(3, 12, "B/1")
        ),
        (None, False),
    ),
    (
        "what was packed is not touched by what its fridge was afterwards",
        lambda: (
            stew()
            .on(1, 10)
            .repacked("stew", "frozen", "chest")
            .on(1, 20)
            .read("fridge", 45.0, since=300)
            .answer(3, 12, "B/1")
        ),
        (None, True),
    ),
    (
        "a meal of thawed beef that was too old is none",
        lambda: (
            beef()
            .on(5, 12)
            .moved("fridge")
            .on(9, 10)
            .repacked("stew", "cooked meal", "fridge")
            .answer(9, 12, "B/1")
        ),
        (12, False),
    ),
    (
        "a meal of what was fit has days of its own",
        lambda: (
            beef()
            .on(5, 12)
            .moved("fridge")
            .on(7, 10)
            .repacked("stew", "cooked meal", "fridge")
            .answer(8, 12, "B/1")
        ),
        (10, True),
    ),
    (
        "README: a sign of one speaks for the other: a sister swollen later",
        lambda: (
            beans()
            .on(9, 9)
            .repacked("runner beans", "frozen", "chest")
            .on(10, 9)
            .sign("swollen lid", "A/2")
            .answer(11, 12, "B/1")
        ),
        (None, False),
    ),
]
