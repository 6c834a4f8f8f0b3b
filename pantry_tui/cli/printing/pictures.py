"""The pictures of the app as plain lines."""

from __future__ import annotations

import shutil
import sys
from collections.abc import Sequence
from datetime import date

from pantry_tui.app.draw.months import month_rows
from pantry_tui.app.draw.shelf import shelf_rows
from pantry_tui.app.draw.spans import Row, ascii_of, text_of
from pantry_tui.app.draw.underway import underway_rows
from pantry_tui.app.draw.year import year_rows
from pantry_tui.app.format import shelf_title
from pantry_tui.services.batchwork.underway import Underway
from pantry_tui.services.books.rows import FoodAhead
from pantry_tui.services.stock.months import MonthAhead
from pantry_tui.services.stock.rows import Shelf

#: No picture is wider, however wide the terminal is.
WIDEST = 120


def width() -> int:
    """Cells of a line, 80 where nobody can tell."""
    return max(40, min(WIDEST, shutil.get_terminal_size((80, 24)).columns))


def _lines(rows: Sequence[Row], nothing: str) -> list[str]:
    lines = text_of(rows) or [nothing]
    return lines if (sys.stdout.encoding or "").lower().startswith("utf") else ascii_of(lines)


def shelves(found: Sequence[Shelf]) -> list[str]:
    """A mark for each container, under its lid code."""
    titled = [(shelf_title(one), one) for one in found]
    return _lines(shelf_rows(titled, width()), "Nothing stands there.")


def months(found: Sequence[MonthAhead]) -> list[str]:
    """A bar for each month."""
    return _lines(month_rows(found, width()), "")


def year(foods: Sequence[FoodAhead], today: date) -> list[str]:
    """A line of time for each food."""
    return _lines(year_rows(foods, today, width()), "Nothing to look ahead to yet.")


def in_progress(found: Sequence[Underway], today: date) -> list[str]:
    """A line of time for each batch."""
    return _lines(underway_rows(found, today, width()), "Nothing is in progress.")
