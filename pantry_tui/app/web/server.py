"""A window of the app for each browser that is let in, by the screen library's own server.

That server asks nobody who they are, so all that comes goes through `_guarded` first: the name it
was asked by, whose page speaks, the password. It is for a network one trusts: nothing is encrypted.
"""

from __future__ import annotations

import asyncio
import contextlib
import json
import socket
import sys
from asyncio.subprocess import PIPE, Process
from collections.abc import Awaitable, Callable
from pathlib import Path

from aiohttp import web
from textual_serve.app_service import AppService
from textual_serve.server import Server

from pantry_tui.app.web import page
from pantry_tui.app.web.gate import Gate
from pantry_tui.app.web.window import TYPES
from pantry_tui.errors import StoreError

COOKIE = "pantry"
#: Windows at once: each is a process.
MOST_WINDOWS = 12
#: Bytes of one message from a browser, and of the form.
_LONGEST = 64 * 1024
#: Seconds that a window has to close by itself.
PATIENCE_S = 5.0
#: Columns or lines a browser may ask for.
_SMALLEST, _LARGEST = 10, 500
_LETTERS_PX = (8, 40, 16)

Handler = Callable[[web.Request], Awaitable[web.StreamResponse]]

_HEADERS = {
    "Cache-Control": "no-store",
    "Content-Security-Policy": (
        "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; "
        "font-src 'self' data:; img-src 'self' data:; connect-src 'self' ws://{host}; "
        "form-action 'self'; base-uri 'none'; frame-ancestors 'none'"
    ),
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    # Not "no-referrer": with it a browser says "Origin: null" of our own form as of anybody's.
    "Referrer-Policy": "same-origin",
    "X-Content-Type-Options": "nosniff",
    "X-Frame-Options": "DENY",
}


class Window(AppService):
    """A process of the app. It is started by its words and not through a shell, and is ended where
    it does not end by itself."""

    words: list[str]

    async def _open_app_process(self, width: int = 80, height: int = 24) -> Process:
        environment = self._build_environment(width, height)
        self._process = await asyncio.create_subprocess_exec(
            *self.words, stdin=PIPE, stdout=PIPE, stderr=PIPE, env=environment
        )
        assert self._process.stdin is not None
        self._stdin = self._process.stdin
        return self._process

    async def on_meta(self, data: bytes) -> None:
        """What the app says beside what it paints; that a line is typed in it is for the page."""
        told = json.loads(data)
        if told["type"] == TYPES:
            await self.remote_write_str(json.dumps([TYPES, bool(told["typed"])]))
        else:
            await super().on_meta(data)

    async def stop(self) -> None:
        try:
            await asyncio.wait_for(super().stop(), PATIENCE_S)
        except TimeoutError:
            self._task = None
        if self._process is not None:
            if self._process.returncode is None and self._task is None:
                with contextlib.suppress(TimeoutError):
                    await asyncio.wait_for(self._process.wait(), PATIENCE_S)
            if self._process.returncode is None:
                with contextlib.suppress(ProcessLookupError):
                    self._process.kill()
            await self._process.wait()


class PantryServer(Server):
    """`words` start a window; `gate` says who gets one."""

    def __init__(self, words: list[str], gate: Gate) -> None:
        super().__init__("pantry-tui", title="pantry-tui")
        self._words, self._gate = words, gate
        self._windows = 0

    async def made(self) -> web.Application:
        """The server's application; needs a running loop."""
        app = web.Application(middlewares=[self._guarded], client_max_size=_LONGEST)
        app.on_response_prepare.append(_unnamed)
        app.add_routes(
            [
                web.get("/", self.handle_index),
                web.post("/enter", self._enter),
                web.get("/ws", self.handle_websocket),
                web.get("/download/{key}", self.handle_download),
                web.get("/page.css", _own_file),
                web.get("/page.js", _own_file),
                web.static("/static", self.statics_path),
            ]
        )
        return app

    # -- who may come in ---------------------------------------------------------------------------

    @web.middleware
    async def _guarded(self, request: web.Request, handler: Handler) -> web.StreamResponse:
        host = request.headers.get("Host")
        if not self._gate.knows(host):
            return _refused(421, "This machine is not called that.")
        drives = request.path == "/ws" or request.method != "GET"
        if drives and not self._gate.is_ours(request.headers.get("Origin"), host):
            return _refused(403, "Another page may not do this.")
        free = request.path in ("/enter", "/page.css")
        if not free and not self._gate.is_in(request.cookies.get(COOKIE)):
            if request.path == "/":
                return _dressed(_page(page.asks()), host)
            return _refused(403, "Come in by the first page.")
        try:
            answer = await handler(request)
        except web.HTTPException as error:
            return _refused(error.status, error.reason)
        return answer if request.path == "/ws" else _dressed(answer, host)

    async def _enter(self, request: web.Request) -> web.StreamResponse:
        address = request.remote or ""
        typed = (await request.post()).get("password")
        wait = self._gate.wait(address)
        if wait:
            said = f"Too many wrong tries: wait {round(wait + 0.5)} seconds."
            return _page(page.asks(said), 429)
        try:
            token = self._gate.enter(typed if isinstance(typed, str) else "", address)
        except StoreError as error:
            print(error.message, file=sys.stderr)
            return _page(page.asks("The password cannot be read at the machine."), 500)
        if token is None:
            return _page(page.asks("That is not the password."), 403)
        answer = web.Response(status=303, headers={"Location": "/"})
        answer.set_cookie(COOKIE, token, httponly=True, samesite="Strict", path="/")
        return answer

    # -- windows -----------------------------------------------------------------------------------

    async def handle_index(self, request: web.Request) -> web.StreamResponse:
        if set(request.query) - {"letters"}:
            # The page's script obeys some words in the address: none of them reaches it.
            return web.Response(status=303, headers={"Location": "/"})
        asked = request.query.get("letters")
        letters = None if asked is None else _number(asked, *_LETTERS_PX)
        return _page(page.app(f"ws://{request.headers['Host']}/ws", letters))

    async def handle_websocket(self, request: web.Request) -> web.WebSocketResponse:
        """A window of its own for whoever asks, until either of them leaves."""
        if self._windows >= MOST_WINDOWS:
            raise web.HTTPServiceUnavailable(reason="Too many windows are open: close one.")
        self._windows += 1
        try:
            return await self._lived(request)
        finally:
            self._windows -= 1

    async def _lived(self, request: web.Request) -> web.WebSocketResponse:
        spoken = web.WebSocketResponse(heartbeat=15, max_msg_size=_LONGEST)
        await spoken.prepare(request)

        async def close() -> None:
            await spoken.close()

        window = Window(
            "",
            write_bytes=spoken.send_bytes,
            write_str=spoken.send_str,
            close=close,
            download_manager=self.download_manager,
        )
        window.words = self._words
        width = _number(request.query.get("width"), _SMALLEST, _LARGEST, 80)
        height = _number(request.query.get("height"), _SMALLEST, _LARGEST, 24)
        try:
            await window.start(width, height)
            await self._process_messages(spoken, window)
        except (ValueError, TypeError, KeyError, IndexError, AttributeError, AssertionError):
            pass  # what it sends makes no sense: no page of ours
        except ConnectionError:
            pass
        finally:
            await window.stop()
            await spoken.close()
        return spoken


def _number(typed: str | None, least: int, most: int, usual: int) -> int:
    if typed is None or not (typed.isascii() and typed.isdigit() and len(typed) < 6):
        return usual
    return min(max(int(typed), least), most)


def _page(text: str, status: int = 200) -> web.Response:
    return web.Response(text=text, status=status, content_type="text/html")


async def _own_file(request: web.Request) -> web.StreamResponse:
    """One of the two files that lie here, by the route that leads to it."""
    return web.FileResponse(Path(__file__).with_name(request.path[1:]))


async def _unnamed(_: web.Request, answer: web.StreamResponse) -> None:
    """What runs here, and of which version, is nobody's business."""
    answer.headers.pop("Server", None)


def _refused(status: int, said: str) -> web.Response:
    answer = web.Response(text=f"{said}\n", status=status)
    answer.headers.update({name: _HEADERS[name] for name in ("Cache-Control", "X-Frame-Options")})
    return answer


def _dressed(answer: web.StreamResponse, host: str | None) -> web.StreamResponse:
    answer.headers.update({name: text.format(host=host) for name, text in _HEADERS.items()})
    return answer


def serve(words: list[str], gate: Gate, ours: socket.socket) -> None:
    """Serves on the socket until Ctrl+C or a signal to end."""
    server = PantryServer(words, gate)
    web.run_app(server.made(), sock=ours, print=None, access_log=None)
