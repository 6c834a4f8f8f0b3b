"""A published keeping rule, and which rules speak for a food in a state and a climate."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from datetime import date
from enum import StrEnum
from functools import lru_cache
from typing import TYPE_CHECKING, Any

from pantry_tui.core import dates, scope
from pantry_tui.core.canned import low_acid_in_water
from pantry_tui.core.dataclass import dataclass, field, replace
from pantry_tui.core.model import Crop, FoodFacts
from pantry_tui.core.words import (
    COLD_F,
    WARM_TO_COLD,
    Climate,
    Kind,
    Method,
    State,
    Trust,
)

if TYPE_CHECKING:
    from pantry_tui.core.safety.outage import OutageRule


class Status(StrEnum):
    """Only `current` rows ever give a date (and `stricter` ones where those are asked for); the
    others are shown, or kept to be refused."""

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
    `temp_f_min`: the figure stands from this °F up, in place of the same food's figure for below.
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
    temp_f_min: float | None = None

    @property
    def days(self) -> float:
        """About how many days, only to compare rules with one another."""
        per = {"hours": 1 / 24, "days": 1, "weeks": 7, "months": 30.4375, "years": 365.25}
        return float("inf") if self.use is None else self.use * per[self.unit]


@lru_cache(maxsize=16384)
def last_day(start: date, number: float, unit: str) -> date:
    """Day 0 and a figure -> the last good day. Batches share their days, so most are known."""
    return dates.add(start, number, unit)


def _no_rows() -> Sequence[OutageRule]:
    return ()


def _no_figures(_food: str) -> Sequence[Rule]:
    return ()


def _not_older(_source: str) -> bool:
    return False


@dataclass(frozen=True, slots=True)
class Rulebook:
    """Everything published that judging needs, and what the household added to it.

    `own` rules stand beside the published ones and never hide them: for safety the earlier date
    wins; for quality their date is shown, and a food that no publication covers stays unknown.
    `strict`: the household follows the strictest current advice of any country, so rows of the
    status `stricter` count beside the current ones. `cuts` gives the rows for power cuts, read
    only when there was one; without rows all that was too warm is thrown away. `wide` gives the
    quality figures of the one wide table for a food's name, and `older` whether a source is known
    to be no newer than that table (core.keeping.wide).
    """

    rules: Mapping[Method, Sequence[Rule]]
    crops: Mapping[str, Crop] = field(default_factory=dict)
    own: tuple[Rule, ...] = ()
    strict: bool = False
    cuts: Callable[[], Sequence[OutageRule]] = field(default=_no_rows, compare=False)
    wide: Callable[[str], Sequence[Rule]] = field(default=_no_figures, compare=False)
    older: Callable[[str], bool] = field(default=_not_older, compare=False)
    _spoken: dict[tuple[Any, ...], Sequence[Rule]] = field(
        default_factory=dict, init=False, repr=False, compare=False
    )
    #: What core.keeping.cases works out from the rules, kept as long as the rules are.
    worked_out: dict[tuple[Any, ...], Any] = field(
        default_factory=dict, init=False, repr=False, compare=False
    )

    def speaking(
        self,
        food: FoodFacts,
        method: Method,
        state: State,
        climate: Climate,
        status: Status = Status.CURRENT,
    ) -> Sequence[Rule]:
        """What `speaking` finds in the published rules; the same question is answered once."""
        asked = (food, method, state, climate, status)
        if asked not in self._spoken:
            table = self.of(method)
            self._spoken[asked] = tuple(speaking(table, food, method, state, climate, status))
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


def closeness(rule: Rule, food: FoodFacts) -> int:
    """3 the food itself, 2 its class, 1 its group, 0 any food or several kinds, -1 another food.

    A figure for several kinds is as wide as one for any food, but speaks for no other kind.
    """
    if ";" in rule.food:
        near = (scope.near(key, food) for key in rule.food.split(";"))
        return scope.ANY if any(one > scope.OTHER for one in near) else scope.OTHER
    return scope.near(rule.food, food)


def _covering(rules: Sequence[Rule], climate: Climate, method: Method) -> list[Rule]:
    here = [rule for rule in rules if climate in rule.climates]
    if here or method not in SHELF_STABLE or climate is Climate.FREEZER:
        return here
    for warmer in reversed(WARM_TO_COLD[: WARM_TO_COLD.index(climate)]):
        found = [rule for rule in rules if warmer in rule.climates and rule.kind is not Kind.REFUSE]
        if found:
            return found
    return here


def guessed(rule: Rule, food: FoodFacts) -> bool:
    """Whether it speaks only of classes that the food is not known to be of: it may set a limit,
    and it covers nothing."""
    keys = rule.food.split(";")
    return all(scope.near(key, food, guess=False) == scope.OTHER for key in keys)


def _of_another(rule: Rule, food: FoodFacts) -> bool:
    """Whether a rule that speaks for it by guesses alone is plainly about another thing."""
    if food.known or not guessed(rule, food):
        return False
    return all(scope.plainly_other(scope.class_of(key), food) for key in rule.food.split(";"))


def _without_guesses(found: list[Rule], food: FoodFacts) -> list[Rule]:
    """Quality figures of a class that a food might be only shorten a figure that surely is its:
    three months for root crops say nothing of a vegetable that nobody knows. Those of what it
    plainly is not say nothing at all."""

    found = [rule for rule in found if rule.kind is not Kind.QUALITY or not _of_another(rule, food)]
    if any(rule.use is not None and not guessed(rule, food) for rule in found):
        return found
    return [rule for rule in found if rule.kind is not Kind.QUALITY or not guessed(rule, food)]


def speaking(
    rules: Sequence[Rule],
    food: FoodFacts,
    method: Method,
    state: State,
    climate: Climate,
    status: Status = Status.CURRENT,
) -> list[Rule]:
    """The rules of a status that speak for this food, closest first, then strictest.

    A food that is not in the tables takes every class of its group, since nobody knows
    which it is: the strictest then wins. A guessed class never brings a date by itself.
    """
    if low_acid_in_water(method, food):
        return []
    fits = [
        rule
        for rule in rules
        if rule.status is status and rule.state is state and closeness(rule, food) >= 0
    ]
    found = _without_guesses(_covering(fits, climate, method), food)
    # A figure for the food itself stands against a refusal of its whole class or group: a whole
    # dry-cured ham keeps at room temperature, other cured meat does not.
    own = max((closeness(rule, food) for rule in found if rule.use is not None), default=-1)
    own = own if food.known else -1

    def stands(rule: Rule) -> bool:
        packed = scope.class_of(rule.food).startswith(("vacuum", "cut"))
        return rule.kind is not Kind.REFUSE or packed or closeness(rule, food) >= own

    return sorted(
        (rule for rule in found if stands(rule)),
        key=lambda rule: (-closeness(rule, food), rule.days),
    )


def held_at(found: Sequence[Rule], warm: float) -> Sequence[Rule]:
    """The rules that hold at `warm` °F: of a pair of figures for two ranges (smoked fish below
    36 °F, and from 36 °F up) only the one for its range. On the edge the warmer range holds."""

    def holds(rule: Rule) -> bool:
        if rule.temp_f_min is not None:
            return warm >= rule.temp_f_min
        most = rule.temp_f_max
        pair = rule.food, rule.kind, most
        return (
            most is None
            or warm < most
            or all((one.food, one.kind, one.temp_f_min) != pair for one in found)
        )

    return [rule for rule in found if holds(rule)]


def closest(found: Sequence[Rule], food: FoodFacts, kind: Kind) -> Rule | None:
    """The closest rule of that kind; where equally close, the one with the shortest life.

    data/keeping.csv marks as current only the figure in use, so a food's own row stands for it.
    """
    best = [rule for rule in found if rule.kind is kind]
    if not best:
        return None
    nearest = closeness(best[0], food)
    level = [rule for rule in best if closeness(rule, food) == nearest]
    return min(level, key=lambda rule: rule.days)


def _of_thawed_food(
    id_: str,
    kind: Kind,
    use: float | None,
    climates: frozenset[Climate],
    wording: str,
    source: str,
    trust: Trust = Trust.READ,
) -> Rule:
    """A rule for all thawed food, whatever the method."""
    return Rule(
        id=id_,
        method=Method.FROZEN,
        food="*",
        state=State.THAWED,
        climates=climates,
        kind=kind,
        least=use,
        most=use,
        use=use,
        unit="days",
        temp_f_max=COLD_F if Climate.FRIDGE in climates else None,
        status=Status.CURRENT,
        wording=wording,
        source=source,
        trust=trust,
    )


#: Thawed in cold water or a microwave oven, parts of it may have been warm: cook it at once.
COOK_AT_ONCE = _of_thawed_food(
    "thawed-fast-s",
    Kind.SAFETY,
    0,
    frozenset(Climate),
    "Thawed in cold water or a microwave oven: cook at once, and freeze only then.",
    "okstate-thawing",
)
#: Thawed food of which no row of a method speaks: the strictest of the thawed limits.
THAWED_ONE_DAY = _of_thawed_food(
    "thawed-any-s",
    Kind.SAFETY,
    1,
    frozenset({Climate.FRIDGE}),
    "No closer figure once thawed, so held to the strictest thawed limit: a day.",
    "okstate-thawing",
)
THAWED_OUT = _of_thawed_food(
    "thawed-any-r",
    Kind.REFUSE,
    None,
    frozenset({Climate.ROOM, Climate.PANTRY, Climate.CELLAR}),
    "Thawed food out over two hours is thrown away.",
    "fsis-freezing",
    Trust.REPRINT,
)
#: Moist shop food of which no row speaks.
BOUGHT_OUT = replace(
    THAWED_OUT,
    id="bought-cold-r",
    method=Method.BOUGHT,
    state=State.SEALED,
    wording="Moist shop food is kept cold, but for what stood on a shelf and was never opened.",
)
