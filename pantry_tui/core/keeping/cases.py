"""What the published figures say of a food in a state, in a climate, at a warmth."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from pantry_tui.core.dataclass import dataclass
from pantry_tui.core.keeping.rules import (
    SHELF_STABLE,
    THAWED_ONE_DAY,
    THAWED_OUT,
    Rule,
    Rulebook,
    Status,
    closest,
    guessed,
    held_at,
)
from pantry_tui.core.keeping.spans import Span
from pantry_tui.core.keeping.warmth import Case, Life, life
from pantry_tui.core.keeping.weather import THAWS_F
from pantry_tui.core.keeping.wide import wide_life
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.words import COLD_F, Climate, Kind, Method, State

#: Home advice of the United Kingdom and the European Union has refrigerators at 0 to 5 °C, and
#: its day counts hold there; the United States say 40 °F. From 40 to 41 °F a refrigerator is no
#: end by itself: the stricter day count of both stands, and it is said so.
BOTH_WORLDS_F = 41.0
#: Figures published at 37 or 38 °F are held to a place at 38 °F, the coldest that a household
#: refrigerator is taken to be.
COLDEST_FRIDGE_F = 38.0
_WARM = frozenset({Climate.ROOM, Climate.PANTRY, Climate.CELLAR})


@dataclass(frozen=True, slots=True)
class Said:
    """What the rules say of a case.

    `safety` are the limits that start to run, the closest current one first. `quality` is None
    without a figure, `wide` what the wide table says in its stead. `coldest` is the °F above which
    food that keeps only in the cold is too warm here, None where that does not matter; `perishable`
    whether it is then unsafe.
    """

    found: Sequence[Rule]
    refusal: Rule | None
    safety: tuple[Rule, ...]
    quality: Life | None
    own: tuple[Rule, ...]
    coldest: float | None
    perishable: bool
    both_worlds: Rule | None
    covered: bool
    wide: Life | None

    def speaks_of(self, food: str) -> bool:
        """Whether a limit is of that very food, and not of its kind."""
        return any(food in rule.food.split(";") for rule in self.safety)


class Told(NamedTuple):
    """A state in a span, and what is said of it."""

    span: Span
    state: State
    said: Said


class _Asked(NamedTuple):
    """`heard` are the methods under which a rule of the household's own may be booked beside."""

    food: FoodFacts
    method: Method
    heard: tuple[Method, ...]


class Sayings:
    """The answers for one food and method, each worked out once."""

    __slots__ = ("_answers", "_asked", "_book")

    def __init__(self, asked: _Asked, book: Rulebook) -> None:
        self._asked, self._book = asked, book
        self._answers: dict[tuple[State, Climate, float], Said] = {}

    def of(self, state: State, climate: Climate, temperature_f: float) -> Said:
        """The answer for this state and place."""
        key = state, climate, temperature_f
        said = self._answers.get(key)
        if said is None:
            food, method, heard = self._asked
            case = Case(food, method, state, *_standing(method, climate, temperature_f))
            said = self._answers[key] = _said(case, self._book, heard)
        return said


def sayings(
    food: FoodFacts, method: Method, book: Rulebook, heard: tuple[Method, ...] = ()
) -> Sayings:
    """What a rulebook says of a food and method, kept as long as the rulebook is. `heard`: other
    methods whose rules of the household's own speak for it too."""
    key = _Asked(food, method, heard)
    found: Sayings | None = book.worked_out.get(key)
    if found is None:
        found = book.worked_out[key] = Sayings(key, book)
    return found


def _standing(method: Method, climate: Climate, warm: float) -> tuple[Climate, float]:
    """A freezer that does not freeze is a refrigerator, or a room for what needs no cold."""
    if climate is not Climate.FREEZER or warm <= THAWS_F:
        return climate, warm
    if warm > COLD_F and method in SHELF_STABLE:
        return Climate.ROOM, warm
    return Climate.FRIDGE, warm


def _said(case: Case, book: Rulebook, heard: Sequence[Method]) -> Said:
    found = speaking_for(case, book)
    cold_only = [rule for rule in found if rule.use is not None and not rule.climates & _WARM]
    coldest = _coldest(cold_only) if case.climate is Climate.FRIDGE and cold_only else None
    between = coldest == BOTH_WORLDS_F and COLD_F < case.temperature_f <= BOTH_WORLDS_F
    stricter = _stricter(case, book) if book.strict or between else ()
    safety = _least(found, stricter, case.food, Kind.SAFETY)
    refusal = closest(found, case.food, Kind.REFUSE)
    quality = _quality(case, found, stricter, book)
    return Said(
        found,
        refusal,
        safety,
        quality,
        tuple(
            rule
            for method in (case.method, *heard)
            for rule in book.own_for(case.food, method, case.state, case.climate)
        ),
        coldest,
        any(rule.kind is Kind.SAFETY for rule in cold_only),
        safety[-1] if safety and between else None,
        any(rule.use is not None and not guessed(rule, case.food) for rule in found),
        wide_life(case, quality, book) if refusal is None else None,
    )


def speaking_for(case: Case, book: Rulebook, status: Status = Status.CURRENT) -> Sequence[Rule]:
    """The rules of a status for a case. An opened or thawed pack in the freezer keeps like a
    closed one."""
    food, method, state, climate, warm = case
    found = book.speaking(food, method, state, climate, status)
    if not found and climate is Climate.FREEZER and state in (State.OPEN, State.THAWED):
        closed = book.speaking(food, method, State.SEALED, climate, status)
        return [rule for rule in closed if rule.kind is not Kind.REFUSE]
    if not found and state is State.THAWED and status is Status.CURRENT:
        return [THAWED_ONE_DAY if climate is Climate.FRIDGE else THAWED_OUT]
    return held_at(found, warm)


def _stricter(case: Case, book: Rulebook) -> Sequence[Rule]:
    found = speaking_for(case, book, Status.STRICTER)
    return [rule for rule in found if rule.use is not None]


def _least(
    found: Sequence[Rule], stricter: Sequence[Rule], food: FoodFacts, kind: Kind
) -> tuple[Rule, ...]:
    """The figure in use, and after it the shortest of the stricter ones where it is shorter."""
    mine = closest([rule for rule in found if rule.use is not None], food, kind)
    other = min(
        (rule for rule in stricter if rule.kind is kind), key=lambda rule: rule.days, default=None
    )
    if other is None or (mine is not None and mine.days <= other.days):
        return (mine,) if mine is not None else ()
    return (mine, other) if mine is not None else (other,)


def _quality(
    case: Case, found: Sequence[Rule], stricter: Sequence[Rule], book: Rulebook
) -> Life | None:
    usual = life(case, found, book)
    other = closest(stricter, case.food, Kind.QUALITY) if book.strict else None
    if other is None or (usual is not None and usual.rule.days <= other.days):
        return usual
    return Life(other, usual.share, usual.note) if usual is not None else Life(other)


def _coldest(cold_only: Sequence[Rule]) -> float:
    """40 °F, or what the figure itself asks for where that is colder; food whose figures stand
    at 40 °F is held to 41 °F, where other countries' figures stand."""
    asked = [
        max(COLDEST_FRIDGE_F, rule.temp_f_max)
        for rule in cold_only
        if rule.kind is Kind.SAFETY and rule.temp_f_max is not None
    ]
    limit = min([COLD_F, *asked])
    return BOTH_WORLDS_F if limit == COLD_F else limit
