"""A person's settings, for every store: settings.toml in the configuration folder.

theme = "light"      # or dark, contrast, terminal (the terminal's own colours)
letters = "search"   # a letter typed on a list looks for it; a full stop before it acts

[keys]
use = "j"            # command id = key; `pantry-tui keys` lists the ids

[views]
winter = "place:cellar before:mar"   # typed as @winter where words are sought
"""

from __future__ import annotations

import os
from dataclasses import dataclass, field
from pathlib import Path


@dataclass(frozen=True, slots=True)
class Settings:
    """What was read, and a sentence for each thing that could not be."""

    keys: dict[str, str] = field(default_factory=dict)
    views: dict[str, str] = field(default_factory=dict)
    letters_search: bool = False
    theme: str = "dark"
    wrong: tuple[str, ...] = ()


def settings_file() -> Path:
    """Where the file lies, whether or not it is there."""
    base = os.environ.get("XDG_CONFIG_HOME")
    folder = Path(base) if base else Path.home() / ".config"
    return folder / "pantry-tui" / "settings.toml"


def read_settings() -> Settings:
    """Never raises: a bad file is said and passed over."""
    path = settings_file()
    if not path.exists():
        return Settings()
    import tomllib  # nothing is read where there is no file

    try:
        found = tomllib.loads(path.read_text(encoding="utf-8"))
    except (OSError, UnicodeDecodeError, tomllib.TOMLDecodeError) as error:
        return Settings(wrong=(f"{path} cannot be read ({error}): mend or remove it.",))
    wrong = []
    for part, example in (("keys", 'use = "j"'), ("views", 'winter = "place:cellar before:mar"')):
        told = found.setdefault(part, {})
        if not isinstance(told, dict) or not all(isinstance(one, str) for one in told.values()):
            wrong.append(f"{path}: write {part} as {example} under [{part}].")
            found[part] = {}
    letters = found.get("letters", "act")
    if letters not in ("act", "search"):
        wrong.append(f'{path}: letters is "act" or "search".')
    theme = found.get("theme", "dark")
    if theme not in ("dark", "light", "contrast", "terminal"):
        wrong.append(f'{path}: theme is "dark", "light", "contrast" or "terminal".')
        theme = "dark"
    return Settings(
        dict(found["keys"]),
        dict(found["views"]),
        letters == "search",
        str(theme),
        tuple(wrong),
    )
