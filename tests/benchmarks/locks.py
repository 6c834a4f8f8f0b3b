"""How long an act holds the store against all others, in seconds of CPU.

    python -m tests.benchmarks.locks STORE VERB [WORD ...]

prints {"cpu": s, "wall": s}: from the moment the write lock is asked for (or, where a transaction
began without it, from its first write) until it is committed. The program does not know that it is
watched: SQLite itself says each statement that begins.
"""

from __future__ import annotations

import io
import json
import re
import sqlite3
import sys
from contextlib import redirect_stdout
from dataclasses import dataclass
from time import perf_counter, process_time
from typing import Any

from tests.benchmarks.history import TODAY

_LOCKS = re.compile(r"\s*begin\s+(immediate|exclusive)", re.IGNORECASE)
_WRITES = re.compile(r"\s*(insert|update|delete|replace|create|drop|alter)\b", re.IGNORECASE)
_ENDS = re.compile(r"\s*(commit|rollback|end)\b(?!\s+to)", re.IGNORECASE)
_connect = sqlite3.connect


@dataclass
class Watch:
    """The longest time that the lock was held, and the time it has been held now."""

    cpu: float = 0.0
    wall: float = 0.0
    since: tuple[float, float] | None = None

    def statement(self, sql: str) -> None:
        now = process_time(), perf_counter()
        if self.since is None and (_LOCKS.match(sql) or _WRITES.match(sql)):
            self.since = now
        elif self.since is not None and _ENDS.match(sql):
            self.cpu = max(self.cpu, now[0] - self.since[0])
            self.wall = max(self.wall, now[1] - self.since[1])
            self.since = None

    def connect(self, *args: Any, **named: Any) -> sqlite3.Connection:
        found: sqlite3.Connection = _connect(*args, **named)
        found.set_trace_callback(self.statement)
        return found


def held(words: list[str]) -> Watch:
    """Runs a command of the program and says how long it held the store."""
    from pantry_tui.cli import main

    watch = Watch()
    sqlite3.connect = watch.connect  # type: ignore[assignment]
    try:
        with redirect_stdout(io.StringIO()) as said:
            code = main(words)
    finally:
        sqlite3.connect = _connect
    if code:
        raise RuntimeError(f"{words} was refused: {said.getvalue()}")
    if not watch.cpu:
        raise RuntimeError(f"{words} took no lock")
    return watch


def main() -> None:
    store, *words = sys.argv[1:]
    watch = held(["--store", store, "--today", TODAY.isoformat(), *words])
    print(json.dumps({"cpu": watch.cpu, "wall": watch.wall}))


if __name__ == "__main__":
    main()
