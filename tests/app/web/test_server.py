"""Browsers, played by a client that speaks as one does, each with a window of the real app."""

from __future__ import annotations

import asyncio
import json
import os
import re
import select
import signal
import subprocess
import sys
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from pathlib import Path

import aiohttp
import pytest

from pantry_tui.app.web import address, page
from pantry_tui.app.web.gate import Password
from pantry_tui.app.web.server import COOKIE, MOST_WINDOWS
from pantry_tui.services.demo import build_demo
from pantry_tui.services.pantry import open_pantry
from pantry_tui.services.stock import view
from tests.app.web.serving import PASSWORD, TODAY, command, killed_after, serve, served

#: Seconds after which what should have been painted never will be.
PATIENCE_S = 60


@pytest.fixture(scope="module")
def demo_file(tmp_path_factory: pytest.TempPathFactory) -> bytes:
    path = tmp_path_factory.mktemp("demo") / "demo.db"
    build_demo(path, TODAY)
    return path.read_bytes()


@pytest.fixture
def path(tmp_path: Path, demo_file: bytes) -> Path:
    made = tmp_path / "pantry.db"
    made.write_bytes(demo_file)
    return made


@pytest.fixture
def password(tmp_path: Path) -> Password:
    made = Password(tmp_path / "password.json")
    made.set(PASSWORD)
    return made


class Browser:
    """What a browser shows of a window, and what is tapped there."""

    def __init__(self, socket: aiohttp.ClientWebSocketResponse) -> None:
        self.socket, self.painted = socket, ""

    async def until(self, words: str) -> str:
        """Reads until these words were painted; returns what was."""
        async with asyncio.timeout(PATIENCE_S):
            while words not in self.painted:
                message = await self.socket.receive()
                if message.type == aiohttp.WSMsgType.TEXT:
                    continue  # for the page, and nothing that is painted
                assert message.type == aiohttp.WSMsgType.BINARY, message
                steered = message.data.decode("utf-8", "replace")
                self.painted += re.sub(r"\x1b\[[0-9;?<>]*[a-zA-Z]", "", steered)
        painted, self.painted = self.painted, ""
        return painted

    async def tap(self, keys: str) -> None:
        await self.socket.send_str(json.dumps(["stdin", keys]))


@asynccontextmanager
async def window(url: str, size: tuple[int, int] = (80, 24)) -> AsyncIterator[Browser]:
    where = f"{url}/ws?width={size[0]}&height={size[1]}"
    async with (
        aiohttp.ClientSession() as session,
        session.ws_connect(where, origin=url) as socket,
    ):
        yield Browser(socket)


async def test_the_page_holds_no_path_no_command_and_nothing_from_elsewhere(path: Path) -> None:
    async with served(path) as url, aiohttp.ClientSession() as session:
        answer = await session.get(url)
        page = await answer.text()
        assert answer.status == 200
        for secret in (str(path), str(path.parent), "python", sys.prefix, os.sep + "tmp"):
            assert secret not in page
        elsewhere = re.findall(r"(?:src|href|action)=\"([^\"]*)\"", page)
        assert elsewhere
        assert all(one.startswith(("/", "data:")) for one in elsewhere)
        for one in elsewhere:
            if one.startswith("/"):
                assert (await session.get(url + one)).status == 200, one
        assert "default-src 'none'" in answer.headers["Content-Security-Policy"]
        assert answer.headers["X-Frame-Options"] == "DENY"
        # With "no-referrer" a browser sends "Origin: null" with our own form, which is refused.
        assert answer.headers["Referrer-Policy"] == "same-origin"
        assert "Server" not in answer.headers


async def test_a_jar_is_used_at_the_size_of_a_phone_and_stands_in_the_store(path: Path) -> None:
    async with served(path) as url, window(url, (40, 30)) as phone:
        await phone.until("Open and thawed")
        await phone.tap("/strawberry jam\r")
        await phone.until("strawberry")
        await phone.tap("u")
        said = await phone.until("left of")
        assert "Used" in said
    with open_pantry(path, TODAY) as p:
        assert p.events[-1].did.value == "use"


async def test_two_browsers_and_a_command_see_each_other(path: Path) -> None:
    async with served(path) as url, window(url) as one, window(url) as two:
        painted = re.search(r"(\d+) in store", await one.until("in store"))
        assert painted
        stands = int(painted[1])
        await two.until(f"{stands} in store")
        await one.tap("/strawberry jam\ru")
        await one.until("Used")
        await two.until(f"{stands - 1} in store")
        await asyncio.to_thread(
            subprocess.run, command(path, "use", "2A"), check=True, capture_output=True
        )
        await two.until(f"{stands - 2} in store")


@pytest.mark.parametrize("origin", [None, "null", "http://evil.example", "https://127.0.0.1"])
async def test_a_page_of_somebody_else_gets_no_window(path: Path, origin: str | None) -> None:
    async with served(path) as url, aiohttp.ClientSession() as session:
        with pytest.raises(aiohttp.WSServerHandshakeError) as refused:
            await session.ws_connect(f"{url}/ws", origin=origin)
        assert refused.value.status == 403


@pytest.mark.parametrize("route", ["/", "/ws", "/page.js", "/static/js/textual.js", "/download/x"])
async def test_a_name_that_is_not_ours_gets_nothing(path: Path, route: str) -> None:
    """A name that somebody else's name server leads here."""
    async with served(path) as url, aiohttp.ClientSession() as session:
        port = url.rpartition(":")[2]
        for host in (f"evil.example:{port}", "127.0.0.1", ""):
            answer = await session.get(url + route, headers={"Host": host})
            assert answer.status in (400, 421), host
            assert len(await answer.text()) < 200


@pytest.mark.parametrize("route", ["/ws", "/page.js", "/static/js/textual.js", "/download/x"])
async def test_without_the_password_there_is_only_the_page_that_asks(
    path: Path, password: Password, route: str
) -> None:
    async with served(path, password) as url, aiohttp.ClientSession() as session:
        assert 'type="password"' in await (await session.get(url)).text()
        answer = await session.get(url + route, headers={"Origin": url})
        assert answer.status == 403
        made_up = {"Cookie": f"{COOKIE}=made-up", "Origin": url}
        assert (await session.get(url + route, headers=made_up)).status == 403


async def enter(session: aiohttp.ClientSession, url: str, typed: str, origin: str = "") -> int:
    answer = await session.post(
        f"{url}/enter",
        data={"password": typed},
        headers={"Origin": origin or url},
        allow_redirects=False,
    )
    return answer.status


async def test_the_password_opens_a_window(path: Path, password: Password) -> None:
    jar = aiohttp.CookieJar(unsafe=True)  # an address of numbers keeps its cookie too
    async with served(path, password) as url, aiohttp.ClientSession(cookie_jar=jar) as session:
        assert await enter(session, url, "nine jars of plum") == 403
        assert await enter(session, url, PASSWORD, "http://evil.example") == 403
        assert await enter(session, url, PASSWORD) == 303
        (cookie,) = jar
        assert cookie["httponly"]
        assert cookie["samesite"] == "Strict"
        assert "textual-terminal" in await (await session.get(url)).text()
        async with session.ws_connect(f"{url}/ws", origin=url) as socket:
            await Browser(socket).until("in store")


async def test_wrong_tries_are_told_to_wait(path: Path, password: Password) -> None:
    async with served(path, password) as url, aiohttp.ClientSession() as session:
        assert [await enter(session, url, "wrong") for _ in range(5)] == [403, 403, 403, 429, 429]
        assert await enter(session, url, PASSWORD) == 429


async def test_no_words_in_the_address_reach_the_page_of_the_app(path: Path) -> None:
    async with served(path) as url, aiohttp.ClientSession() as session:
        answer = await session.get(f"{url}/?ping=http://evil.example", allow_redirects=False)
        assert (answer.status, answer.headers["Location"]) == (303, "/")
        for typed, size in (("12", "12"), ("9000", "40"), ("1e5", "16"), ('"><script>', "16")):
            page = await (await session.get(url, params={"letters": typed})).text()
            assert f'data-font-size="{size}"' in page


@pytest.mark.parametrize("said", ["", "{", "[]", '["stdin"]', '["stdin", 4]', '["resize", 1]'])
async def test_what_makes_no_sense_ends_the_window_and_no_more(path: Path, said: str) -> None:
    async with served(path) as url:
        async with window(url) as odd, asyncio.timeout(PATIENCE_S):
            await odd.until("in store")
            await odd.socket.send_str(said)
            while not odd.socket.closed:
                await odd.socket.receive()
        async with window(url) as other:
            await other.until("in store")


async def test_the_page_is_told_when_a_line_is_typed(path: Path) -> None:
    """So that a phone shows letters then, and its list at all other times."""
    async with served(path) as url, window(url) as phone, asyncio.timeout(PATIENCE_S):
        await phone.until("in store")
        for keys, typed in (("/", True), ("\x1b[27u", False)):
            await phone.tap(keys)
            while (message := await phone.socket.receive()).type != aiohttp.WSMsgType.TEXT:
                pass
            assert message.json() == ["types", typed]


def test_every_key_of_the_page_is_sent_as_it_is_drawn_or_named() -> None:
    drawn = re.findall(r'data-key="([^"]*)"', page.app("ws://here/ws", None))
    assert set("1234567890abcdefghijklmnopqrstuvwxyz-,./?") <= set(drawn)
    script = Path(page.__file__).with_name("page.js").read_text(encoding="utf-8")
    for key in (one for one in drawn if len(one) > 1 or not one.isascii()):
        named = key if key.isascii() else f'"\\u{ord(key):04x}"'
        assert f"{named}: " in script, key


async def test_files_of_the_machine_are_not_reached_from_a_browser(path: Path) -> None:
    async with served(path) as url, window(url) as phone:
        await phone.until("in store")
        await phone.tap("\x1b[24~")  # F12
        await phone.until("at the machine itself")


async def test_there_is_an_end_of_windows(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    assert MOST_WINDOWS == 12
    monkeypatch.setattr("pantry_tui.app.web.server.MOST_WINDOWS", 1)
    async with served(path) as url, window(url) as phone:
        await phone.until("in store")
        with pytest.raises(aiohttp.WSServerHandshakeError) as refused:
            async with window(url):
                pass
        assert refused.value.status == 503


# -- the command -----------------------------------------------------------------------------------


def children(pid: int) -> list[int]:
    return [int(one) for one in Path(f"/proc/{pid}/task/{pid}/children").read_text().split()]


@pytest.mark.skipif(not Path("/proc/self/task").is_dir(), reason="looks at processes in /proc")
async def test_a_server_that_is_killed_in_the_middle_loses_nothing(path: Path) -> None:
    """Nor does a window of it go on living."""
    with killed_after(subprocess.Popen(serve(path), stdout=subprocess.PIPE, text=True)) as server:
        assert server.stdout is not None
        line = server.stdout.readline()
        found = re.search(r"http://\S+:(\d+)/", line)
        assert found, line
        url = f"http://127.0.0.1:{found[1]}"
        async with window(url) as phone:
            await phone.until("in store")
            await phone.tap("/strawberry jam\ru")
            await phone.until("Used")
            await phone.tap("uuuuuuuu")
            watched = [os.pidfd_open(pid) for pid in children(server.pid)]
            assert len(watched) == 1
            server.send_signal(signal.SIGKILL)
            ended, _, _ = await asyncio.to_thread(select.select, watched, [], [], PATIENCE_S)
            assert ended == watched
    with open_pantry(path, TODAY) as p:
        used = [event for event in p.events if event.did.value == "use"]
        assert used[-1].day == TODAY
        assert len(view.due(p)) > 0


def test_a_port_that_is_taken_is_said_in_a_sentence(path: Path) -> None:
    with address.listening(0, lan=False) as taken:
        words = serve(path)[:-1]
        port = str(taken.getsockname()[1])
        done = subprocess.run([*words, port], capture_output=True, text=True, check=False)
    assert done.returncode == 1
    assert f"Port {port} cannot be used" in done.stderr
    assert "--port" in done.stderr


def test_a_first_password_is_asked_for_in_a_terminal_alone(
    path: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "none"))
    done = subprocess.run(
        serve(path, "--lan"), capture_output=True, text=True, check=False, stdin=subprocess.DEVNULL
    )
    assert (done.returncode, done.stdout) == (1, "")
    assert "start it once in a terminal" in done.stderr


def test_the_address_is_a_picture_for_a_camera() -> None:
    drawn = address.picture("http://192.0.2.7:8765/")
    assert drawn.count("\n") > 10
    assert set(re.sub(r"\x1b\[[0-9;]*m", "", drawn)) <= set("█▀▄ \n\xa0")
