"""A person's settings, for every store: settings.toml in the configuration folder.

[keys]
use = "j"        # command id = key; `pantry-tui keys` lists the ids
"""

from __future__ import annotations

import os
from dataclasses import dataclass, field
from pathlib import Path


@dataclass(frozen=True, slots=True)
class Settings:
    """What was read, and a sentence for each thing that could not be."""

    keys: dict[str, str] = field(default_factory=dict)
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
    keys = found.get("keys", {})
    if not isinstance(keys, dict) or not all(isinstance(key, str) for key in keys.values()):
        return Settings(wrong=(f'{path}: write keys as use = "j" under [keys].',))
    return Settings(dict(keys))
