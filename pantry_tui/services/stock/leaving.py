"""How a container leaves otherwise than by being eaten: given, missing, thrown away."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.older import reason_of
from pantry_tui.core.model import Container
from pantry_tui.errors import BadInput
from pantry_tui.services.done import Done
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.stock.fit import badness, fit, refuse_if_none_fits
from pantry_tui.services.stock.pick import containers_named, name_of
from pantry_tui.services.stock.reserve import suits, was_kept
from pantry_tui.services.stock.seen import At, still, when
from pantry_tui.services.stock.telling import names, remaining, say_of


@booked
def give(
    p: Pantry,
    ref: str,
    count: int | None = None,
    to: str = "",
    *,
    at: At | None = None,
    saw: str = "",
) -> Done:
    """Give away, what is kept for a gift first; refuses what is unfit, since it would hurt
    somebody else."""
    still(p, ref, saw)
    refuse_if_none_fits(p, ref, ours=False)
    taken = containers_named(
        p,
        ref,
        1 if count is None else count,
        lambda c: fit(p, c),
        "be given",
        first=lambda c: suits(c, to),
    )
    elsewhere = was_kept(p, [c for c in taken if suits(c, to) == 3])
    p.book(said.Give(taken[0].batch, _ids(taken), to=to), **when(at))
    return replace(_gone(p, "Gave away", taken), warnings=elsewhere)


@booked
def missing(
    p: Pantry, ref: str, count: int | None = None, *, at: At | None = None, saw: str = ""
) -> Done:
    """Gone without anyone knowing how."""
    still(p, ref, saw)
    taken = containers_named(p, ref, 1 if count is None else count)
    p.book(said.Missing(taken[0].batch, _ids(taken)), **when(at))
    return _gone(p, "Booked as missing", taken)


@booked
def discard(
    p: Pantry,
    ref: str,
    count: int | None = None,
    why: str = "",
    *,
    at: At | None = None,
    saw: str = "",
) -> Done:
    """Thrown away; the reason is required, since next year's plan learns from it."""
    still(p, ref, saw)
    if not why.strip():
        raise BadInput('Say why it is discarded: --why "seal failed", for example.')
    # The unfit ones of a batch go first: that is what a person is throwing away.
    taken = containers_named(p, ref, 1 if count is None else count, first=lambda c: -badness(p, c))
    words = why.strip()
    reason = reason_of(words)
    with p.together():
        told = _shown(p, taken, reason, at)
        p.book(said.Discard(taken[0].batch, _ids(taken), None, reason, words), **when(at))
    return replace(_gone(p, "Discarded", taken), warnings=told)


def _shown(
    p: Pantry, taken: Sequence[Container], reason: said.Reason, at: At | None
) -> tuple[str, ...]:
    """A reason that is a sign is booked as one, so that it speaks for the sisters: what is to be
    done with them, and how such a container is thrown away."""
    from pantry_tui.core.safety.signs import DISPOSAL  # only where something is thrown away
    from pantry_tui.services.lookup import signs

    sign = signs.sign_of(p, taken[0], reason)
    if sign is None:
        return ()
    payload, sisters = signs.showing(p, taken, sign, at)
    p.book(payload, **when(at))
    told = signs.about_sisters(name_of(p, taken[0]), sisters)
    return tuple(filter(None, (told, *DISPOSAL.get(sign.disposal, ()))))


def _ids(taken: Sequence[Container]) -> tuple[str, ...]:
    return tuple(c.id for c in taken)


def _gone(p: Pantry, verb: str, taken: Sequence[Container]) -> Done:
    return Done(f"{verb} {say_of(p, taken)}; {remaining(p, taken[0].batch)}.", (), names(p, taken))
