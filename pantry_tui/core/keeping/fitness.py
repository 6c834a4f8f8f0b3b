"""Fit to be offered at table, or not: one predicate, read by the judge and off the stock tables.

Light, since every list asks it.
"""

from __future__ import annotations

from pantry_tui.core.words import Verdict

#: Verdicts that are never offered to be eaten.
UNFIT = frozenset({Verdict.DO_NOT_TASTE, Verdict.DISCARD})


def usable(verdict: Verdict, harmless: bool, in_progress: bool) -> bool:
    """Whether it is fit to be offered at table: what is known to be good, and what nobody knows
    where it cannot hurt; never what is still in progress."""
    if in_progress:
        return False
    if verdict in (Verdict.SOUND, Verdict.EAT_SOON, Verdict.PAST_BEST):
        return True
    return verdict in (Verdict.UNKNOWN, Verdict.NEEDS_CARE) and harmless
