"""The log in words, some lines at a time: a household's log grows by thousands a year."""

from __future__ import annotations

from pantry_tui.services.books import logbook
from pantry_tui.services.pantry import Pantry


def log_window(
    p: Pantry, start: int, stop: int, code: str = "", *, text: str = ""
) -> tuple[int, list[tuple[str, str]]]:
    """How many lines the log has that hold every word of `text`, of one batch where a `code` is
    given; and those from `start` up to `stop`, each with the lid code of its batch ("" for none).
    The oldest line is line 0. Raises BadInput for a code that is not known."""
    found = p.once(f"log {code}", lambda: logbook.log_lines(p, code or None))
    words = text.lower().split()
    if words:
        found = [one for one in found if all(word in one[1].lower() for word in words)]
    return len(found), found[max(start, 0) : max(stop, 0)]
