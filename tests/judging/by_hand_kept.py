"""Examples worked by hand from the papers: cooked, canned, opened, smoked, dried, and the record.

Each line as in `by_hand_cold`.
"""

from __future__ import annotations

from collections.abc import Callable

from tests.judging.by_hand_cold import Answer, T, beans, beef, stew
from tests.judging.telling import Telling
from tests.judging.world import Food


def salmon(**more: object) -> Telling:
    """Hot-smoked salmon in the fridge."""
    return T().on(0, 10).put("salmon", "hot smoked", "fridge", **more)


KEPT: list[tuple[str, Callable[[], Answer], Answer]] = [
    # Cooked, opened, canned
    ("README: leftovers 3 days", lambda: stew().answer(3), (3, True)),
    (
        "date rule: it may still be eaten on that day, not after",
        lambda: stew().answer(4),
        (3, False),
    ),
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
        lambda: (
            T()
            .on(0, 10)
            .put("beef", "pressure canned", "larder")
            .on(9, 9)
            .moved("fridge")
            .on(9, 9.1)
            .opened()
            .answer(11)
        ),
        (11, True),
    ),
    (
        "keeping: an opened jar may not stand out",
        lambda: beans().on(9, 9).opened().answer(9, 12),
        (9, False),
    ),
    (
        "half of a litre used: the rest is open",
        lambda: beans().on(9, 9).drawn(0.5).answer(12),
        (9, False),
    ),
    (
        "README: pickles and jam opened: quality",
        lambda: (
            T()
            .on(0, 10)
            .put("dill pickles", "boiling-water canned", "larder")
            .on(9, 9)
            .opened()
            .on(9, 9)
            .moved("fridge")
            .answer(30)
        ),
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
        "a doubtful jar is not offered",
        lambda: (
            T().on(0, 10).put("runner beans", "pressure canned", "larder", doubt=True).answer(1)
        ),
        (None, False),
    ),
    (
        "README, signs: unsealed within a day: that day and the next in the room",
        lambda: (
            T()
            .on(0, 10)
            .put("runner beans", "pressure canned", "kitchen")
            .on(0, 20)
            .sign("unsealed within a day, tested recipe")
            .answer(1)
        ),
        (1, True),
    ),
    (
        "README, signs: failed seal in the fridge 3 days",
        lambda: (
            T()
            .on(0, 10)
            .put("runner beans", "pressure canned", "fridge")
            .on(0, 20)
            .sign("unsealed within a day, tested recipe")
            .answer(1)
        ),
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
    ("README: hot-smoked fish at 38 F ten days", lambda: salmon().answer(10), (10, True)),
    (
        "README: hot-smoked fish 14 days below 36 F",
        lambda: T(fridge=35.0).on(0, 10).put("salmon", "hot smoked", "fridge").answer(14),
        (14, True),
    ),
    (
        "README, signs: vacuum-packed smoked fish 5 days",
        lambda: salmon(vacuum=True).answer(5),
        (5, True),
    ),
    (
        "opening a vacuum pack never lengthens",
        lambda: salmon(vacuum=True).on(1, 9).opened().answer(6),
        (5, False),
    ),
    (
        "frozen cold-smoked fish in the kitchen",
        lambda: (
            T().on(0, 10).put("salmon", "cold smoked", "chest").on(5, 9).moved("kitchen").answer(10)
        ),
        (5, False),
    ),
    (
        "README, signs: vacuum-packed fish is opened before it thaws",
        lambda: (
            T()
            .on(0, 10)
            .put("salmon", "frozen", "chest", vacuum=True)
            .on(5, 9)
            .moved("fridge")
            .answer(6, 12)
        ),
        (6, False),
    ),
    (
        "the same, opened first: thawed fish a day",
        lambda: (
            T()
            .on(0, 10)
            .put("salmon", "frozen", "chest", vacuum=True)
            .on(5, 9)
            .opened()
            .on(5, 10)
            .moved("fridge")
            .answer(6, 18)
        ),
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
    (
        "law 7.4: meat in oil has no rule",
        lambda: T().on(0, 10).put("beef", "in oil", "fridge").answer(1),
        (None, False),
    ),
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
        "law 7.3: nor does the freezer afterwards make it known",
        lambda: T().on(0, 10).put("beef", "in oil", "fridge").on(0, 20).moved("chest").answer(1),
        (None, False),
    ),
    (
        "README: four days from mixing, though it was opened the next day before it went cold",
        lambda: (
            T()
            .on(0, 23)
            .put("garlic", "in oil", "kitchen")
            .on(1, 0.5)
            .opened()
            .on(1, 0.8)
            .moved("fridge")
            .answer(2)
        ),
        (4, True),
    ),
    (
        "law 7.4: vinegar cannot hurt: unknown and offered",
        lambda: T().on(0, 10).put("vinegar", "vinegar ferment", "kitchen").answer(400),
        (None, True),
    ),
    (
        "law 7.4: an unfinished ferment with no rule is not offered",
        lambda: (
            T()
            .on(0, 10)
            .put("fermented carrots", "lactic ferment", "kitchen", state="in progress")
            .answer(9)
        ),
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
        lambda: (
            T()
            .on(0, 10)
            .put(Food("hedgehog", "meat", known=False), "frozen", "chest")
            .on(5, 12)
            .moved("fridge")
            .answer(7)
        ),
        (7, True),
    ),
    (
        "bought in: the printed date, for what can hurt",
        lambda: (
            T().on(0, 10).put("chickens", "bought in", "fridge", printed=Telling.day(2)).answer(2)
        ),
        (2, True),
    ),
    # The record itself
    (
        "law 7.1: a moment after now counts as now, of who booked it: thawed in 2028",
        lambda: beef().on(700, 9, booked=(5, 9)).thawed("microwave").answer(6),
        (5, False),
    ),
    (
        "opened before it was put up counts as opened when it was put up",
        lambda: (
            T()
            .on(0, 10)
            .put("runner beans", "pressure canned", "fridge")
            .on(-9, 9, booked=(4, 9))
            .opened()
            .answer(5)
        ),
        (3, False),
    ),
    (
        "undo takes a fact back",
        lambda: (t := beef().on(5, 12).moved("kitchen")).on(5, 20).undo(t.last).answer(6),
        (None, True),
    ),
    (
        "redo gives it back",
        lambda: (
            (t := beef().on(5, 12).moved("kitchen"))
            .on(5, 20)
            .undo(t.last)
            .on(5, 21)
            .redo("f8")
            .answer(6)
        ),
        (5, False),
    ),
    (
        "an undo that was taken back takes nothing back",
        lambda: (
            beef().on(5, 12).moved("kitchen").on(5, 20).undo("f8").on(5, 21).undo("f9").answer(6)
        ),
        (5, False),
    ),
    (
        "correcting the day made moves the date",
        lambda: stew().on(2, 9).made(-2).answer(2),
        (1, False),
    ),
]
