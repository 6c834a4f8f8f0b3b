"""What can hurt, what nothing makes safe, what warmth ends, and what a sign says.

From house law 7.4, the shared hazard rules (HR), data/outage.csv and data/signs.csv.
"""

from __future__ import annotations

from functools import cache

from tests.judging import papers
from tests.judging.world import Food

DRY = frozenset({"dried", "freeze-dried", "sugar preserve", "alcohol infusion"})
FERMENTS = frozenset({"lactic ferment", "vinegar ferment", "alcohol ferment", "fermented paste"})
#: Their finished food stands on a shelf, so a figure for a warmer place holds in a cooler one.
SHELF_METHODS = DRY | papers.CANNED | {
    "jam", "vinegar pickle", "flavoured vinegar", "rendered fat", "alcohol ferment",
    "vinegar ferment",
}  # fmt: skip
CURES = frozenset({"salted", "hot smoked", "cold smoked"})


def never(method: str, food: Food, climate: str) -> str:
    """What no home method makes safe, whatever the place; empty where nothing forbids it."""
    low = food.acidity == "low-acid"
    if method == "lime-kept":
        return "HR55: eggs in lime water or water glass are not advised"
    # lemon curd has a tested process in boiling water (NCHFP)
    if method == "boiling-water canned" and low and food.name != "lemon curd":
        return "HR07: boiling water does not kill spores in low-acid food"
    if (
        method in CURES
        and climate in papers.SHELVES
        and food.group == "fish"
        and method != "salted"
    ):
        return "HR45: smoked fish never stands on a shelf"
    return ""


def untested(method: str, food: Food) -> str:
    """Why no tested process stands for it in jars, empty where one may: such a jar is one of
    doubtful process."""
    if method not in papers.CANNED:
        return ""
    if food.group in ("egg", "dairy") and food.name != "lemon curd":
        return "HR15, HR18: no tested process for egg or dairy"
    if food.name == "pesto" or "bread" in food.classes:
        return "HR06, HR17: pesto and bread are not canned"
    closed = [papers.said(method, food, False, "sealed", c) for c in papers.SHELVES]
    animal = food.group in papers.ANIMAL
    if (animal or food.acidity == "low-acid") and not any(x.covered for x in closed):
        return "no tested process, and no keeping figure either"
    return ""


def can_hurt(food: Food, method: str, state: str, vacuum: bool) -> bool:
    """House law 7.4: where such food has no rule it is not usable."""
    if (
        food.group in papers.ANIMAL
        or method == "cooked meal"
        or food.classes & {"stock", "sprouts"}
    ):
        return True
    if state == "in progress" and method in FERMENTS | CURES:
        return True
    if method in DRY:
        return False
    return food.acidity == "low-acid" and (
        method in papers.CANNED | {"jam", "in oil"} or vacuum or "soup" in food.classes
    )


def works_warm(food: Food, method: str) -> bool:
    """Whether warmth is not the end of it while it works: ferments of plants, and plants in salt.

    House law 7.4 in its words: "Can hurt: ... unfinished ferments and cures ... Where no rule
    covers it, it is refused or unknown and not usable". So while it works, wherever it stands, it
    is not usable: `_standing` says that, and no hour of warmth is asked. "Cannot: ... salt, ...
    finished acid ferments: where nothing is published it may be unknown and is still offered". So
    once it is done it is again what the law names harmless, and a discard that two hours of warmth
    had set for good would say that salt does not keep it. The two hours of 7.2 are charged to what
    a reading finds too warm; a crock on a shelf is where plants are salted and soured (the rows
    for working ferments name room, pantry and cellar). Meat, fish, egg and dairy in salt are out:
    their working rows refuse the shelf.
    """
    plants = food.group not in papers.ANIMAL
    return plants and (method in FERMENTS or method == "salted")


@cache
def warm_verdict(method: str, food: Food, vacuum: bool, state: str) -> str:
    """`discard` or `keep`: what over two hours above 40 F out of the freezer does to it.

    Pulses are sold dry: the line for dried food is theirs, not the one for cut vegetables, in whose
    group they stand for their days in jars.
    """
    if method == "bought in" and "bean" in food.classes and not vacuum:
        method = "dried"
    best: tuple[tuple[int, bool, bool], bool] | None = None
    for r in papers.table("outage.csv"):
        if r["appliance"] != "fridge" or r["condition"] != "held_above_40_over_2h":
            continue
        keys = tuple(k.strip() for k in r["foods"].split(";"))
        near = [
            c
            for k in keys
            if (c := papers.near(k, food, papers.classes_of(food, vacuum))) is not None
        ]
        states = r["states"].replace("working", "in progress").split(";")
        if not near or (r["methods"] and method not in r["methods"].split(";")):
            continue
        if r["states"] and state not in states:
            continue
        rank = (max(near), bool(r["methods"]), bool(r["states"]))
        keeps = r["verdict"] != "discard"
        # lax: of two lines as close the milder.
        if best is None or rank > best[0] or (rank == best[0] and keeps):
            best = (rank, keeps)
    if best is not None:
        return "keep" if best[1] else "discard"
    return "discard" if can_hurt(food, method, state, vacuum) else "keep"


def stands_warm(method: str, food: Food, vacuum: bool, state: str) -> bool:
    """Whether some shelf is published for it in this state: then warmth is not its end."""
    return any(
        (s := papers.said(method, food, vacuum, state, c)).covered and not s.refused
        for c in papers.SHELVES
    )


def thawed_warm_minutes(food: Food, method: str) -> int | None:
    """How long frozen food may lie above 40 F: the frozen table of power cuts; None: no end."""
    if food.group in ("fruit", "grain") or "nut" in food.classes or "juice" in food.classes:
        return 120 if food.name in ("rice", "brown rice") else None
    if food.name in ("butter", "hard cheese") or method == "freezer jam":
        return None
    if food.group == "vegetable" and method in ("frozen", "fresh", "bought in"):
        return 360
    return 120 if can_hurt(food, method, "thawed", False) else None


@cache
def sign_says(method: str, food: Food, sealed: bool, sign: str) -> tuple[str, bool, str]:
    """The worst verdict of a sign, whether it casts doubt on the batch, and its id."""
    found = ("", False, "")
    for r in papers.table("signs.csv"):
        keys = tuple(k.strip() for k in r["food"].split(";"))
        seal = r["seal"] in ("any", "*", "closed" if sealed else "open")
        mine = r["method"] == "*" or method in r["method"].split(";")
        if r["sign"] != sign or not seal or not mine:
            continue
        if not any(papers.near(k, food, food.classes) is not None for k in keys):
            continue
        if not found[0] or r["verdict"] == "do not taste":
            found = (r["verdict"], r["suspect_batch"] == "yes", r["sign_id"])
    return found


def strict_at_41(method: str, food: Food, state: str) -> papers.Life | None:
    """Between 40 and 41 F the British day counts hold where they are stricter (the 41 F
    question): leftovers two days, cooked rice one, anything thawed one."""
    if state == "thawed" and (food.group in papers.ANIMAL or method == "frozen"):
        # lax: Scotland says a day or two after thawing; two for what is no leftover.
        return (1, "days") if method == "cooked meal" else (2, "days")
    if method == "cooked meal":
        return (1, "days") if food.name in ("rice", "brown rice") else (2, "days")
    return None
