"""A person's settings, for every store: settings.toml in the configuration folder.

theme = "light"      # or dark, contrast, terminal (the terminal's own colours)
letters = "search"   # a letter typed on a list looks for it; a full stop before it acts

[keys]
use = "j"            # command id = key; `pantry-tui keys` lists the ids

[views]
winter = "place:cellar before:mar"   # typed as @winter where words are sought

[backups]
folder = "~/copies"   # where they lie; else in a folder beside the store
days = 7              # the newest of each of so many days is kept,
weeks = 5             # and of so many weeks
months = 12           # and months
automatic = true      # false: none is made by itself
"""

from __future__ import annotations

import os
from collections.abc import Mapping
from pathlib import Path

from pantry_tui.core.dataclass import dataclass, field


@dataclass(frozen=True, slots=True)
class Backups:
    """Where copies lie (None: beside the store), how many of each are kept, and whether one is
    made by itself."""

    folder: Path | None = None
    days: int = 7
    weeks: int = 5
    months: int = 12
    automatic: bool = True


@dataclass(frozen=True, slots=True)
class Settings:
    """What was read, and a sentence for each thing that could not be."""

    keys: dict[str, str] = field(default_factory=dict)
    views: dict[str, str] = field(default_factory=dict)
    letters_search: bool = False
    theme: str = "dark"
    wrong: tuple[str, ...] = ()
    backups: Backups = Backups()


def settings_file() -> Path:
    """Where the file lies, whether or not it is there."""
    base = os.environ.get("XDG_CONFIG_HOME")
    folder = Path(base) if base else Path(os.path.expanduser("~")) / ".config"
    return folder / "pantry-tui" / "settings.toml"


def read_settings() -> Settings:
    """Never raises: a bad file is said and passed over."""
    path = settings_file()
    if not os.path.isfile(path):  # also where the folder may not be searched, or it is a pipe
        return Settings()
    import tomllib  # nothing is read where there is no file

    try:
        found = tomllib.loads(path.read_text(encoding="utf-8"))
    except (OSError, ValueError, RecursionError) as error:
        return Settings(wrong=(f"{path} cannot be read ({error}): mend or remove it.",))
    wrong: list[str] = []
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
    backups = _backups(path, found, wrong)
    return Settings(
        dict(found["keys"]),
        dict(found["views"]),
        letters == "search",
        str(theme),
        tuple(wrong),
        backups,
    )


def _backups(path: Path, found: Mapping[str, object], wrong: list[str]) -> Backups:
    said = found.get("backups", {})
    if not isinstance(said, dict):
        wrong.append(f'{path}: write folder = "/where/they/lie" under [backups].')
        return Backups()
    usual = Backups()
    numbers = {}
    for name in ("days", "weeks", "months"):
        number = said.get(name, getattr(usual, name))
        if isinstance(number, bool) or not isinstance(number, int) or not 1 <= number <= 1000:
            wrong.append(f"{path}: {name} of [backups] must be a number from 1 to 1000.")
            number = getattr(usual, name)
        numbers[name] = number
    automatic = said.get("automatic", True)
    if not isinstance(automatic, bool):
        wrong.append(f"{path}: automatic of [backups] must be true or false.")
        automatic = True
    return Backups(_folder(path, said.get("folder"), wrong), **numbers, automatic=automatic)


def _folder(path: Path, said: object, wrong: list[str]) -> Path | None:
    if said is None:
        return None
    named = os.path.expanduser(said) if isinstance(said, str) and "\0" not in said else ""
    if os.path.isabs(named):
        return Path(named)
    wrong.append(f"{path}: folder of [backups] must be a whole path, from / or ~ on.")
    return None
