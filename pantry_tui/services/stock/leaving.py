"""How a container leaves otherwise than by being eaten: given, missing, thrown away."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from pantry_tui.core.amounts import Amount
from pantry_tui.core.dataclass import replace
from pantry_tui.core.dates import say
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.older import reason_of
from pantry_tui.core.model import Container
from pantry_tui.core.words import Verdict
from pantry_tui.errors import BadInput
from pantry_tui.services.done import Done
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.stock.drawing import (
    Part,
    Wanted,
    booked_of,
    drawn,
    pick_of,
    read_wanted,
    say_drawn,
)
from pantry_tui.services.stock.fit import badness, doubts, fit, refuse_if_none_fits
from pantry_tui.services.stock.pick import name_of, refuse_unless_alike
from pantry_tui.services.stock.reserve import suits, was_kept
from pantry_tui.services.stock.seen import At, still, when
from pantry_tui.services.stock.telling import names


def refuse_gift(p: Pantry, refs: Iterable[str]) -> None:
    """Raises Refused, with the reason, for the first of them of which none may be given away."""
    for ref in refs:
        refuse_if_none_fits(p, ref, ours=False)


@booked
def give(
    p: Pantry,
    ref: str,
    count: int | str | None = None,
    to: str = "",
    *,
    at: At | None = None,
    saw: str = "",
) -> Done:
    """Give away, what is kept for a gift first; refuses what is unfit, since it would hurt
    somebody else."""
    from pantry_tui.services.stock.view import cautions  # only where something is given

    still(p, ref, saw)
    refuse_if_none_fits(p, ref, ours=False, at=at)
    pick = pick_of(p, ref, lambda c: fit(p, c, at), "be given", first=lambda c: suits(c, to))
    parts = drawn(p, ref, _wanted(count), pick)
    taken = [part.container for part in parts]
    told = was_kept(p, [c for c in taken if suits(c, to) == 3])
    told += tuple(dict.fromkeys(word for c in taken for word in doubts(p.judge(c))))
    told += cautions(p.stock.batches[taken[0].batch], ())  # to be said to whoever gets it
    booked_of(p, parts, lambda ids, much: said.Give(taken[0].batch, ids, much, to), at)
    return replace(_gone(p, "Gave away", parts, to=to.strip()), warnings=told)


@booked
def missing(
    p: Pantry, ref: str, count: int | str | None = None, *, at: At | None = None, saw: str = ""
) -> Done:
    """Gone without anyone knowing how."""
    still(p, ref, saw)
    pick, wanted = pick_of(p, ref), _wanted(count)
    whole = wanted.kind == "bare"  # a crate that is not there is missing whole
    parts = [Part(pick(1)[0])] if whole else drawn(p, ref, wanted, pick)
    batch = parts[0].container.batch
    booked_of(p, parts, lambda ids, much: said.Missing(batch, ids, much), at)
    return _gone(p, "Booked as missing", parts)


@booked
def discard(
    p: Pantry,
    ref: str,
    count: int | str | None = None,
    why: str = "",
    *,
    at: At | None = None,
    saw: str = "",
) -> Done:
    """Thrown away; the reason is required, since next year's plan learns from it."""
    from pantry_tui.services.stock.condemned import thrown_how  # which no other act needs

    still(p, ref, saw)
    if not why.strip():
        raise BadInput('Say why it is discarded: --why "seal failed", for example.')
    # The unfit ones of a batch go first: that is what a person is throwing away.
    pick = pick_of(p, ref, first=lambda c: -badness(p, c))
    parts = drawn(p, ref, _wanted(count), pick)
    taken = [part.container for part in parts]
    words = why.strip()
    reason = reason_of(words)

    def thrown(ids: tuple[str, ...], much: Amount | None) -> said.Discard:
        return said.Discard(taken[0].batch, ids, much, reason, words)

    with p.together():
        shown = _shown(p, ref, taken, reason, words, at)
        # What it showed, or was made like, before says how it is thrown away, whatever the reason.
        how = shown or thrown_how(p, taken[0], p.judge(taken[0]))
        told = (*_not_past(p, taken, reason, at), *how)
        booked_of(p, parts, thrown, at)
    return replace(_gone(p, "Discarded", parts, why=words), warnings=told)


#: Of these the date is over, or stands for nothing.
_PAST = UNFIT | {Verdict.PAST_BEST}


def _not_past(
    p: Pantry, taken: Sequence[Container], reason: said.Reason, at: At | None
) -> tuple[str, ...]:
    """Says so where what was thrown away as past its date is past none that is known: next year's
    plan would learn from it that there was too much."""
    if reason is not said.Reason.PAST_DATE:
        return ()
    day, batch = at.day if at else p.today, p.stock.batches[taken[0].batch]
    judged = [p.judge(one) for one in taken]
    dates = [(one.discard_after, "discard after") for one in judged if one.discard_after]
    dates += [(one.best_by, "best by") for one in judged if one.best_by]
    over = any(one < day for one in (*(one for one, _ in dates), batch.printed) if one)
    if over or not dates or any(one.verdict in _PAST for one in judged):
        return ()
    first, kind = min(dates)
    return (
        f"It was not past its date ({kind} {say(first)}): if it went for another reason, `undo` it "
        "and say which.",
    )


def _shown(
    p: Pantry, ref: str, taken: Sequence[Container], reason: said.Reason, words: str, at: At | None
) -> tuple[str, ...]:
    """A reason that is a sign is booked as one, so that it speaks for the sisters: what is to be
    done with them, and how such a container is thrown away."""
    from pantry_tui.core.safety.signs import (  # only where something is thrown away
        DISPOSAL,
        strictness,
    )
    from pantry_tui.services.lookup import sign_named, signs
    from pantry_tui.services.stock.named_in import held_with

    batch = taken[0].batch
    found = [sign_named.sign_of(p, one, reason, words, at and at.day) for one in taken]
    sign = min((one for one in found if one is not None), key=strictness, default=None)
    if sign is None:
        return ()
    if any(one.here and one not in taken for one in p.containers_of(p.stock.batches[batch])):
        refuse_unless_alike(p, ref)
    payload, sisters = signs.showing(p, taken, sign, at)
    p.book(payload, **when(at))
    with_it = held_with(p, p.stock.batches[batch], payload, at)
    told = signs.about_sisters(name_of(p, taken[0]), sisters, sign)
    return tuple(filter(None, (told, *with_it, *DISPOSAL.get(sign.disposal, ()))))


def _wanted(count: int | str | None) -> Wanted:
    """A number as it is typed, or as a screen counts it."""
    return read_wanted(None if count is None else str(count))


def _gone(p: Pantry, verb: str, parts: Sequence[Part], *, to: str = "", why: str = "") -> Done:
    """What was booked, to whom or why: what was chosen by one key is read again before it is
    forgotten."""
    taken = [part.container for part in parts]
    whom = f" to {to}" if to else ""
    reason = f" ({why})" if why else ""
    return Done(f"{verb} {say_drawn(p, parts, whom + reason)}.", (), names(p, taken))
