"""Which sign of a container a person's words name: what may show on it, and what was meant."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from pantry_tui.core.canned import LIDDED, PROCESSED
from pantry_tui.core.dataclass import replace
from pantry_tui.core.keeping.doubt import RESCUE_DAYS
from pantry_tui.core.keeping.limits import as_packed
from pantry_tui.core.log import payloads as said
from pantry_tui.core.model import Batch, Container
from pantry_tui.core.safety.of_all import of_all
from pantry_tui.core.safety.out_of_the_cold import book_the_move, says_left_out
from pantry_tui.core.safety.own_words import OWN_ID, all_is_well, held, says_nothing_of_others
from pantry_tui.core.safety.said import meant, without_popped, worst_named
from pantry_tui.core.safety.seals import beside_the_seal, is_of_the_seal, says_seal_failed
from pantry_tui.core.safety.signs import (
    THROWN,
    UNSURE,
    Sign,
    find_sign,
    near_signs,
    sign_words,
    signs_for,
    strictness,
)
from pantry_tui.core.words import Method, State
from pantry_tui.errors import BadInput
from pantry_tui.reference.signs import load_signs
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.pick import last_state, name_of


def possible(p: Pantry, container: Container) -> list[Sign]:
    """The signs that can be seen on a container, worst first."""
    batch = p.stock.batches[container.batch]
    state = last_state(container)
    found: dict[str, Sign] = {}
    for one in (batch, *_parts_of(p, batch)):
        food = as_packed(one, state is State.OPEN).food
        opened = state is not State.SEALED or one is not batch
        found |= {s.id: s for s in signs_for(load_signs(), one.method, food, opened)} | found
    return list(found.values())


def _parts_of(p: Pantry, batch: Batch) -> list[Batch]:
    """What it was made from, however far back: it may show what they may."""
    found: dict[str, Batch] = {}
    waiting = [batch]
    while waiting:
        for id_ in map(said.batch_of, waiting.pop().parts):
            held = p.load(id_)
            if held is not None and id_ not in found:
                found[id_] = held[0]
                waiting.append(held[0])
    return list(found.values())


def sign_named(p: Pantry, container: Container, text: str, day: date | None = None) -> Sign:
    """The one sign that the words surely mean, seen on a `day` (today); where none is understood
    and they do not say that all is well, the doubt that keeps them. Raises BadInput naming near
    ones."""
    known = possible(p, container)
    sign = find_sign(known, text) or of_all(known, text)
    sign = sign or _in_other_words(p, container, known, text, day)
    if sign is None and not (all_is_well(text) or says_left_out(text)):
        return in_own_words(known, text)
    if sign is None:
        near = near_ones(p, container, text)
        method = p.stock.batches[container.batch].method
        if says_left_out(text):
            told = book_the_move(name_of(p, container))
            raise BadInput(
                f"{text[:60]!r} is no sign. {told} A sign near it: {near}. If in doubt, do not "
                "taste it: discard."
            )
        raise BadInput(
            f"{text[:60]!r} is no sign known for {method}; near it: {near}. If in doubt, "
            "do not taste it: discard."
        )
    return sign


def near_ones(p: Pantry, container: Container, text: str) -> str:
    """The signs near to a person's words, one after the other."""
    saved = [_SAVED] if "pop" in text.casefold() and _just_made(p, container) else []
    near = (one.words for one in near_signs(possible(p, container), text))
    return "; ".join((*saved, *near)) or "none"


def in_own_words(known: Sequence[Sign], text: str) -> Sign:
    """The doubt in which words that nobody understood hold a container, at the worst what they may
    mean: what is still unsure."""
    unsure = next(one for one in known if one.id.startswith(UNSURE))
    return replace(
        unsure,
        id=OWN_ID,
        words=held(text),
        means="Nobody here knows what that means, so it is not used until it is known.",
        steps=("Do not taste it to find out", "Take it off the shelf and out of reach"),
        disposal="none",
    )


def _in_other_words(
    p: Pantry, container: Container, known: Sequence[Sign], text: str, day: date | None = None
) -> Sign | None:
    """The worst sign that a person's own words mean, a lid that did not hold among them."""
    batch = p.stock.batches[container.batch]
    name, working = batch.food.name, last_state(container) is State.IN_PROGRESS
    if _just_made(p, container, day):
        text = without_popped(text)  # it may never have gone down, and no gas lifts it
    seal = said.Reason.SEAL_FAILED
    lid = sign_of(p, container, seal, day=day) if says_seal_failed(text) else None
    own = meant(known, beside_the_seal(text) if lid else text, name, working)
    return min((one for one in (own, lid) if one is not None), key=strictness, default=None)


def sign_of(
    p: Pantry,
    container: Container,
    reason: said.Reason,
    words: str = "",
    day: date | None = None,
) -> Sign | None:
    """The sign that a reason for throwing away stands for, or that a person's words for it name,
    seen on a `day` (today); None where it is none."""
    known = possible(p, container)
    if reason is said.Reason.LOOKED_WRONG:
        reason, words = said.Reason.OTHER, "smelled wrong"
    if reason is said.Reason.OTHER and (whole := of_all(known, words)) is not None:
        return whole
    if reason is said.Reason.OTHER:
        thrown = [one for one in known if one.verdict in THROWN]
        named = find_sign(thrown, words) or worst_named(thrown, words)
        if named is not None:
            return named
        other = _in_other_words(p, container, known, words, day)
        if other is not None and other.verdict in THROWN and "glass" not in other.hazard:
            return other  # a jar that was dropped says nothing of the others
        if not (says_seal_failed(words) or is_of_the_seal(words)):
            return _doubted(p, container, known, words)
        reason = said.Reason.SEAL_FAILED
    if reason is said.Reason.SEAL_FAILED:
        words = _SAVED if _just_made(p, container, day) else "loose lid found in storage"
        return next((sign for sign in known if sign.words.startswith(words)), None)
    wanted = _SIGNS_OF.get(reason, frozenset())
    suspect = (sign for sign in known if sign.suspect_batch)
    return next((sign for sign in suspect if sign_words(sign.words) & wanted), None)


def _doubted(p: Pantry, container: Container, known: Sequence[Sign], why: str) -> Sign | None:
    """The doubt of a reason that nobody understood, where what is in one jar may be in all and
    does not show: canned, or low-acid and shut in from the air. A reason that is plainly none of
    the food's is none."""
    batch = p.stock.batches[container.batch]
    airless = batch.method in LIDDED or batch.method is Method.IN_OIL
    shut_in = batch.method in PROCESSED or (airless and not batch.food.is_acid)
    if not shut_in or not why.strip() or says_nothing_of_others(why):
        return None
    return in_own_words(known, why)


_SAVED = "unsealed within a day, tested recipe"


def _just_made(p: Pantry, container: Container, day: date | None = None) -> bool:
    """Whether a jar whose lid did not hold on a `day` (today) might be saved then: whenever that is
    told, it is a lid that never sealed, and says as little of the others."""
    made = p.stock.batches[container.batch].made
    return made is not None and ((day or p.today) - made).days <= RESCUE_DAYS


#: The words of signs that a reason names.
_SIGNS_OF = {
    said.Reason.BULGING: frozenset({"swollen", "leaking", "spurt"}),
    said.Reason.MOULD: frozenset({"mould", "mouldy"}),
}
