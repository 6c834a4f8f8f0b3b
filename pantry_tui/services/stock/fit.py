"""What may be eaten, opened or given: what the judge calls usable, and nothing else."""

from __future__ import annotations

from collections.abc import Callable

from pantry_tui.core.batchwork.tending import LATE
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.keeping.limits import Judgement
from pantry_tui.core.model import Container
from pantry_tui.core.safety.caution import CAUTION, cautioned
from pantry_tui.core.words import State, Verdict
from pantry_tui.errors import Refused
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.pick import containers_named, name_of
from pantry_tui.services.stock.seen import At, told_moment


def judged_for(p: Pantry, container: Container, at: At | None) -> Judgement:
    """By which it is decided what may be done with it: its verdict now, or, for what is said of an
    earlier moment at which it might still be done, the one of then. All that is known today counts
    for that too, and what came later counts as if it had come by then: only time gives way."""
    now, then = p.judge(container), told_moment(p, at)
    if now.usable or then is None:
        return now
    batch = p.stock.batches[container.batch]
    told = p.assess_bare(batch, container, then).on(then.day)
    return told if told.usable else now


def fit(p: Pantry, container: Container, at: At | None = None) -> bool:
    """Whether it may leave the shelf for a table, or might at the moment told: the one predicate
    for it."""
    return judged_for(p, container, at).usable


def badness(p: Pantry, container: Container) -> int:
    """2 for what must be discarded, 1 for what may not be eaten as it is, 0 for what is fit."""
    judged = p.judge(container)
    return 2 if judged.verdict in UNFIT else int(not judged.usable)


def suspect(p: Pantry, container: Container) -> bool:
    """Whether a sister jar showed a dangerous sign and nobody has looked at this one since."""
    return bool(p.stock.batches[container.batch].suspect) and container.looked is None


def doubts(judged: Judgement) -> tuple[str, ...]:
    """What should be known of it before it is eaten, here or where it is given to."""
    unknown = judged.verdict is Verdict.UNKNOWN
    caution = CAUTION if cautioned(judged.verdict, judged.usable) else ""
    said = f"{judged.reasons[0]} {caution}".strip()
    return (*((said,) if unknown else ()), *judged.standing)


def refuse_unfit(p: Pantry, container: Container, also: str = "", *, at: At | None = None) -> None:
    """Raises Refused, with the reason, for what is not usable, nor was at the moment told."""
    judged = judged_for(p, container, at)
    if judged.usable:
        return
    name, reason = name_of(p, container), judged.reasons[0] if judged.reasons else ""
    if judged.verdict in UNFIT:
        raise Refused(f"{name}: {judged.verdict}{also}. {reason} {CAUTION}".strip())
    if suspect(p, container):
        raise Refused(f"{name}: {reason} If it shows nothing, `sign {name} looks sound`.")
    if container.state is State.IN_PROGRESS:
        raise Refused(f"{name} is still in progress: look at it, and `ready {name}` when it is.")
    if judged.verdict is Verdict.NEEDS_CARE and reason.startswith(LATE):
        code = p.stock.batches[container.batch].code
        raise Refused(f"{name}: {judged.verdict}. {reason} Do that and book it, `tend {code}`.")
    raise Refused(f"{name}: {judged.verdict}, so it is not offered{also}. {reason} {CAUTION}")


def refuse_if_none_fits(
    p: Pantry,
    ref: str,
    *,
    ours: bool,
    first: Callable[[Container], int] = lambda _container: 0,
    at: At | None = None,
) -> None:
    """Raises Refused, with the reason, where the one meant, or every one of a batch, is unfit."""
    refuse_unfit(
        p,
        containers_named(p, ref, ours=ours, first=lambda c: 2 * (not fit(p, c, at)) + first(c))[0],
        at=at,
    )
