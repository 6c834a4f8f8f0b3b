"""Keeping limits, typed in by hand from the publications named above each block.

One line a figure: method | food | state | climate | kind | limit. The limit is the one in use:
the strictest of the current publications for safety; for quality the shorter end of the range,
except where the household defaults say otherwise. `none` means the publication gives no number.
"""

from __future__ import annotations

from tests.published.limits import bought, cold, corrected, crops, shelf, wide
from tests.published.limits.refused import REFUSED

#: Publication and its block of lines; one publication may have several.
TYPED = [
    block
    for module in (shelf, cold, crops, corrected, wide, bought)
    for block in module.TYPED.items()
]

__all__ = ["REFUSED", "TYPED"]
