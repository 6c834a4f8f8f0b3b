"""A server of the real app for tests: in this process, or as the command that a person types."""

from __future__ import annotations

import asyncio
import subprocess
import sys
from collections.abc import AsyncIterator, Iterator, Sequence
from contextlib import asynccontextmanager, contextmanager
from datetime import date
from pathlib import Path

from aiohttp import web

from pantry_tui.app.web import address
from pantry_tui.app.web.gate import Gate, Password
from pantry_tui.app.web.server import PantryServer
from pantry_tui.app.web.window import words
from pantry_tui.services.clock import Clock

TODAY = date(2026, 11, 25)
PASSWORD = "nine jars of plums"


@asynccontextmanager
async def served(path: Path, password: Password | None = None) -> AsyncIterator[str]:
    """The address of a server on that store."""
    ours = address.listening(0, lan=False)
    hosts = address.hosts(ours.getsockname()[1], lan=False)
    gate = Gate(hosts, password, asyncio.get_running_loop().time)
    runner = web.AppRunner(await PantryServer(words(path, Clock(TODAY)), gate).made())
    await runner.setup()
    await web.SockSite(runner, ours).start()
    try:
        yield f"http://{hosts[1]}"
    finally:
        await runner.cleanup()


def command(path: Path, *words: str) -> Sequence[str]:
    """A command on that store."""
    base = ["--store", str(path), "--today", TODAY.isoformat()]
    return [sys.executable, "-m", "pantry_tui", *base, *words]


def serve(path: Path, *more: str) -> Sequence[str]:
    """The command that serves it at any free port, which is its last word but for `more`."""
    return command(path, "serve", "--port", "0", *more)


@contextmanager
def killed_after(server: subprocess.Popen[str]) -> Iterator[subprocess.Popen[str]]:
    """It does not outlive the test, however that ends."""
    with server:
        try:
            yield server
        finally:
            server.kill()
