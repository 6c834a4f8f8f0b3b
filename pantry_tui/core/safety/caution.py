"""The one text that stands wherever a decision about safety is taken, and who speaks when."""

from __future__ import annotations

#: Shown beside every verdict that throws food away or is not known, and beside every published
#: process or limit.
CAUTION = (
    "Never taste to find out. Follow tested recipes, and ask your local food-safety authority "
    "where you are in doubt. If anyone feels ill, get medical help at once."
)
