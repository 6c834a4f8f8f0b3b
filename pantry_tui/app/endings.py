"""How the app ends when nobody pressed a key for it: told to, without a terminal, or by a fault."""

from __future__ import annotations

import os
import signal
from asyncio import get_running_loop
from contextlib import suppress
from functools import partial
from threading import Timer
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from asyncio import AbstractEventLoop

    from pantry_tui.app.host import Host

WRONG = (
    "Something is wrong inside the program ({}) and the app has ended: what was done before is "
    "booked; start it again with PANTRY_DEBUG=1 and report what it prints."
)
#: Seconds that the end may take once the terminal is gone or somebody wants the process to end.
GRACE_S = 3.0


def heed_signals(app: Host) -> None:
    """Told to end, or with its terminal gone, the app leaves the terminal as it was. What was done
    is booked already.

    The handler is none of the loop's: that would wait behind whatever keeps the loop busy, as a
    million letters that were pasted do."""
    end = partial(_end, app, get_running_loop())
    for name in ("SIGTERM", "SIGHUP"):
        number = getattr(signal, name, None)
        with suppress(ValueError):  # only the main thread may ask for them
            if number is not None:  # not every system has them
                signal.signal(number, end)


def _end(app: Host, loop: AbstractEventLoop, number: int, _: object) -> None:
    """End with the exit code of that signal. What is written to a terminal that is gone can wait
    for ever: then the process ends without it."""
    code = 128 + number
    last = Timer(GRACE_S, os._exit, (code,))
    last.daemon = True
    last.start()
    with suppress(RuntimeError):  # the loop is closed: the app ends already
        loop.call_soon_threadsafe(partial(app.exit, return_code=code))
