"""The app in a browser."""

from __future__ import annotations

import sys
from typing import TYPE_CHECKING

from pantry_tui.cli.call import Call
from pantry_tui.cli.fields import flag, number
from pantry_tui.cli.verb import Verb
from pantry_tui.errors import Refused

if TYPE_CHECKING:
    from pantry_tui.app.web.gate import Password

#: Where the app waits for browsers unless told otherwise.
PORT = 8765

#: No secret channel: said each time.
_OPEN = (
    "For a network you trust: nothing is encrypted, so whoever listens in it can read along. "
    "Elsewhere use ssh."
)


class Serve(Verb):
    port: int | None = number("--port", "N", f"where it waits; else {PORT}; 0: any that is free")
    lan: bool = flag("--lan", "for others in your network too: asks for a password")
    forget: bool = flag("--new-password", "choose another password first")

    def run(self, call: Call) -> int:
        from pantry_tui.app.web import address

        if call.as_json:
            raise Refused("`serve` goes on until you end it and has no answer: leave --json out.")
        try:
            from pantry_tui.app.web import server
        except ImportError as error:
            raise Refused(address.MISSING) from error
        from time import monotonic

        from pantry_tui.app.web.gate import Gate
        from pantry_tui.app.web.window import words
        from pantry_tui.services.pantry import open_pantry

        with open_pantry(call.path, call.clock):
            pass  # it opens: a sentence now, and not in a browser
        password = _password(self.forget) if self.lan else None
        ours = address.listening(PORT if self.port is None else self.port, self.lan)
        port = ours.getsockname()[1]
        hosts = address.hosts(port, self.lan)
        url = f"http://{hosts[0]}/"
        if self.lan:
            print(address.picture(url))
            print(_OPEN)
        print(f"Open {url} in a browser. Ctrl+C ends it.", flush=True)
        server.serve(words(call.path, call.clock), Gate(hosts, password, monotonic), ours)
        return 0


def _password(forget: bool) -> Password:
    """The one of this machine; asked for, twice, where there is none yet. Raises Refused where
    nobody can be asked."""
    from pantry_tui.app.web.gate import Password
    from pantry_tui.settings import settings_file

    password = Password(settings_file().with_name("serve-password.json"))
    if password.is_set and not forget:
        return password
    if not sys.stdin.isatty():
        raise Refused("`serve --lan` asks for a password: start it once in a terminal.")
    from getpass import getpass

    typed = getpass("A password for your browsers (at least 8 letters): ")
    if typed != getpass("The same once more: "):
        raise Refused("The two were not the same: start it again.")
    password.set(typed)
    return password
