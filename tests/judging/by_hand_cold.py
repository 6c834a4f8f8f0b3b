"""Examples worked by hand from the papers: frozen, thawed, readings, places, power cuts.

Each line: the sentence it rests on, what happened, the last day (counted from the first; None: no
end) and whether the food may be offered when asked. HR: shared hazard rules; README: the defaults
of the reference; law: house law on exposure.
"""

from __future__ import annotations

from collections.abc import Callable

from tests.judging.telling import Telling

Answer = tuple[int | None, bool]
T = Telling


def beef() -> Telling:
    """Ground beef in the freezer."""
    return T().on(0, 10).put("ground beef", "frozen", "chest")


def stew() -> Telling:
    """A stew in the fridge."""
    return T().on(0, 10).put("stew", "cooked meal", "fridge")


def beans() -> Telling:
    """A sealed jar of runner beans in the larder."""
    return T().on(0, 10).put("runner beans", "pressure canned", "larder")


COLD: list[tuple[str, Callable[[], Answer], Answer]] = [
    # Frozen, thawed
    ("README: frozen food at 0 F has no discard date", lambda: beef().answer(900), (None, True)),
    (
        "law 7.5 + README: thawed ground meat 1 day; a day to thaw, a day to cook",
        lambda: beef().on(5, 12).moved("fridge").answer(6),
        (7, True),
    ),
    (
        "the same, a day too late",
        lambda: beef().on(5, 12).moved("fridge").answer(8),
        (7, False),
    ),
    (
        "README: thawed whole cuts 3 days; 12 lb thaw 3 days",
        lambda: (
            T()
            .on(0, 10)
            .put("beef", "frozen", "chest", weight_lb=12.0)
            .on(5, 12)
            .moved("fridge")
            .answer(6)
        ),
        (11, True),
    ),
    (
        "law 7.5: or the day a person says it is thawed if earlier",
        lambda: (
            T()
            .on(0, 10)
            .put("beef", "frozen", "chest", weight_lb=12.0)
            .on(5, 12)
            .moved("fridge")
            .on(6, 9)
            .thawed("done")
            .answer(6)
        ),
        (9, True),
    ),
    (
        "law 7.5: a 20-lb bird takes four days to thaw, and poultry has a day then",
        lambda: (
            T()
            .on(0, 10)
            .put("turkeys", "frozen", "chest", weight_lb=20.0)
            .on(5, 12)
            .moved("fridge")
            .answer(9, 18)
        ),
        (10, True),
    ),
    (
        "law 7.5: microwave: cook at once",
        lambda: beef().on(5, 12).thawed("microwave").answer(5, 13),
        (5, True),
    ),
    (
        "law 7.5: cold water: cook at once; the next day is too late",
        lambda: beef().on(5, 12).thawed("cold water").on(5, 13).moved("fridge").answer(6),
        (5, False),
    ),
    (
        "README: anything thawed without a closer figure 1 day (thawed vegetables rest on memory)",
        lambda: T().on(0, 10).put("peas", "frozen", "chest").on(5, 12).moved("fridge").answer(6),
        (7, True),
    ),
    (
        "keeping: thawed egg is cooked at once",
        lambda: T().on(0, 10).put("eggs", "frozen", "chest").on(5, 12).moved("fridge").answer(6),
        (6, True),
    ),
    (
        "law 7.3: going back to the freezer never lifts the limit that runs",
        lambda: beef().on(5, 12).moved("fridge").on(5, 18).moved("chest").answer(30),
        (7, False),
    ),
    (
        "words: opened while frozen goes on as frozen",
        lambda: beef().on(5, 12).opened().answer(300),
        (None, True),
    ),
    (
        "opened while frozen, then the fridge, five weeks later",
        lambda: beef().on(5, 12).opened().on(5, 13).moved("fridge").answer(40),
        (7, False),
    ),
    (
        "README: perishable above 40 F over 2 h; an hour is not over",
        lambda: beef().on(5, 12).moved("kitchen").on(5, 13).moved("chest").answer(40),
        (None, True),
    ),
    (
        "HR63 + the two hours: three hours in the kitchen",
        lambda: beef().on(5, 12).moved("kitchen").on(5, 15).moved("chest").answer(40),
        (5, False),
    ),
    # Readings
    (
        "law 7.2: above 40 F nobody knows since when: since the last cold reading",
        lambda: beef().on(5, 8).read("chest", 0.0).on(5, 11).read("chest", 50.0).answer(6),
        (5, False),
    ),
    (
        "law 7.2: up to two hours only the clock is charged",
        lambda: beef().on(5, 8).read("chest", 0.0).on(5, 10).read("chest", 50.0).answer(6),
        (None, True),
    ),
    (
        "README, in total: two readings of 90 minutes make three hours",
        lambda: (
            beef()
            .on(5, 8)
            .read("chest", 50.0, since=90)
            .on(7, 8)
            .read("chest", 50.0, since=90)
            .answer(8)
        ),
        (7, False),
    ),
    (
        "moved away on the same day, after it was warm",
        lambda: beef().on(5, 11).read("chest", 50.0).on(5, 11.5).moved("second chest").answer(30),
        (0, False),
    ),
    (
        "law 7.2: a reading strikes what stood there then: moved away the day before",
        lambda: (
            beef()
            .on(4, 9)
            .moved("second chest")
            .on(5, 8)
            .read("chest", 0.0)
            .on(5, 12)
            .read("chest", 50.0)
            .answer(30)
        ),
        (None, True),
    ),
    (
        "law 7.2: booked late, it still strikes what stood there then",
        lambda: (
            beef()
            .on(6, 9)
            .moved("second chest")
            .on(5, 12, booked=(8, 9))
            .read("chest", 50.0, since=180)
            .answer(30)
        ),
        (5, False),
    ),
    (
        "law 7.1: moved later for an earlier day without an hour: the strictest order",
        lambda: (
            beef()
            .on(5, None, booked=(7, 9))
            .moved("second chest")
            .on(5, 12)
            .read("chest", 50.0, since=180)
            .answer(30)
        ),
        (5, False),
    ),
    (
        "law 7.1: moved without an hour on its own day is the moment it was booked",
        lambda: (
            beef()
            .on(5, None, booked=(5, 8))
            .moved("second chest")
            .on(5, 12)
            .read("chest", 50.0, since=180)
            .answer(30)
        ),
        (None, True),
    ),
    (
        "law 7.2: an empty freezer being defrosted harms nothing",
        lambda: (
            T()
            .on(0, 9)
            .read("chest", 60.0, since=600)
            .on(0, 10)
            .put("ground beef", "frozen", "chest")
            .answer(30)
        ),
        (None, True),
    ),
    (
        "pc-fsgov-frozen: frozen fruit is frozen again, warm or not",
        lambda: (
            T()
            .on(0, 10)
            .put("strawberries", "frozen", "chest")
            .on(5, 12)
            .read("chest", 50.0, since=600)
            .answer(30)
        ),
        (None, True),
    ),
    (
        "pc-fsgov-frozen: vegetables have six hours above 40 F",
        lambda: (
            T()
            .on(0, 10)
            .put("peas", "frozen", "chest")
            .on(5, 12)
            .read("chest", 50.0, since=350)
            .answer(30)
        ),
        (None, True),
    ),
    (
        "the same, over six hours",
        lambda: (
            T()
            .on(0, 10)
            .put("peas", "frozen", "chest")
            .on(5, 12)
            .read("chest", 50.0, since=370)
            .answer(30)
        ),
        (5, False),
    ),
    (
        "USDA FSIS: above 90 F one hour",
        lambda: stew().on(1, 12).read("fridge", 95.0, since=70).answer(2),
        (1, False),
    ),
    (
        "README: above 40 F over 2 h in a fridge",
        lambda: stew().on(1, 12).read("fridge", 45.0, since=121).answer(1, 13),
        (1, False),
    ),
    (
        "README: exactly two hours is not over two hours",
        lambda: stew().on(1, 12).read("fridge", 45.0, since=120).answer(1, 13),
        (3, True),
    ),
    (
        "README: a fridge at 41 F is no end by itself; leftovers two days there (Scotland)",
        lambda: stew().on(1, 12).read("fridge", 41.0, since=600).answer(1, 13),
        (2, True),
    ),
    (
        "fsgov-outage: sealed jars stand warm",
        lambda: beans().on(1, 12).moved("fridge").on(9, 9).read("fridge", 60.0).answer(30),
        (None, True),
    ),
    # Places over time
    (
        "law 7.2: a target above 40 F is the warmth of the place",
        lambda: T(fridge=45.0).on(0, 10).put("stew", "cooked meal", "fridge").answer(0, 13),
        (0, False),
    ),
    (
        "the freezer became a fridge: it thaws",
        lambda: beef().on(5, 12).change("chest", "fridge").answer(30),
        (7, False),
    ),
    (
        "and a reading told later does not take the date away",
        lambda: (
            beef()
            .on(5, 12)
            .change("chest", "fridge")
            .on(4, 12, booked=(9, 9))
            .read("chest", 0.0)
            .answer(30)
        ),
        (7, False),
    ),
    (
        "a freezer set to 36 F is a fridge",
        lambda: beef().on(5, 12).change("chest", None, 36.0).answer(6),
        (7, True),
    ),
    (
        "a freezer set to 28 F still freezes",
        lambda: beef().on(5, 12).change("chest", None, 28.0).answer(60),
        (None, True),
    ),
]
