"""A published keeping rule, and which rules speak for a food in a state and a climate."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from enum import StrEnum

from pantry_tui.core.model import Crop, FoodFacts
from pantry_tui.core.words import WARM_TO_COLD, Acidity, Climate, Group, Kind, Method, State, Trust


class Status(StrEnum):
    """Only `current` rows ever give a date; the others are shown, or kept to be refused."""

    CURRENT = "current"
    SUPERSEDED = "superseded"
    OUTLIER = "outlier"
    STRICTER = "stricter"
    LENIENT = "lenient"
    COMMON = "common-practice"


@dataclass(frozen=True, slots=True)
class Rule:
    """One row of data/keeping.csv. `use` is the figure in use, None where no number is published.

    `food` is `*`, `group:G`, `acid:G` (what of that group is acid or acidified), `class:C` or a
    food's name; or several of these, split by `;`, where a publication speaks of so many kinds.
    """

    id: str
    method: Method
    food: str
    state: State
    climates: frozenset[Climate]
    kind: Kind
    least: float | None
    most: float | None
    use: float | None
    unit: str
    temp_f_max: float | None
    status: Status
    wording: str
    source: str
    trust: Trust

    @property
    def days(self) -> float:
        """About how many days, only to compare rules with one another."""
        per = {"hours": 1 / 24, "days": 1, "weeks": 7, "months": 30.4375, "years": 365.25}
        return float("inf") if self.use is None else self.use * per[self.unit]


@dataclass(frozen=True, slots=True)
class Rulebook:
    """Everything published that judging needs, and what the household added to it.

    `own` rules stand beside the published ones and never hide them: for safety the earlier date
    wins; for quality their date is shown, and a food that no publication covers stays unknown.
    """

    rules: Mapping[Method, Sequence[Rule]]
    crops: Mapping[str, Crop] = field(default_factory=dict)
    own: tuple[Rule, ...] = ()
    _spoken: dict[tuple[FoodFacts, Method, State, Climate], Sequence[Rule]] = field(
        default_factory=dict, init=False, repr=False, compare=False
    )

    def speaking(
        self, food: FoodFacts, method: Method, state: State, climate: Climate
    ) -> Sequence[Rule]:
        """What `speaking` finds in the published rules; the same question is answered once."""
        asked = (food, method, state, climate)
        if asked not in self._spoken:
            self._spoken[asked] = tuple(speaking(self.of(method), food, method, state, climate))
        return self._spoken[asked]

    def of(self, method: Method) -> Sequence[Rule]:
        """The published rules of a method."""
        return self.rules.get(method, ())

    def own_for(
        self, food: FoodFacts, method: Method, state: State, climate: Climate
    ) -> list[Rule]:
        """The household's rules for this."""
        return [
            rule
            for rule in self.own
            if rule.method is method
            and rule.state is state
            and climate in rule.climates
            and closeness(rule, food) >= 0
        ]


#: Methods whose finished food stands at room temperature: a rule for a warmer place also covers
#: a cooler one (never longer, house default "anything cooler than its reference"), down to the
#: refrigerator. Elsewhere a place without a rule has no published figure.
SHELF_STABLE = frozenset(
    {
        Method.BOILING_WATER, Method.PRESSURE, Method.JAM, Method.VINEGAR_PICKLE, Method.DRIED,
        Method.FREEZE_DRIED, Method.SUGAR, Method.INFUSION, Method.FLAVOURED_VINEGAR,
        Method.RENDERED_FAT, Method.ALCOHOL_FERMENT, Method.VINEGAR_FERMENT,
    }
)  # fmt: skip


#: Which groups a class can belong to: a food that is not in the tables might be any class of its
#: group, so it takes all their rules and the strictest wins.
CLASS_GROUPS: dict[str, tuple[Group, ...]] = {
    "tomato": (Group.VEGETABLE, Group.FRUIT), "citrus": (Group.FRUIT,), "berry": (Group.FRUIT,),
    "stone-fruit": (Group.FRUIT,), "bean": (Group.VEGETABLE,), "root": (Group.VEGETABLE,),
    "leafy": (Group.VEGETABLE,), "brassica": (Group.VEGETABLE,), "allium": (Group.VEGETABLE,),
    "garlic": (Group.VEGETABLE, Group.RELISH), "fresh-herb": (Group.HERB, Group.RELISH),
    "ground-meat": (Group.MEAT,), "whole-cut": (Group.MEAT,), "poultry": (Group.MEAT,),
    "cured-meat": (Group.MEAT,), "sausage": (Group.MEAT,), "jerky": (Group.MEAT,),
    "fatty-fish": (Group.FISH,), "lean-fish": (Group.FISH,), "shellfish": (Group.FISH,),
    "soup": (Group.MEAL,), "stock": (Group.MEAL, Group.DRINK), "pie": (Group.MEAL, Group.GRAIN),
    "bread": (Group.GRAIN,), "baked": (Group.GRAIN,), "nut": (Group.FRUIT, Group.FAT),
    "leather": (Group.FRUIT,), "juice": (Group.DRINK, Group.FRUIT),
}  # fmt: skip


def closeness(rule: Rule, food: FoodFacts) -> int:
    """3 the food itself, 2 its class, 1 its group, 0 any food or several kinds, -1 another food.

    A figure for several kinds is as wide as one for any food, but speaks for no other kind.
    """
    if ";" in rule.food:
        return 0 if any(_near(key, food) >= 0 for key in rule.food.split(";")) else -1
    return _near(rule.food, food)


def _near(key: str, food: FoodFacts) -> int:
    """The same for one key of a rule."""
    if key == "*":
        return 0
    kind, _, named = key.partition(":")
    if kind == "acid":
        sour = food.acidity is not Acidity.LOW_ACID
        return 1 if sour and named == food.group.value else -1
    if kind == "group":
        return 1 if named == food.group.value else -1
    if kind == "class":
        if named in food.classes:
            return 2
        return 1 if _might_be(named, food) else -1
    return 3 if key == food.name else -1


def _might_be(class_: str, food: FoodFacts) -> bool:
    """Whether a food that is not in the tables could be of this class."""
    return not food.known and food.group in CLASS_GROUPS.get(class_, ())


def _covering(rules: Sequence[Rule], climate: Climate, method: Method) -> list[Rule]:
    here = [rule for rule in rules if climate in rule.climates]
    if method not in SHELF_STABLE or climate is Climate.FREEZER:
        return here
    if any(rule.kind is not Kind.REFUSE for rule in here):
        return here
    if any(rule.kind is Kind.REFUSE for rule in here):
        return here
    for warmer in reversed(WARM_TO_COLD[: WARM_TO_COLD.index(climate)]):
        found = [rule for rule in rules if warmer in rule.climates and rule.kind is not Kind.REFUSE]
        if found:
            return found
    return here


def _without_guesses(found: list[Rule], food: FoodFacts) -> list[Rule]:
    """Quality figures of a class that a food might be only shorten a figure that surely is its:
    three months for root crops say nothing of a vegetable that nobody knows."""

    def guessed(rule: Rule) -> bool:
        return rule.food.startswith("class:") and rule.food[6:] not in food.classes

    if food.known or any(rule.use is not None and not guessed(rule) for rule in found):
        return found
    return [rule for rule in found if rule.kind is not Kind.QUALITY or not guessed(rule)]


def speaking(
    rules: Sequence[Rule], food: FoodFacts, method: Method, state: State, climate: Climate
) -> list[Rule]:
    """The current rules that speak for this food, closest first, then strictest.

    A food that is not in the tables takes every class of its group, since nobody knows
    which it is: the strictest then wins. A guessed class never brings a date by itself.
    """
    if method is Method.BOILING_WATER and food.acidity is Acidity.LOW_ACID:
        return []
    fits = [
        rule
        for rule in rules
        if rule.status is Status.CURRENT and rule.state is state and closeness(rule, food) >= 0
    ]
    found = _without_guesses(_covering(fits, climate, method), food)
    # A figure for the food itself stands against a refusal of its whole class or group: a whole
    # dry-cured ham keeps at room temperature, other cured meat does not.
    own = max((closeness(rule, food) for rule in found if rule.use is not None), default=-1)
    own = own if food.known else -1

    def stands(rule: Rule) -> bool:
        packed = rule.food.startswith("class:vacuum")
        return rule.kind is not Kind.REFUSE or packed or closeness(rule, food) >= own

    return sorted(
        (rule for rule in found if stands(rule)),
        key=lambda rule: (-closeness(rule, food), rule.days),
    )


def is_animal(group: Group) -> bool:
    """Meat, fish, egg, dairy and meals: nothing of these is safe on a guess."""
    return group in (Group.MEAT, Group.FISH, Group.EGG, Group.DAIRY, Group.MEAL)


#: Thawed in cold water or a microwave oven, parts of it may have been warm: cook it at once.
COOK_AT_ONCE = Rule(
    id="thawed-fast-s",
    method=Method.FROZEN,
    food="*",
    state=State.THAWED,
    climates=frozenset(Climate),
    kind=Kind.SAFETY,
    least=0,
    most=0,
    use=0,
    unit="days",
    temp_f_max=None,
    status=Status.CURRENT,
    wording="Thawed in cold water or a microwave oven: cook at once, and freeze only then.",
    source="okstate-thawing",
    trust=Trust.READ,
)
