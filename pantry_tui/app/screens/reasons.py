"""Why something is discarded, by one key each; what was recorded of it stands first."""

from __future__ import annotations

import re
from collections.abc import Sequence

from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.errors import PantryError
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.pick import containers_named

#: One key each; the last asks for words of one's own.
REASONS = (
    "past its date",
    "seal failed",
    "bulging, leaking or spurting",
    "mould",
    "smells or looks wrong",
    "soft, slimy or rotten",
    "thawed by mistake",
    "frost or dried out",
    "nobody would eat it",
    "another reason ...",
)

#: The words of a sign by which a reason is meant.
_SEEN = {
    "mould": r"mou?ld",
    "bulging, leaking or spurting": r"bulg|swollen|leak|spurt|spring|domed",
    "seal failed": r"\blids?\b|\bseal|unsealed",
    "soft, slimy or rotten": r"soft|slim|rott?",
    "smells or looks wrong": r"smell|colou?r|cloud|murky|foam|froth",
    "frost or dried out": r"frost|freezer burn",
}


def reasons_for(p: Pantry, ref: str) -> Sequence[str]:
    """All of them, and first what the last bad sign on that container says."""
    try:
        signs = containers_named(p, ref)[0].signs if ref else ()
    except PantryError:
        return REASONS  # which is said once it is to be discarded
    for seen in reversed(signs):
        found = [why for why, words in _SEEN.items() if re.search(words, seen.sign.lower())]
        if found and seen.verdict in UNFIT:
            return (found[0], *(one for one in REASONS if one != found[0]))
    return REASONS
