"""The trade's words, once. Every enum's value is what a person types and a file holds."""

from __future__ import annotations

from enum import StrEnum


class Climate(StrEnum):
    """What a place is like; from warmest to coldest in `WARM_TO_COLD`."""

    ROOM = "room"
    PANTRY = "pantry"
    CELLAR = "cellar"
    FRIDGE = "fridge"
    FREEZER = "freezer"

    @property
    def is_cold(self) -> bool:
        """Refrigerator or freezer."""
        return self in (Climate.FRIDGE, Climate.FREEZER)


WARM_TO_COLD = (Climate.ROOM, Climate.PANTRY, Climate.CELLAR, Climate.FRIDGE, Climate.FREEZER)

#: Chilled food above this, °F, is no longer held cold (USDA FSIS: 40 °F or below).
COLD_F = 40.0

#: The temperature (°F) a place is taken to hold when nobody gave a target: the middle of what
#: storage tables call room, pantry (50-70), cool cellar (32-40), refrigerator (<=40), freezer (0).
ASSUMED_F = {
    Climate.ROOM: 70.0,
    Climate.PANTRY: 60.0,
    Climate.CELLAR: 40.0,
    Climate.FRIDGE: 38.0,
    Climate.FREEZER: 0.0,
}


class Role(StrEnum):
    """What a food is at table."""

    MAIN = "main"
    SIDE = "side"
    FRUIT = "fruit"
    RELISH = "relish"
    SPREAD = "spread"
    SEASONING = "seasoning"
    BAKING = "baking"
    FAT = "fat"
    DRINK = "drink"
    INGREDIENT = "ingredient"


class Method(StrEnum):
    """How a food is kept."""

    BOILING_WATER = "boiling-water canned"
    PRESSURE = "pressure canned"
    JAM = "jam"
    FREEZER_JAM = "freezer jam"
    FRIDGE_PICKLE = "fridge pickle"
    VINEGAR_PICKLE = "vinegar pickle"
    LACTIC = "lactic ferment"
    VINEGAR_FERMENT = "vinegar ferment"
    ALCOHOL_FERMENT = "alcohol ferment"
    PASTE = "fermented paste"
    DRIED = "dried"
    SALTED = "salted"
    HOT_SMOKED = "hot smoked"
    COLD_SMOKED = "cold smoked"
    FROZEN = "frozen"
    SUGAR = "sugar preserve"
    INFUSION = "alcohol infusion"
    IN_OIL = "in oil"
    CELLAR = "cellar-stored"
    FREEZE_DRIED = "freeze-dried"
    LIME = "lime-kept"
    FLAVOURED_VINEGAR = "flavoured vinegar"
    RENDERED_FAT = "rendered fat"
    FRESH = "fresh"
    MEAL = "cooked meal"
    BOUGHT = "bought in"

    @property
    def needs_cold(self) -> bool:
        """Kept by the cold alone, or with its help."""
        return self in (
            Method.FREEZER_JAM,
            Method.FRIDGE_PICKLE,
            Method.HOT_SMOKED,
            Method.COLD_SMOKED,
            Method.FROZEN,
            Method.IN_OIL,
            Method.MEAL,
        )


_AT_WORK = {
    Method.LACTIC: "fermenting",
    Method.PASTE: "fermenting",
    Method.VINEGAR_FERMENT: "fermenting",
    Method.ALCOHOL_FERMENT: "fermenting",
    Method.SALTED: "curing",
    Method.INFUSION: "infusing",
    Method.FLAVOURED_VINEGAR: "infusing",
    Method.DRIED: "drying",
}


def at_work(method: Method) -> str:
    """What a container in progress is doing, in the word of its method: "fermenting"."""
    return _AT_WORK.get(method, State.IN_PROGRESS.value)


class Group(StrEnum):
    """Food groups."""

    VEGETABLE = "vegetable"
    FRUIT = "fruit"
    NUT = "nut"
    MEAT = "meat"
    FISH = "fish"
    EGG = "egg"
    DAIRY = "dairy"
    GRAIN = "grain"
    HERB = "herb"
    RELISH = "relish"
    SWEET = "sweet"
    MEAL = "meal"
    DRINK = "drink"
    FAT = "fat"


class Acidity(StrEnum):
    """pH 4.6 is the line: at or below is acid; acidified means made so by a tested recipe."""

    ACID = "acid"
    LOW_ACID = "low-acid"
    ACIDIFIED = "acidified"


class State(StrEnum):
    """What a container is. `IN_PROGRESS`: still fermenting, curing, infusing, drying."""

    SEALED = "sealed"
    OPEN = "open"
    THAWED = "thawed"
    IN_PROGRESS = "in progress"
    WORKING = "in progress"  # the name that older code has for it
    GONE = "gone"

    @classmethod
    def _missing_(cls, value: object) -> State | None:
        """Logs and tables say "working" where screens say "in progress"."""
        return cls.IN_PROGRESS if value in ("working", "in-progress") else None


class Verdict(StrEnum):
    """What to do about it. Order in `SEVERITY`: first is worst."""

    DO_NOT_TASTE = "do not taste"
    DISCARD = "discard"
    UNKNOWN = "unknown"
    PAST_BEST = "past best"
    EAT_SOON = "eat soon"
    NEEDS_CARE = "needs care"
    TEND = "needs care"  # the name that older code has for it
    SOUND = "sound"

    @classmethod
    def _missing_(cls, value: object) -> Verdict | None:
        """Older logs say "tend"."""
        return cls.NEEDS_CARE if value == "tend" else None

    @property
    def said(self) -> str:
        """The verdict as a clause: "do not taste it", "it is past best"."""
        return _CLAUSE[self]


#: Each verdict as a clause of a sentence.
_CLAUSE = {
    Verdict.DO_NOT_TASTE: "do not taste it",
    Verdict.DISCARD: "discard it",
    Verdict.UNKNOWN: "its verdict is unknown",
    Verdict.PAST_BEST: "it is past best",
    Verdict.EAT_SOON: "eat it soon",
    Verdict.NEEDS_CARE: "it needs care",
    Verdict.SOUND: "it is sound",
}

SEVERITY = tuple(Verdict)

#: By their words. Asked of every row of a list: a look-up takes a third of the time of an enum.
METHODS = {one.value: one for one in Method}
STATES = {one.value: one for one in State}

#: A mark of one column beside every verdict word, so that colour is never needed; they differ in
#: shape and not in case.
MARK = {
    Verdict.DO_NOT_TASTE: "#",
    Verdict.DISCARD: "x",
    Verdict.UNKNOWN: "?",
    Verdict.PAST_BEST: "-",
    Verdict.EAT_SOON: "!",
    Verdict.NEEDS_CARE: "~",
    Verdict.SOUND: "+",
}


class Kind(StrEnum):
    """The two kinds of limit, never mixed, and a place where the food may not be."""

    QUALITY = "quality"
    SAFETY = "safety"
    REFUSE = "refuse"


class Rating(StrEnum):
    """What the household says of a batch once it was eaten from."""

    AGAIN = "again"
    NOT_AGAIN = "not again"
    CHANGE = "change"


class Trust(StrEnum):
    """How a figure reached the tables."""

    READ = "read"
    REPRINT = "reprint"
    MEMORY = "memory"
    HOUSEHOLD = "household"

    @property
    def shown(self) -> str:
        """As it stands beside a source."""
        return {
            Trust.READ: "source seen",
            Trust.REPRINT: "copy seen",
            Trust.MEMORY: "from memory",
            Trust.HOUSEHOLD: "your own",
        }[self]
