"""How many days food thaws in a refrigerator: by the weight that was in it when that began, and no
longer than what is left of it while it thaws."""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Sequence
from fractions import Fraction
from typing import NamedTuple

from pantry_tui.core.amounts import Amount
from pantry_tui.core.model import Turn, When
from pantry_tui.core.words import State

#: A day in the refrigerator thaws so many pounds (USDA FSIS: a day for each 4 to 5 lb; the
#: extension services that carry it say 5).
THAWS_LB_A_DAY = 5
#: So long thaws the largest piece for which times are published (USDA, turkeys of 20 to 24 lb, as
#: quoted): what weighs more is taken for one, and a box of packs thaws sooner than it.
MOST_DAYS = 5
_POUND = {
    "lb": Fraction(1),
    "oz": Fraction(1, 16),
    "g": Fraction("0.00220462"),
    "kg": Fraction("2.20462"),
}


def thaw_days(size: str, amount: Amount | None) -> int:
    """How many days so much of a size thaws in the refrigerator; one where nobody knows its
    weight, and no more than `MOST_DAYS`."""
    held = _said(size) if amount is None else amount
    if held is None:
        return 1
    pound = held.number * _POUND.get(held.unit, Fraction())
    return min(max(1, math.ceil(pound / THAWS_LB_A_DAY)), MOST_DAYS)


class Draw(NamedTuple):
    """Some of it was taken out."""

    when: When
    much: Amount


def weighed(
    turns: Sequence[Turn], size: str, first: Amount | None, draws: Iterable[Draw]
) -> tuple[Turn, ...]:
    """The turns of a container that held so much at first, each thaw with how long it takes. What
    may have been drawn before it began was not in it; what was drawn while it thawed leaves a
    smaller piece, which is thawed that much sooner."""
    known = list(draws)
    return tuple(
        turn._replace(thaws=_thaws(turn, size, first, known))
        if turn.state is State.THAWED and first is not None
        else turn
        for turn in turns
    )


def _thaws(turn: Turn, size: str, first: Amount, draws: Sequence[Draw]) -> int:
    def left_by(then: When) -> Amount:
        gone = sum((one.much.number for one in draws if one.when.first <= then.last), Fraction())
        return Amount(max(first.number - gone, Fraction()), first.unit)

    began = turn.when
    days = [thaw_days(size, left_by(began))]
    for one in draws:
        if one.when.last >= began.first:
            since = max(0, (one.when.day - began.day).days)
            days.append(since + thaw_days(size, left_by(one.when)))
    return min(days)


def parted(turns: Iterable[Turn], born: When, held: Amount | None) -> tuple[Turn, ...]:
    """The turns of a piece that was taken out on a day, `held` of it: while it thaws it is thawed
    as soon as a piece of its weight."""

    def sooner(turn: Turn) -> Turn:
        if turn.thaws is None or held is None:
            return turn
        since = max(0, (born.day - turn.when.day).days)
        return turn._replace(thaws=min(turn.thaws, since + thaw_days("", held)))

    return tuple(map(sooner, turns))


def _said(size: str) -> Amount | None:
    """("20 lb bag") -> 20 lb; a volume or nothing is no weight."""
    said = re.search(r"(?<![\d.])(\d{1,7}(?:\.\d{1,6})?)[\s-]*(lb|oz|kg|g)s?\b", size.casefold())
    return Amount(Fraction(said[1]), said[2]) if said else None
