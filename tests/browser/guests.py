"""Who comes to the served app, and who must not: scenes of a whole browser and a store.

Each returns what there is to say of it, "" for nothing, and raises when something is wrong.
"""

from __future__ import annotations

import asyncio
import base64
import os
import re
import signal
import subprocess
import sys
import time
from collections.abc import AsyncIterator, Awaitable, Callable
from contextlib import asynccontextmanager
from pathlib import Path

from aiohttp import web

from pantry_tui.app.web.gate import Password
from pantry_tui.core.log.events import Did
from tests.app.web.serving import PASSWORD, command, killed_after, serve, served
from tests.browser.devtools import Browser
from tests.browser.phone import Phone, phone
from tests.browser.scenes import JOB, booked, expect

Guest = Callable[[Browser, Path, Path | None], Awaitable[str]]

#: What another window wrote is to be seen within so many seconds.
SEEN_S = 2.0
_STEERING = re.compile(r"\x1b\[[0-9;?<>=]*[a-zA-Z]")


@asynccontextmanager
async def shown(
    browser: Browser, url: str, album: Path | None = None, person: str | None = None
) -> AsyncIterator[Phone]:
    """A phone that shows the app; it is closed again."""
    made = await phone(browser, person, album)
    await made.go(url)
    await made.until("in store", JOB)
    yield made
    await made.page.do("Page.close")


async def nothing_leaks(at: Phone, url: str, path: Path) -> None:
    """All that the page asked for is ours, and nothing that it got names this machine."""
    ours = (f"{url}/", url.replace("http", "ws", 1) + "/ws", "data:", f"blob:{url}")
    for asked in at.asked:
        expect(asked.startswith(ours), f"the page asked for {asked}")
    text = str(await at.page.script("document.documentElement.outerHTML"))
    for frame in at.heard:
        # A frame of words is told as it is, and begins like a list.
        raw = frame if frame.startswith("[") else base64.b64decode(frame).decode("utf-8", "replace")
        text += _STEERING.sub("", raw)
    for secret in (str(path.parent), sys.prefix, sys.executable, "python", str(Path.home()) + "/"):
        expect(secret not in text, f"the page was told {secret}")


async def the_password(browser: Browser, path: Path, album: Path | None) -> str:
    password = Password(path.with_name("password.json"))
    password.set(PASSWORD)
    async with served(path, password) as url:
        person = await browser.person()
        at = await phone(browser, person, album)
        await at.go(url)
        for typed, said in (("nine jars of plum", "That is not the password."), (PASSWORD, "")):
            await at.press("input")
            await at.type(typed)
            await at.press("form button")
            if said:
                await at.page_until(f"document.body?.innerText.includes({said!r})")
                await at.shot_of("password")
        await at.until("in store", JOB)
        cookie = await at.page.script("document.cookie")
        expect(cookie == "", "a script can read the cookie")
        await nothing_leaks(at, url, path)
        stranger = await phone(browser, None, album)
        await stranger.go(url)
        await stranger.page_until("document.querySelector('input[type=password]') !== null")
    return ""


async def a_foreign_page(browser: Browser, path: Path, album: Path | None) -> str:
    """Open beside ours in the same browser, which is let in: it opens no window, reads nothing,
    sends no form, and shows ours in no frame; nor from another port of this machine."""

    async def page(_: web.Request) -> web.Response:
        return web.Response(text="<title>elsewhere</title><body>", content_type="text/html")

    app = web.Application()
    app.add_routes([web.get("/", page)])
    runner = web.AppRunner(app)
    await runner.setup()
    site = web.TCPSite(runner, "127.0.0.1", 0)
    await site.start()
    password = Password(path.with_name("password.json"))
    password.set(PASSWORD)
    try:
        port = runner.addresses[0][1]
        async with served(path, password) as url:
            person = await browser.person()
            ours = await phone(browser, person, album)
            await ours.go(url)
            await ours.press("input")
            await ours.type(PASSWORD)
            await ours.press("form button")
            await ours.until("in store", JOB)
            before = len(booked(path))
            for elsewhere in (f"http://127.0.0.1:{port}/", f"http://localhost:{port}/"):
                theirs = await phone(browser, person)
                await theirs.go(elsewhere)
                await theirs.page_until("document.title === 'elsewhere'")
                for what, script in _TRIES.items():
                    came = await theirs.page.script(f"({script})({url!r})")
                    expect(came == "refused", f"{elsewhere} may {what}: {came}")
            expect(len(booked(path)) == before, "another page booked something")
            await ours.tap("applesauce")
            await ours.until("›! applesauce")
    finally:
        await runner.cleanup()
    return ""


_TRIES = {
    "open a window": """(url) => new Promise((done) => {
      const one = new WebSocket(url.replace('http', 'ws') + '/ws');
      one.onopen = () => done('opened');
      one.onclose = () => done('refused');
    })""",
    "read the page": """(url) => fetch(url, {credentials: 'include'})
      .then((answer) => answer.text(), () => 'refused')""",
    "send the password": """(url) => fetch(url + '/enter', {method: 'POST',
        body: new URLSearchParams({password: 'x'}), credentials: 'include'})
      .then((answer) => answer.text(), () => 'refused')""",
    "run our script": """(url) => new Promise((done) => {
      const one = document.createElement('script');
      one.src = url + '/page.js';
      one.onload = () => done('ran');
      one.onerror = () => done('refused');
      document.body.append(one);
    })""",
    "frame it": """(url) => new Promise((done) => {
      const one = document.createElement('iframe');
      one.onload = () => {
        // A frame that was refused shows the browser's own page, whose inside is nobody's.
        try { done(one.contentWindow.length === undefined ? 'odd' : 'refused'); }
        catch (error) { done('refused'); }
      };
      one.src = url;
      document.body.append(one);
    })""",
}


async def a_rebound_name(browser: Browser, path: Path, album: Path | None) -> str:
    """A name that somebody else's name server leads to this machine; devtools.py plays it."""
    async with served(path) as url:
        at = await phone(browser, None, album)
        await at.go(url.replace("127.0.0.1", "rebound.example"))
        said = await at.page_until("document.body && document.body.innerText")
        expect("not called that" in said, f"it was told {said}")
        expect(await at.page.script("document.querySelector('#terminal')") is None, "it got in")
        opened = await at.page.script(f"({_TRIES['open a window']})(location.origin)")
        expect(opened == "refused", "a rebound name opened a window")
    return ""


async def two_phones_and_a_terminal(browser: Browser, path: Path, album: Path | None) -> str:
    """Each sees what the others write within two seconds."""
    async with (
        served(path) as url,
        shown(browser, url, album) as one,
        shown(browser, url, album) as two,
    ):
        stands = int((await one.until("in store")).split(" in store")[0].split()[-1])
        took = []

        async def seen(at: Phone, left: int) -> None:
            began = time.monotonic()
            await at.until(f"{left} in store")
            took.append(time.monotonic() - began)

        await one.tap("applesauce")
        await one.until("›! applesauce")
        await one.tap("u use")
        await one.until("Used")
        await seen(two, stands - 1)
        await two.tap("dill pickles")
        await two.until("›- dill pickles")
        await two.tap("u use")
        await two.until("Used")
        await seen(one, stands - 2)
        done = await asyncio.to_thread(
            subprocess.run, command(path, "use", "2A"), capture_output=True, check=True
        )
        expect(done.returncode == 0, "the command failed")
        await asyncio.gather(seen(one, stands - 3), seen(two, stands - 3))
        await one.button("z")
        await nothing_leaks(one, url, path)
    expect(max(took) <= SEEN_S, f"seen only after {max(took):.1f} s")
    return f"another window's write seen after {max(took):.1f} s at most"


async def a_server_that_is_killed(browser: Browser, path: Path, album: Path | None) -> str:
    """In the middle of a burst of acts; what was said to be done is there afterwards."""
    before = booked(path).count(Did.USE)
    with killed_after(subprocess.Popen(serve(path), stdout=subprocess.PIPE, text=True)) as server:
        assert server.stdout is not None
        line = await asyncio.to_thread(server.stdout.readline)
        url = line.split()[1].rstrip("/")
        at = await phone(browser, None, album)
        await at.go(url)
        stands = int((await at.until("in store", JOB)).split(" in store")[0].split()[-1])
        await at.tap("applesauce")
        await at.until("›! applesauce")
        await at.button("abc", *"uuuuuu")
        await at.until("Used")
        told = int((await at.text()).split(" in store")[0].split()[-1])
        os.kill(server.pid, signal.SIGKILL)
        await at.page_until("document.body?.innerText.includes('This window is closed')")
        await at.shot_of("closed")
    used = booked(path).count(Did.USE) - before
    expect(used >= stands - told > 0, f"{stands - told} were told to be used, {used} are")
    return f"{stands - told} acts told before the kill, {used} booked"


GUESTS: dict[str, Guest] = {
    "the password": the_password,
    "a foreign page": a_foreign_page,
    "a rebound name": a_rebound_name,
    "two phones and a terminal": two_phones_and_a_terminal,
    "a server that is killed": a_server_that_is_killed,
}
