"""How much is meant by what a person types after a code: 2, 2 lb, half, 2 servings, all.

A number counts closed containers, or pieces where things are counted; of a crate, a sack or a crock
a bare number could be either, and is asked about. An amount is drawn from what was begun first,
and goes on into the next one.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from fractions import Fraction
from typing import NamedTuple

from pantry_tui.core.amounts import Amount, kitchen, read_amount
from pantry_tui.core.dataclass import dataclass
from pantry_tui.core.lidcode import normal_code
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.fold import EMPTY
from pantry_tui.core.model import Container
from pantry_tui.core.vessels import Vessel
from pantry_tui.core.words import State
from pantry_tui.errors import BadInput, Refused, Unclear
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.moving import cold_place
from pantry_tui.services.stock.pick import containers_named, name_of
from pantry_tui.services.stock.seen import At, last_minute, when
from pantry_tui.services.stock.telling import remaining, say_of

_SHARES = {
    "half": Fraction(1, 2), "a half": Fraction(1, 2), "half of it": Fraction(1, 2),
    "a quarter": Fraction(1, 4), "quarter": Fraction(1, 4), "a third": Fraction(1, 3),
    "two thirds": Fraction(2, 3), "three quarters": Fraction(3, 4),
}  # fmt: skip
_ALL = ("all", "all of it", "everything", "the rest")
_SERVINGS = r"(.+?) ?servings?"
_PIECES = r"(\d[\d ./]{0,11}?) ?(?:pieces?|heads?|fruits?|eggs?|of them)"


class Wanted(NamedTuple):
    """What was asked for: so many (`unit` None), an amount of a unit, a `share` of one container,
    `servings`, or `all` there is."""

    kind: str
    number: Fraction = Fraction(1)
    unit: str = ""


@dataclass(frozen=True, slots=True)
class Part:
    """What is taken of one container; `amount` None where it is all of it."""

    container: Container
    amount: Amount | None = None


#: Which of a batch's containers come into question, and in which order: as `containers_named`.
Pick = Callable[[int], Sequence[Container]]


#: With what an amount begins that is no number.
_BEGINS = frozenset({one.split()[0] for one in (*_SHARES, *_ALL)} | {"an", "one", "dozen"})


def begins_amount(word: str) -> bool:
    """("2", "½", "half", "a") Whether the words of an amount may begin so."""
    return word[:1].isnumeric() or word.casefold() in _BEGINS


def read_wanted(typed: str | None) -> Wanted:
    """("2 lb") -> that amount; ("") -> one. Raises BadInput."""
    text = " ".join((typed or "").casefold().split())
    if not text:
        return Wanted("bare")
    if text in _ALL:
        return Wanted("all")
    if text in _SHARES:
        return Wanted("share", _SHARES[text])
    if text.endswith("%") and text[:-1].strip().isdecimal():
        return _share(Fraction(int(text[:-1]), 100), typed)
    if (found := re.fullmatch(_SERVINGS, text)) is not None:
        return Wanted("servings", read_amount("1" if found[1] in ("a", "one") else found[1])[0])
    if (found := re.fullmatch(_PIECES, text)) is not None:
        number = read_amount(found[1])[0]  # half a head is no half of what is left
        return Wanted("count" if number.denominator == 1 else "amount", number)
    number, unit = read_amount(text)
    if unit:
        return Wanted("amount", number, unit)
    if number < 1:
        return _share(number, typed)
    if number.denominator != 1:
        raise BadInput(f"{typed!r} is no count: give a whole number, or a weight like 2 lb.")
    return Wanted("count", number)


def _share(number: Fraction, typed: str | None) -> Wanted:
    if not 0 < number <= 1:
        raise BadInput(f"{typed!r} is no part of one: write half, a quarter or 25%.")
    return Wanted("all") if number == 1 else Wanted("share", number)


def drawn(p: Pantry, ref: str, wanted: Wanted, pick: Pick) -> list[Part]:
    """What is taken of which containers, begun ones first. `pick(n)` gives the `n` containers that
    are meant, in the order in which they are taken, and raises Refused where there are not so many.

    Raises Unclear where how much is meant must be said, BadInput and Refused as it does.
    """
    first = pick(1)[0]
    count = int(wanted.number) if wanted.kind == "count" else 1
    if wanted.kind in ("bare", "count"):
        if first.vessel is Vessel.PIECES and first.bulk:
            return _amounts(pick, first, Amount(Fraction(count)))
        if first.vessel is Vessel.OPEN:
            raise how_much(p, first, ref)
        return [Part(one) for one in pick(count)]
    if wanted.kind == "all":
        return [Part(one) for one in _every(pick, ref)]
    assert first.left is not None
    if wanted.kind == "share":
        return [Part(first, _of(first.left, wanted.number))]
    if wanted.kind == "servings":
        from pantry_tui.services.plan.servings import servings  # only where servings are counted

        share = Fraction(float(wanted.number) / max(servings(p, first), 1e-9))
        much = Amount(first.left.number * share.limit_denominator(1000), first.left.unit)
        return _amounts(pick, first, kitchen(much))
    return _amounts(pick, first, Amount(wanted.number, wanted.unit))


def how_much(p: Pantry, container: Container, ref: str) -> Unclear:
    """The question that a bare number leaves open."""
    left = container.left
    assert left is not None
    whole = f"all {left} of it" if container.bulk else "all of it"
    like = f"2 {left.unit}" if container.bulk and left.unit else "half"
    code = normal_code(ref) if "/" in ref else name_of(p, container).partition("/")[0]
    return Unclear(
        f"How much of {name_of(p, container)}? Say an amount, like `{code} {like}`, or half, "
        f"2 servings, or all for {whole}.",
        "amount",
        ref,
        (like, "half", "2 servings", "all"),
    )


def _every(pick: Pick, ref: str) -> Sequence[Container]:
    """As many as there are."""
    found = pick(1)
    if "/" in ref:
        return found
    try:
        while True:
            found = pick(len(found) + 1)
    except Refused:
        return found


def _amounts(pick: Pick, first: Container, much: Amount) -> list[Part]:
    """So much, from the first container that is meant and on into the next ones."""
    assert first.left is not None
    unit = first.left.unit
    rest = convert(first, much).number
    if rest < EMPTY:
        raise Refused(
            f"{much.exact} is too little to book of what is counted in {unit or 'pieces'}: take at "
            f"least {Amount(EMPTY, unit)}."
        )
    found: list[Part] = []
    there = Fraction(0)
    for number in range(1, 1000):
        try:
            one = pick(number)[-1]
        except (Refused, BadInput):
            break
        if one.left is None or one.left.unit != unit:
            break
        there += one.left.number
        if one.left.number - rest >= EMPTY:
            return [*found, Part(one, Amount(rest, unit))]
        found.append(Part(one))
        rest -= one.left.number
        if rest <= 0:
            return found
    left = Amount(there, unit)
    raise Refused(f"Only {left} is left: take {left} or less.")


def convert(container: Container, much: Amount) -> Amount:
    """The amount in the unit of what is there. Raises BadInput, Refused where none is known."""
    have = container.left
    assert have is not None
    if much.unit == have.unit:
        return much
    if not have.unit:
        what = "It is counted by the piece" if container.bulk else "Nobody said how much it holds"
        raise Refused(f"{what}: take a number of it, half, or 2 servings.")
    if not much.unit:
        raise BadInput(f"Give the amount with its unit, like 2 {have.unit}.")
    from pantry_tui.measures import convert  # the unit library only where amounts convert

    return Amount(convert(much.number, much.unit, have.unit), have.unit)


def _of(left: Amount, share: Fraction) -> Amount:
    """That part of what is left; of several pieces whole ones, at least one."""
    number = left.number * share
    if not left.unit and left.number > 1:
        number = Fraction(max(1, round(number)))
    return Amount(number, left.unit)


def booked_of(
    p: Pantry,
    parts: Sequence[Part],
    payload: Callable[[tuple[str, ...], Amount | None], said.Payload],
    at: At | None,
) -> None:
    """Book what is taken: whole containers in one event, each amount in one of its own; the first
    draw opens a closed vessel where food of its kind stands once it is open."""
    whole = tuple(part.container.id for part in parts if part.amount is None)
    found: list[said.Payload] = [payload(whole, None)] if whole else []
    for part in parts:
        if part.amount is None:
            continue
        one = part.container
        if opens(part):
            found.append(said.Open(one.batch, (one.id,), kept_open(p, part, at)))
        found.append(payload((one.id,), part.amount))
    if len(found) == 1:
        p.book(found[0], **when(at))
        return
    with p.together():
        for each in found:
            p.book(each, **when(at))


def opens(part: Part) -> bool:
    """Whether the draw opens a closed vessel."""
    one = part.container
    return part.amount is not None and one.vessel is Vessel.CLOSED and one.state is State.SEALED


def kept_open(p: Pantry, part: Part, at: At | None) -> str:
    """Where what is left of a closed vessel goes with the draw that opens it, "" where it stays."""
    return opened_in(p, part.container, at) if opens(part) else ""


def opened_in(p: Pantry, container: Container, at: At | None) -> str:
    """Into which place a vessel goes as it is opened then; "" where it stays, or is known to have
    gone elsewhere since. Where it stays is not said: a move that is told later may show that it
    stood in another place by then, and stayed there."""
    place = cold_place(p, container, State.OPEN)
    return "" if place == container.place or _went_on(p, container, at) else place


def _went_on(p: Pantry, container: Container, at: At | None) -> bool:
    """Whether it is known to have been moved after that moment."""
    if at is None:
        return False
    last = last_minute(p, at)
    return any(turn.place is not None and turn.when.first > last for turn in container.turns[1:])


def went_along(p: Pantry, before: Container) -> str:
    """Where it was carried as it was drawn from, "" where it stayed."""
    now = p.stock.containers[before.id]
    return p.where(now) if now.place != before.place else ""


def say_drawn(p: Pantry, parts: Sequence[Part], how: str = "") -> str:
    """ "2 lb of 7C/1 potatoes; 38 lb left in it", or what `say_of` and `remaining` say of whole
    ones. `how` it left stands behind what left: " (mould)"."""
    batch = p.stock.batches[parts[0].container.batch]
    some = [part for part in parts if part.amount is not None]
    whole = [part.container for part in parts if part.amount is None]
    taken = [say_of(p, whole)] if whole else []
    taken += [f"{part.amount} of {say_of(p, [part.container])}" for part in some]
    after = [p.stock.containers[part.container.id] for part in some]
    rest = [
        f"{one.left} left in it{f', now in {to}' if (to := went_along(p, part.container)) else ''}"
        for part, one in zip(some, after, strict=True)
        if one.here
    ]
    emptied = bool(some) or any(one.bulk for one in whole)
    if not rest:
        rest = ["it is empty now" if emptied and len(parts) == 1 else remaining(p, batch.id)]
    return f"{' and '.join(taken)}{how}; {', '.join(rest)}"


def pick_of(
    p: Pantry,
    ref: str,
    fits: Callable[[Container], bool] = lambda _container: True,
    doing: str = "be taken",
    *,
    ours: bool = False,
    first: Callable[[Container], int] = lambda _container: 0,
) -> Pick:
    """`containers_named` as `drawn` asks it: the same ones in the same order, however many."""

    def pick(count: int) -> Sequence[Container]:
        return containers_named(p, ref, count, fits, doing, ours=ours, first=first)

    return pick
