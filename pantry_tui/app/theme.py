"""Our colours, after the palette of Okabe and Ito. Colour only repeats what a word says."""

from __future__ import annotations

from textual.theme import Theme

from pantry_tui.core.words import Verdict

GROUND = "#12161a"
INK = "#e8eaec"

THEME = Theme(
    name="pantry",
    primary="#56b4e9",
    secondary="#009e73",
    accent="#e69f00",
    warning="#f0e442",
    error="#ff8a4c",
    success="#2fc49a",
    foreground=INK,
    background=GROUND,
    surface="#1b2127",
    panel="#252d35",
    dark=True,
)

#: Rich styles for the verdict cell.
STYLE = {
    Verdict.DO_NOT_TASTE: "bold #ff8a4c",
    Verdict.DISCARD: "bold #ff8a4c",
    Verdict.UNKNOWN: "#cc79a7",
    Verdict.PAST_BEST: "#e69f00",
    Verdict.EAT_SOON: "#f0e442",
    Verdict.TEND: "#56b4e9",
    Verdict.SOUND: "#2fc49a",
}

#: The same for a line that is no stock.
HEAD = "bold #56b4e9"
