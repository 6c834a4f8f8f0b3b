"""A put-up line, booked."""

from __future__ import annotations

from pantry_tui.services.batchwork.putup import put_up, read
from pantry_tui.services.pantry import Pantry


def up(p: Pantry, line: str) -> str:
    """Its lid code."""
    return put_up(p, read(p, line)).code
