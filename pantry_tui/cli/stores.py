"""Making a store, and opening the app on one."""

from __future__ import annotations

from pathlib import Path

from pantry_tui.cli.call import Call
from pantry_tui.cli.fields import flag, number, option
from pantry_tui.cli.verb import Verb


class App(Verb):
    """The app on the store; where there is none yet, on a new, empty one."""

    def run(self, call: Call) -> int:
        from pantry_tui.app.main import run  # the screen library is loaded only here

        return run(call.path, call.clock, make=True)


class Demo(Verb):
    init: str | None = option("--init", "PATH", "write a demo store there instead")

    def run(self, call: Call) -> int:
        from pantry_tui.services.demo import build_demo

        if self.init:
            path = Path(self.init)
            build_demo(path, call.today)
            said = f"Wrote the demo store {path}: try `pantry-tui --store {path} due`."
            return call.say(said, store=str(path))
        from tempfile import TemporaryDirectory

        from pantry_tui.app.main import run

        with TemporaryDirectory(prefix="pantry-tui-") as folder:
            path = Path(folder) / "demo.db"
            build_demo(path, call.today)
            return run(path, call.clock)


class Init(Verb):
    altitude: str | None = option("--altitude", "1800ft", "where you cook; else it is not said")
    people: int | None = number("--people", "N", "how many usually eat; else 2")
    units: str | None = option("--units", "UNITS", "us or metric; else us")
    demo: bool = flag("--demo", "fill it with the demo household")

    def run(self, call: Call) -> int:
        path = call.path
        if self.demo:
            from pantry_tui.services.demo import build_demo

            build_demo(path, call.today)
            next_ = "see pantry-tui due"
        else:
            from pantry_tui.core.amounts import read_altitude
            from pantry_tui.services.pantry import create

            degree = "C" if self.units == "metric" else "F"
            create(
                path,
                altitude_ft=read_altitude(self.altitude, degree) if self.altitude else None,
                people=2 if self.people is None else self.people,
                units=self.units or "us",
                clock=call.clock,
            )
            next_ = "add a place: pantry-tui place add NAME --climate pantry"
        return call.say(f"Made the store {path}; next, {next_}.", store=str(path))
