"""Our colours, after the palette of Okabe and Ito. Colour only repeats what a word says.

Lines carry roles, not colours ("discard", "muted"): what a role looks like is said here for each
theme, so that another theme needs no line made anew. Inks are checked for contrast in the tests.
"""

from __future__ import annotations

from collections.abc import Mapping

from textual.theme import Theme

from pantry_tui.app.roles import DANGER, HEAD, MUTED, QUIET_HEAD
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
LIGHT = Theme(
    name="pantry-light",
    primary="#0b5a8a",
    secondary="#00664c",
    accent="#8a4b00",
    warning="#6b5a00",
    error="#a33000",
    success="#00664c",
    foreground="#1a1c1e",
    background="#f6f4ef",
    surface="#eeebe4",
    panel="#e2ded4",
    dark=False,
)
CONTRAST = Theme(
    name="pantry-contrast",
    primary="#ffffff",
    secondary="#ffffff",
    accent="#ffff00",
    warning="#ffff00",
    error="#ffb000",
    success="#ffffff",
    foreground="#ffffff",
    background="#000000",
    surface="#000000",
    panel="#1f1f1f",
    dark=True,
)

#: What a person may ask for, and the theme that is it. "terminal" is the terminal's own sixteen.
THEMES = {
    "dark": THEME.name,
    "light": LIGHT.name,
    "contrast": CONTRAST.name,
    "terminal": "ansi-dark",
}
OURS = (THEME, LIGHT, CONTRAST)

_DARK = {
    Verdict.DO_NOT_TASTE.value: "bold #ff8a4c",
    Verdict.DISCARD.value: "bold #ff8a4c",
    Verdict.UNKNOWN.value: "#e3a3c6",
    Verdict.PAST_BEST.value: "#a3aeb8",
    Verdict.EAT_SOON.value: "#f0e442",
    Verdict.NEEDS_CARE.value: "#56b4e9",
    Verdict.SOUND.value: "#2fc49a",
    DANGER: "bold #ff8a4c",
    QUIET_HEAD: "bold #c3ccd4",
    MUTED: "#a3aeb8",
    HEAD: "bold #56b4e9",
}
_LIGHT = {
    Verdict.DO_NOT_TASTE.value: "bold #a33000",
    Verdict.DISCARD.value: "bold #a33000",
    Verdict.UNKNOWN.value: "#8a2f66",
    Verdict.PAST_BEST.value: "#55585c",
    Verdict.EAT_SOON.value: "#6b5a00",
    Verdict.NEEDS_CARE.value: "#0b5a8a",
    Verdict.SOUND.value: "#00664c",
    DANGER: "bold #a33000",
    QUIET_HEAD: "bold #303438",
    MUTED: "#55585c",
    HEAD: "bold #0b5a8a",
}
_CONTRAST = {
    **dict.fromkeys(_DARK, "#ffffff"),
    Verdict.DO_NOT_TASTE.value: "bold reverse #ffb000",
    Verdict.DISCARD.value: "bold #ffb000",
    Verdict.EAT_SOON.value: "bold #ffff00",
    DANGER: "bold #ffb000",
    QUIET_HEAD: "bold #ffffff",
    HEAD: "bold #ffffff",
}
_TERMINAL = {
    **dict.fromkeys(_DARK, ""),
    Verdict.DO_NOT_TASTE.value: "bold reverse",
    Verdict.DISCARD.value: "bold red",
    Verdict.EAT_SOON.value: "bold",
    DANGER: "bold red",
    QUIET_HEAD: "bold",
    HEAD: "bold",
}

#: Theme -> role -> Rich style.
ROLES: Mapping[str, Mapping[str, str]] = {
    THEME.name: _DARK,
    LIGHT.name: _LIGHT,
    CONTRAST.name: _CONTRAST,
    "ansi-dark": _TERMINAL,
    "ansi-light": _TERMINAL,
}


def style_of(role: str, theme: str) -> str:
    """The Rich style of a role in a theme; what is no role is a style already."""
    roles = ROLES.get(theme, _DARK)
    return roles.get(role, role)


def wanted_theme(asked: str, environment: Mapping[str, str]) -> str:
    """The theme that a setting asks for. Without colours the terminal's own would paint black on
    black, so it is our dark one then."""
    name = THEMES.get(asked, THEME.name)
    plain = "NO_COLOR" in environment and name.startswith("ansi")
    return THEME.name if plain else name
