"""The losses of a year in a sentence, for command and screen."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pantry_tui.core.amounts import kitchen_count

if TYPE_CHECKING:
    from pantry_tui.services.books.rows import YearOfLosses


def year_of_losses(found: YearOfLosses) -> str:
    """ "Lost in twelve months: 12 servings, 3.1% of what was eaten and lost (30 in the twelve
    before them); 46 saved by being eaten in their last four weeks." """
    share = f", {found.share:.1%} of what was eaten and lost" if found.lost else ""
    before = ""
    if found.before is not None:
        before = f" ({kitchen_count(found.before)} in the twelve before them)"
    saved = "none" if found.saved < 0.5 else kitchen_count(found.saved)
    lost = f"Lost in twelve months: {kitchen_count(found.lost)} servings{share}{before}"
    return f"{lost}; {saved} saved by being eaten in their last four weeks."
