"""What may be eaten, opened or given: nothing unsafe, and nothing that waits to be looked at."""

from __future__ import annotations

from collections.abc import Callable

from pantry_tui.core.keeping.rotation import UNFIT
from pantry_tui.core.model import Container
from pantry_tui.core.safety.caution import CAUTION
from pantry_tui.errors import Refused
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.pick import containers_named, name_of


def edible(p: Pantry, container: Container) -> bool:
    """Whether neither a date nor a sign speaks against eating it."""
    return p.judge(container).verdict not in UNFIT


def suspect(p: Pantry, container: Container) -> bool:
    """Whether a sister jar showed a dangerous sign and nobody has looked at this one since."""
    return bool(p.stock.batches[container.batch].suspect) and container.looked is None


def fit(p: Pantry, container: Container) -> bool:
    """Whether it may leave the shelf for a table."""
    return edible(p, container) and not suspect(p, container)


def refuse_unfit(p: Pantry, container: Container, also: str = "") -> None:
    """Raises Refused, with the reason, for what is unsafe or waits to be looked at."""
    judged = p.judge(container)
    name, reason = name_of(p, container), judged.reasons[0] if judged.reasons else ""
    if judged.verdict in UNFIT:
        raise Refused(f"{name}: {judged.verdict}{also}. {reason} {CAUTION}".strip())
    if suspect(p, container):
        raise Refused(f"{name}: {reason} If it shows nothing, `sign {name} looks sound`.")


def refuse_if_none_fits(
    p: Pantry, ref: str, *, ours: bool, first: Callable[[Container], int] = lambda _container: 0
) -> None:
    """Raises Refused, with the reason, where the one meant, or every one of a batch, is unfit."""
    refuse_unfit(
        p,
        containers_named(p, ref, ours=ours, first=lambda c: 2 * (not fit(p, c)) + first(c))[0],
    )
