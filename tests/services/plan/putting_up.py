"""A put-up line, booked; and a store of which there is some on most days of a week."""

from __future__ import annotations

from datetime import date

from pantry_tui.services.batchwork.putup import put_up, read
from pantry_tui.services.pantry import Pantry

TODAY = date(2026, 11, 25)
CANNED = "pressure canned, pantry, 2026-08-01, minutes=75 psi=11 canner=dial pack=raw"


def up(p: Pantry, line: str) -> str:
    """Its lid code."""
    return put_up(p, read(p, line)).code


def fill(p: Pantry) -> tuple[str, str]:
    """The lid codes of stews and of a crate of carrots, beside peaches."""
    stews = up(p, f"9 pint jars beef, {CANNED}")
    up(p, "9 pint jars peaches, boiling-water canned, pantry, 2026-08-01")
    crate = up(p, "1 crate carrots, cellar-stored, cellar, 2026-11-01 amount=30lb")
    return stews, crate
