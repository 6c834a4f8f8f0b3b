"""The one text that stands wherever a decision about safety is taken, and who speaks when."""

from __future__ import annotations

from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.words import Verdict

#: Shown beside every verdict that throws food away, or leaves it unknown where it can hurt, and
#: beside every published process or limit.
CAUTION = (
    "Never taste to find out. Follow tested recipes, and ask your local food-safety authority "
    "where you are in doubt. If anyone feels ill, get medical help at once."
)


def cautioned(verdict: Verdict, usable: bool) -> bool:
    """Whether the caution stands beside a verdict. What nobody knows of flour or salt is only that
    no figure is published: it cannot hurt and is offered."""
    return verdict in UNFIT or (verdict is Verdict.UNKNOWN and not usable)
