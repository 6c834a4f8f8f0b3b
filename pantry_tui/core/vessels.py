"""Which vessels the first draw opens."""

from __future__ import annotations

import re

from pantry_tui.core.canned import LIDDED
from pantry_tui.core.words import Method

#: A crate, a crock or a sack is drawn from and never opened.
_CLOSED = re.compile(
    r"\b(jar|bottle|tin|can|pack|packet|parcel|bag|tub|box|carton|pouch|pint|quart|gallon)"
)


def is_closed(method: Method, size: str) -> bool:
    """Whether what is put up so stands in closed vessels (`size` as "pint jars")."""
    return method in LIDDED or bool(_CLOSED.search(size.casefold()))
