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
    from pantry_tui.app.host import Host

WRONG = (
    "Something is wrong inside the program ({}) and the app has ended: what was done before is "
    "booked; start it again with PANTRY_DEBUG=1 and report what it prints."
)
#: Seconds that the end may take once the terminal is gone or somebody wants the process to end.
GRACE_S = 3.0


def heed_signals(app: Host) -> None:
    """Told to end, or with its terminal gone, the app leaves the terminal as it was. What was done
    is booked already."""
    loop = get_running_loop()
    for name in ("SIGTERM", "SIGHUP"):
        number = getattr(signal, name, None)
        # Not every system has them, and only the main thread may ask for them.
        with suppress(NotImplementedError, RuntimeError, ValueError):
            if number is not None:
                loop.add_signal_handler(number, partial(_end, app, 128 + number))


def _end(app: Host, code: int) -> None:
    """End with that exit code. What is written to a terminal that is gone can wait for ever: then
    the process ends without it."""
    last = Timer(GRACE_S, os._exit, (code,))
    last.daemon = True
    last.start()
    app.exit(return_code=code)
