"""One command as it was typed, and how it answers."""

from __future__ import annotations

import argparse
import json
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any

from pantry_tui.cli import show as out
from pantry_tui.errors import BadInput
from pantry_tui.paths import default_store
from pantry_tui.services.output import jsonable
from pantry_tui.services.pantry import Pantry, open_pantry
from pantry_tui.services.rows import Done


@dataclass(frozen=True, slots=True)
class Call:
    """One command as typed: its words, the day, the store named (None: the default one)."""

    args: argparse.Namespace
    today: date
    store: Path | None
    as_json: bool

    @property
    def path(self) -> Path:
        return self.store or default_store()

    def pantry(self) -> Pantry:
        return open_pantry(self.path, self.today)

    def say(self, data: Any, lines: Sequence[str]) -> int:
        """The answer, as JSON or as plain lines."""
        if self.as_json:
            print(json.dumps(data, ensure_ascii=False, indent=1))
        else:
            print("\n".join(lines))
        return 0

    def done(self, do: Callable[[Pantry], Done]) -> int:
        """Do one thing to the store and say what was done."""
        with self.pantry() as p:
            what = do(p)
        return self.say(jsonable.done(what), out.done(what))


def key_values(typed: Sequence[str]) -> list[tuple[str, str]]:
    """("minutes=25", ...) -> pairs. Raises BadInput."""
    pairs = [pair.partition("=") for pair in typed]
    for key, equals, value in pairs:
        if not (key.strip() and equals and value.strip()):
            raise BadInput("Write --process as key=value, for example --process minutes=25.")
    return [(key.strip(), value.strip()) for key, _, value in pairs]


Verb = Callable[[Call], int]
