"""A Chromium driven over the DevTools protocol (https://chromedevtools.github.io/devtools-protocol),
through the web socket client that the `web` extra brings."""

from __future__ import annotations

import asyncio
import itertools
import tempfile
from collections import defaultdict
from collections.abc import AsyncIterator, Callable
from contextlib import asynccontextmanager, suppress
from pathlib import Path
from typing import Any

import aiohttp

#: Seconds after which what should have happened never will.
PATIENCE_S = 45.0

_FLAGS = (
    "--headless=shell",
    "--no-sandbox",  # a test may run as root, where the sandbox does not start
    "--no-zygote",
    "--disable-gpu",
    "--disable-dev-shm-usage",
    "--disable-background-networking",
    "--disable-component-update",
    "--no-first-run",
    "--no-default-browser-check",
    "--font-render-hinting=none",
    "--remote-debugging-port=0",
    # A name that somebody's name server leads to this machine.
    "--host-resolver-rules=MAP rebound.example 127.0.0.1",
)

Told = Callable[[dict[str, Any]], None]


class Failed(Exception):
    """The browser refused what it was told to do."""


class Session:
    """What is said to one page of the browser, or to the browser itself."""

    def __init__(self, browser: Browser, name: str | None) -> None:
        self._browser, self.name = browser, name

    async def do(self, method: str, **words: Any) -> dict[str, Any]:
        """Raises Failed."""
        return await self._browser.send(method, words, self.name)

    def on(self, event: str, told: Told) -> None:
        """`told` gets what the browser says of each such event from now on."""
        self._browser.told[self.name, event].append(told)

    async def script(self, source: str) -> Any:
        """What an expression of JavaScript comes to in the page. Raises Failed."""
        done = await self.do(
            "Runtime.evaluate", expression=source, returnByValue=True, awaitPromise=True
        )
        if "exceptionDetails" in done:
            raise Failed(done["exceptionDetails"].get("exception", {}).get("description", source))
        return done["result"].get("value")


class Browser:
    """A running browser."""

    def __init__(self, socket: aiohttp.ClientWebSocketResponse) -> None:
        self._socket = socket
        self._numbers = itertools.count(1)
        self._asked: dict[int, asyncio.Future[dict[str, Any]]] = {}
        self.told: defaultdict[tuple[str | None, str], list[Told]] = defaultdict(list)
        self.whole = Session(self, None)

    async def send(self, method: str, words: dict[str, Any], name: str | None) -> dict[str, Any]:
        number = next(self._numbers)
        asked: asyncio.Future[dict[str, Any]] = asyncio.get_running_loop().create_future()
        self._asked[number] = asked
        said = {"id": number, "method": method, "params": words}
        await self._socket.send_json(said if name is None else said | {"sessionId": name})
        async with asyncio.timeout(PATIENCE_S):
            return await asked

    async def listen(self) -> None:
        async for message in self._socket:
            said = message.json()
            if "id" not in said:
                for told in self.told[said.get("sessionId"), said["method"]]:
                    told(said.get("params", {}))
            elif (asked := self._asked.pop(said["id"], None)) and not asked.done():
                if "error" in said:
                    asked.set_exception(Failed(said["error"]["message"]))
                else:
                    asked.set_result(said["result"])

    async def person(self) -> str:
        """A browser context: what one person's browser keeps to itself, its cookies above all."""
        made = await self.whole.do("Target.createBrowserContext")
        return str(made["browserContextId"])

    async def page(self, person: str | None = None) -> Session:
        """An empty page."""
        whose = {} if person is None else {"browserContextId": person}
        made = await self.whole.do("Target.createTarget", url="about:blank", **whose)
        told = await self.whole.do("Target.attachToTarget", targetId=made["targetId"], flatten=True)
        page = Session(self, told["sessionId"])
        for domain in ("Page", "Runtime", "Network"):
            await page.do(f"{domain}.enable")
        return page


@asynccontextmanager
async def browser(program: str) -> AsyncIterator[Browser]:
    """That program, started in a folder of its own and ended again."""
    with tempfile.TemporaryDirectory(prefix="pantry-browser-", ignore_cleanup_errors=True) as home:
        started = await asyncio.create_subprocess_exec(
            program,
            *_FLAGS,
            f"--user-data-dir={home}",
            "about:blank",
            stdout=asyncio.subprocess.DEVNULL,
            stderr=asyncio.subprocess.PIPE,
        )
        try:
            async with aiohttp.ClientSession() as session:
                where = await _listening(started)
                async with session.ws_connect(where, max_msg_size=0) as socket:
                    made = Browser(socket)
                    hearing = asyncio.create_task(made.listen())
                    yield made
                    hearing.cancel()
        finally:
            with suppress(ProcessLookupError):
                started.kill()
            await started.wait()


async def _listening(started: asyncio.subprocess.Process) -> str:
    """The address at which it says that it listens. Raises Failed."""
    assert started.stderr is not None
    async with asyncio.timeout(PATIENCE_S):
        async for line in started.stderr:
            if b"DevTools listening on " in line:
                return line.decode().partition("listening on ")[2].strip()
    raise Failed("the browser ended before it listened")


def written(path: Path, data: str) -> None:
    """A file of what the browser gave in Base64."""
    import base64

    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(base64.b64decode(data))
