"""Putting right what a batch is, how it is kept and how many there are: what may be said anew, and
what cannot be without taking back the put-up."""

from __future__ import annotations

from pantry_tui.core.canned import LIDDED, PROCESSED, WORKING
from pantry_tui.core.model import Batch, FoodFacts
from pantry_tui.core.text import clean
from pantry_tui.core.words import Method
from pantry_tui.errors import BadInput, Refused
from pantry_tui.reference.ambiguous import refuse_either
from pantry_tui.reference.names import method_named
from pantry_tui.services.batchwork.recalled import line_of
from pantry_tui.services.pantry import Pantry


def food_meant(p: Pantry, typed: str) -> FoodFacts:
    """The food by any of its names. Raises BadInput with near ones, Unclear for one of several."""
    refuse_either(typed, p.tables)
    facts = p.facts(typed) if clean(typed) else None
    if facts is None:
        near = ", ".join(p.tables.index.near(typed))
        named = f" (near it: {near})" if near else ""
        raise BadInput(f"{typed[:40]!r} is not in the food table{named}: give another name.")
    return facts


def refuse_same(batch: Batch, typed: str, facts: FoodFacts, method: Method) -> None:
    """Raises BadInput where the record says that already, so that nothing is booked that changes
    nothing; `typed`: the food as it was typed, "" where only the method was."""
    if facts != batch.food or method is not batch.method:
        return
    name, known = clean(facts.name), clean(typed)[:40]
    if not known:
        raise BadInput(f"{batch.code} is {method} already: give another method.")
    here = f"{batch.code} is {name} already"
    if known.casefold() != name:
        here = f"{known!r} is {name} here, which {batch.code} is already"
    raise BadInput(f"{here}: give another food, or write more of it as its note.")


def method_meant(p: Pantry, batch: Batch, typed: str) -> Method:
    """The method by any of its names. Raises BadInput; Refused where the stock would have begun in
    another state by it, or was begun, so that its days cannot be said anew, and where its record
    tells of a canner that the method has not."""
    method = method_named(typed)
    if method is batch.method:
        return method
    canner = ", ".join(f"{key}={value}" for key, value in batch.process if _no_use(key, method))
    if canner:
        raise Refused(
            f"{batch.code} cannot be said to be {method}: its record says {canner}, so it was "
            f"canned. {_anew(p, batch)}"
        )
    mine = p.containers_of(batch)
    begun = any(one.begun or any(turn.state for turn in one.turns[1:]) for one in mine)
    if begun or (method in WORKING) != (batch.method in WORKING) or batch.carried or batch.parts:
        why = "what was done to it rests on it" if begun else "it would stand otherwise since then"
        raise Refused(f"{batch.code} cannot be said to be {method}: {why}. {_anew(p, batch)}")
    return method


def _no_use(key: str, method: Method) -> bool:
    """Whether what a record says of a canner has no place in that of such a method: a verdict that
    rests on it would be gone without a word."""
    if method in PROCESSED:
        return False
    return key in ("psi", "canner") or (key in ("minutes", "process") and method not in LIDDED)


def refuse_count(p: Pantry, batch: Batch, count: int) -> None:
    """How many were put up is no field of the record. Raises Refused, which says what to do."""
    mine = p.containers_of(batch)
    ever, held = len(mine), mine[0].first if len(mine) == 1 and mine[0].bulk else None
    if held is not None and count > 1:
        told = f"{batch.code} is one with {held} in it"
        if held.unit == "" and count == held.number:
            raise BadInput(f"{told}: {count} are recorded already.")
        raise Refused(
            f"{told}: count the place where it stands and give it what is there. {_anew(p, batch)}"
        )
    if count == ever:
        raise BadInput(f"{ever} of {batch.code} are recorded already.")
    if count > ever:
        more = f"count the place where they stand and give {batch.code} as many as there are"
    else:
        more = f"`missing {batch.code} {ever - count}`" if count > 0 else "undo it"
    told = f"{ever} of {batch.code} were put up, and lids bear their numbers: {more}."
    raise Refused(f"{told} {_anew(p, batch)}")


def _anew(p: Pantry, batch: Batch) -> str:
    return f"Or undo the put-up, and put up anew what is mended here: {line_of(p, batch)}"
