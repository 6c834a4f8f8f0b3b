"""The judge itself, held against examples worked by hand from the papers.

Each line: the sentence it rests on, what happened, the last day (counted from the first; None: no
end) and whether the food may be offered when asked. HR: shared hazard rules; README: the defaults
of the reference; law: house law on exposure.
"""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tests.judging.telling import Telling
from tests.judging.world import Food

Answer = tuple[int | None, bool]
T = Telling


def beef() -> Telling:
    return T().on(0, 10).put("ground beef", "frozen", "chest")


def stew() -> Telling:
    return T().on(0, 10).put("stew", "cooked meal", "fridge")


def beans() -> Telling:
    return T().on(0, 10).put("runner beans", "pressure canned", "larder")


def salmon(**more: object) -> Telling:
    return T().on(0, 10).put("salmon", "hot smoked", "fridge", **more)


EXAMPLES: list[tuple[str, Callable[[], Answer], Answer]] = [
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
        lambda: T()
        .on(0, 10)
        .put("beef", "frozen", "chest", weight_lb=12.0)
        .on(5, 12)
        .moved("fridge")
        .answer(6),
        (11, True),
    ),
    (
        "law 7.5: or the day a person says it is thawed if earlier",
        lambda: T()
        .on(0, 10)
        .put("beef", "frozen", "chest", weight_lb=12.0)
        .on(5, 12)
        .moved("fridge")
        .on(6, 9)
        .thawed("done")
        .answer(6),
        (9, True),
    ),
    (
        "law 7.5: a 20-lb bird takes four days to thaw, and poultry has a day then",
        lambda: T()
        .on(0, 10)
        .put("turkeys", "frozen", "chest", weight_lb=20.0)
        .on(5, 12)
        .moved("fridge")
        .answer(9, 18),
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
        lambda: T()
        .on(0, 10)
        .put("peas", "frozen", "chest")
        .on(5, 12)
        .moved("fridge")
        .answer(6),
        (7, True),
    ),
    (
        "keeping: thawed egg is cooked at once",
        lambda: T()
        .on(0, 10)
        .put("eggs", "frozen", "chest")
        .on(5, 12)
        .moved("fridge")
        .answer(6),
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
        "issue 9.3: opened while frozen, then the fridge, five weeks later",
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
        lambda: beef()
        .on(5, 8)
        .read("chest", 50.0, since=90)
        .on(7, 8)
        .read("chest", 50.0, since=90)
        .answer(8),
        (7, False),
    ),
    (
        "issue 9.1: moved away on the same day, after it was warm",
        lambda: beef().on(5, 11).read("chest", 50.0).on(5, 11.5).moved("second chest").answer(30),
        (0, False),
    ),
    (
        "law 7.2: a reading strikes what stood there then: moved away the day before",
        lambda: beef()
        .on(4, 9)
        .moved("second chest")
        .on(5, 8)
        .read("chest", 0.0)
        .on(5, 12)
        .read("chest", 50.0)
        .answer(30),
        (None, True),
    ),
    (
        "law 7.2: booked late, it still strikes what stood there then",
        lambda: beef()
        .on(6, 9)
        .moved("second chest")
        .on(5, 12, booked=(8, 9))
        .read("chest", 50.0, since=180)
        .answer(30),
        (5, False),
    ),
    (
        "law 7.1: moved later for an earlier day without an hour: the strictest order",
        lambda: beef()
        .on(5, None, booked=(7, 9))
        .moved("second chest")
        .on(5, 12)
        .read("chest", 50.0, since=180)
        .answer(30),
        (5, False),
    ),
    (
        "law 7.1: moved without an hour on its own day is the moment it was booked",
        lambda: beef()
        .on(5, None, booked=(5, 8))
        .moved("second chest")
        .on(5, 12)
        .read("chest", 50.0, since=180)
        .answer(30),
        (None, True),
    ),
    (
        "law 7.2: an empty freezer being defrosted harms nothing",
        lambda: T()
        .on(0, 9)
        .read("chest", 60.0, since=600)
        .on(0, 10)
        .put("ground beef", "frozen", "chest")
        .answer(30),
        (None, True),
    ),
    (
        "pc-fsgov-frozen: frozen fruit is frozen again, warm or not",
        lambda: T()
        .on(0, 10)
        .put("strawberries", "frozen", "chest")
        .on(5, 12)
        .read("chest", 50.0, since=600)
        .answer(30),
        (None, True),
    ),
    (
        "pc-fsgov-frozen: vegetables have six hours above 40 F",
        lambda: T()
        .on(0, 10)
        .put("peas", "frozen", "chest")
        .on(5, 12)
        .read("chest", 50.0, since=350)
        .answer(30),
        (None, True),
    ),
    (
        "the same, over six hours",
        lambda: T()
        .on(0, 10)
        .put("peas", "frozen", "chest")
        .on(5, 12)
        .read("chest", 50.0, since=370)
        .answer(30),
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
        "issue 9.4: the freezer became a fridge: it thaws",
        lambda: beef().on(5, 12).change("chest", "fridge").answer(30),
        (7, False),
    ),
    (
        "issue 9.4: and a reading told later does not take the date away",
        lambda: beef()
        .on(5, 12)
        .change("chest", "fridge")
        .on(4, 12, booked=(9, 9))
        .read("chest", 0.0)
        .answer(30),
        (7, False),
    ),
    (
        "a freezer set to 36 F is a fridge",
        lambda: beef().on(5, 12).change("chest", None, 36.0).answer(6),
        (7, True),
    ),
    (
        "a freezer set to 31 F still freezes",
        lambda: beef().on(5, 12).change("chest", None, 31.0).answer(60),
        (None, True),
    ),
    # Power cuts
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
        "issue 9.2: twice 3.5 h with half an hour between add up",
        lambda: stew()
        .on(1, 8)
        .cut("fridge", 3.5)
        .on(1, 12)
        .cut("fridge", 3.5)
        .answer(1, 20),
        (1, False),
    ),
    (
        "overlapping cuts are one: 8 to 11 and 10 to 12 make four hours",
        lambda: stew().on(1, 8).cut("fridge", 3).on(1, 10).cut("fridge", 2).answer(1, 20),
        (3, True),
    ),
    (
        "law 7.2: moved out first and booked afterwards, it was there all the same",
        lambda: stew()
        .on(1, 16)
        .moved("second fridge")
        .on(1, 8, booked=(1, 17))
        .cut("fridge", 7)
        .answer(1, 20),
        (1, False),
    ),
    (
        "issue 9.2: put in the day after a cut, it is not touched by it",
        lambda: T()
        .on(0, 10)
        .put("stew", "cooked meal", "fridge")
        .on(-1, 8, booked=(1, 9))
        .cut("fridge", 9)
        .answer(1, 20),
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
        "issue 9.11: a cut since nobody knows when: since the last cold reading",
        lambda: stew().on(1, 8).read("fridge", 38.0).on(1, 13).cut_since_unknown("fridge").answer(2),
        (1, False),
    ),
    (
        "law 7.1: a cut that is still to come has done nothing",
        lambda: stew().on(9, 8, booked=(1, 9)).cut("fridge", 9).answer(2),
        (3, True),
    ),
    # Cooked, opened, canned
    ("README: leftovers 3 days", lambda: stew().answer(3), (3, True)),
    ("date rule: it may still be eaten on that day, not after", lambda: stew().answer(4), (3, False)),
    (
        "README: cooked rice 1 day",
        lambda: T().on(0, 10).put("rice", "cooked meal", "fridge").answer(1),
        (1, True),
    ),
    (
        "law 7.3, section 1: freezing late never lengthens",
        lambda: stew().on(2, 10).moved("chest").answer(60),
        (3, False),
    ),
    (
        "README: home-canned, sealed: quality only",
        lambda: beans().answer(500),
        (None, True),
    ),
    (
        "README: home-canned, opened: fridge 3 days",
        lambda: beans().on(9, 9).opened().on(9, 9).moved("fridge").answer(12),
        (12, True),
    ),
    (
        "README: meat opened 2 days",
        lambda: T()
        .on(0, 10)
        .put("beef", "pressure canned", "larder")
        .on(9, 9)
        .moved("fridge")
        .on(9, 9.1)
        .opened()
        .answer(11),
        (11, True),
    ),
    (
        "keeping: an opened jar may not stand out",
        lambda: beans().on(9, 9).opened().answer(9, 12),
        (9, False),
    ),
    (
        "issue 9.3: half of a litre used: the rest is open",
        lambda: beans().on(9, 9).drawn(0.5).answer(12),
        (9, False),
    ),
    (
        "README: pickles and jam opened: quality",
        lambda: T()
        .on(0, 10)
        .put("dill pickles", "boiling-water canned", "larder")
        .on(9, 9)
        .opened()
        .on(9, 9)
        .moved("fridge")
        .answer(30),
        (None, True),
    ),
    (
        "HR07: low-acid food in boiling water is never safe",
        lambda: T().on(0, 10).put("runner beans", "boiling-water canned", "larder").answer(1),
        (None, False),
    ),
    (
        "HR18: canned eggs have no tested process",
        lambda: T().on(0, 10).put("eggs", "pressure canned", "larder").answer(1),
        (0, False),
    ),
    (
        "issue 9.7: a doubtful jar is not offered",
        lambda: T()
        .on(0, 10)
        .put("runner beans", "pressure canned", "larder", doubt=True)
        .answer(1),
        (None, False),
    ),
    (
        "README, signs: unsealed within a day: that day and the next in the room",
        lambda: T()
        .on(0, 10)
        .put("runner beans", "pressure canned", "kitchen")
        .on(0, 20)
        .sign("unsealed within a day, tested recipe")
        .answer(1),
        (1, True),
    ),
    (
        "README, signs: failed seal in the fridge 3 days",
        lambda: T()
        .on(0, 10)
        .put("runner beans", "pressure canned", "fridge")
        .on(0, 20)
        .sign("unsealed within a day, tested recipe")
        .answer(1),
        (3, True),
    ),
    (
        "signs: a swollen lid: do not taste",
        lambda: beans().on(3, 9).sign("swollen lid").answer(4),
        (None, False),
    ),
    (
        "law 7.6: sealed sisters of it are suspect",
        lambda: beans().on(3, 9).sign("swollen lid", "A/2").answer(4),
        (None, False),
    ),
    (
        "law 7.3: looks sound lifts a sister's suspicion",
        lambda: beans().on(3, 9).sign("swollen lid", "A/2").on(3, 10).sound().answer(4),
        (None, True),
    ),
    # Smoked, oil, cured, dried
    ("README: hot-smoked fish 14 days", lambda: salmon().answer(14), (14, True)),
    (
        "README, signs: vacuum-packed smoked fish 5 days",
        lambda: salmon(vacuum=True).answer(5),
        (5, True),
    ),
    (
        "issue 9.3: opening a vacuum pack never lengthens",
        lambda: salmon(vacuum=True).on(1, 9).opened().answer(6),
        (5, False),
    ),
    (
        "issue 9.3: frozen cold-smoked fish in the kitchen",
        lambda: T()
        .on(0, 10)
        .put("salmon", "cold smoked", "chest")
        .on(5, 9)
        .moved("kitchen")
        .answer(10),
        (5, False),
    ),
    (
        "README, signs: vacuum-packed fish is opened before it thaws",
        lambda: T()
        .on(0, 10)
        .put("salmon", "frozen", "chest", vacuum=True)
        .on(5, 9)
        .moved("fridge")
        .answer(6, 12),
        (6, False),
    ),
    (
        "the same, opened first: thawed fish a day",
        lambda: T()
        .on(0, 10)
        .put("salmon", "frozen", "chest", vacuum=True)
        .on(5, 9)
        .opened()
        .on(5, 10)
        .moved("fridge")
        .answer(6, 12),
        (7, True),
    ),
    (
        "README: vegetables in oil 4 days from mixing",
        lambda: T().on(0, 10).put("garlic", "in oil", "fridge").answer(4),
        (4, True),
    ),
    (
        "README: fresh herbs in oil 2 days",
        lambda: T().on(0, 10).put("basil", "in oil", "fridge").answer(2),
        (2, True),
    ),
    (
        "HR01: in oil never in a room",
        lambda: T().on(0, 10).put("garlic", "in oil", "kitchen").answer(1),
        (0, False),
    ),
    ("law 7.4: meat in oil has no rule", lambda: T().on(0, 10).put("beef", "in oil", "fridge").answer(1), (None, False)),
    (
        "README: jerky at room 2 weeks",
        lambda: T().on(0, 10).put("jerky", "dried", "kitchen").answer(14),
        (14, True),
    ),
    (
        "keeping: whole dry-cured ham stands in a room",
        lambda: T().on(0, 10).put("country hams", "salted", "vault").answer(100),
        (None, True),
    ),
    (
        "HR52: cut, it stays in the fridge",
        lambda: T().on(0, 10).put("country hams", "salted", "vault").on(50, 9).opened().answer(60),
        (50, False),
    ),
    (
        "HR55: lime-kept eggs",
        lambda: T().on(0, 10).put("eggs", "lime-kept", "fridge").answer(1),
        (0, False),
    ),
    (
        "README: shell eggs 5 weeks",
        lambda: T().on(0, 10).put("eggs", "fresh", "fridge").answer(35),
        (35, True),
    ),
    (
        "law 7.4: vinegar cannot hurt: unknown and offered",
        lambda: T().on(0, 10).put("vinegar", "vinegar ferment", "kitchen").answer(400),
        (None, True),
    ),
    (
        "law 7.4: an unfinished ferment with no rule is not offered",
        lambda: T()
        .on(0, 10)
        .put("fermented carrots", "lactic ferment", "kitchen", state="in progress")
        .answer(9),
        (None, False),
    ),
    (
        "law 7.4: whole raw crops are offered",
        lambda: T().on(0, 10).put("carrots", "fresh", "kitchen").answer(60),
        (None, True),
    ),
    (
        "HR39: raw vegetables in a pack without air, in a room",
        lambda: T().on(0, 10).put("carrots", "fresh", "kitchen", vacuum=True).answer(1),
        (0, False),
    ),
    (
        "keeping: an unknown food counts as its group: unknown meat as mince",
        lambda: T()
        .on(0, 10)
        .put(Food("hedgehog", "meat", known=False), "frozen", "chest")
        .on(5, 12)
        .moved("fridge")
        .answer(7),
        (7, True),
    ),
    (
        "bought in: the printed date, for what can hurt",
        lambda: T()
        .on(0, 10)
        .put("chickens", "bought in", "fridge", printed=Telling.day(2))
        .answer(2),
        (2, True),
    ),
    # The record itself
    (
        "law 7.1: a moment after now counts as now: thawed in 2028",
        lambda: beef().on(700, 9, booked=(5, 9)).thawed("microwave").answer(6),
        (6, True),
    ),
    (
        "opened before it was put up counts as opened when it was put up",
        lambda: T()
        .on(0, 10)
        .put("runner beans", "pressure canned", "fridge")
        .on(-9, 9, booked=(4, 9))
        .opened()
        .answer(5),
        (3, False),
    ),
    (
        "undo takes a fact back",
        lambda: (t := beef().on(5, 12).moved("kitchen")).on(5, 20).undo(t.last).answer(6),
        (None, True),
    ),
    (
        "redo gives it back",
        lambda: (t := beef().on(5, 12).moved("kitchen"))
        .on(5, 20)
        .undo(t.last)
        .on(5, 21)
        .redo("f8")
        .answer(6),
        (5, False),
    ),
    (
        "an undo that was taken back takes nothing back",
        lambda: beef()
        .on(5, 12)
        .moved("kitchen")
        .on(5, 20)
        .undo("f8")
        .on(5, 21)
        .undo("f9")
        .answer(6),
        (5, False),
    ),
    (
        "correcting the day made moves the date",
        lambda: stew().on(2, 9).made(-2).answer(2),
        (1, False),
    ),
]


@pytest.mark.parametrize(("sentence", "told", "answer"), EXAMPLES, ids=[e[0] for e in EXAMPLES])
def test_worked_by_hand(sentence: str, told: Callable[[], Answer], answer: Answer) -> None:
    assert told() == answer, sentence


def test_there_are_enough_examples() -> None:
    assert len(EXAMPLES) >= 60
