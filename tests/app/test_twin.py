"""Every screen of the metric twin of the demo is free of pounds and Fahrenheit."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.app.main import PantryApp
from pantry_tui.services.demo import build_demo
from pantry_tui.services.pantry import open_pantry
from tests.app.screens import painted
from tests.twin import american, build_twin, metric

TODAY = date(2027, 1, 15)
_NAMED = {" ": "space", ",": "comma", "=": "equals_sign", ".": "full_stop"}


def keys_of(step: str) -> tuple[str, ...]:
    """One key, or all of a text that is typed ("type:9 lb beets") and looked at when it stands."""
    text = step.removeprefix("type:")
    return (step,) if text == step else tuple(_NAMED.get(letter, letter) for letter in text)


DOWN = "down"
#: Keys to each screen and question there is; each is looked at on the way.
WALKS: dict[str, tuple[str, ...]] = {
    "due": (*[DOWN] * 12, "end", "question_mark"),
    "batch": ("enter", "pagedown", "escape", DOWN, DOWN, "enter", "end"),
    "shelves": ("S", *[DOWN] * 40, "m"),
    "new place": ("S", "a", "type:attic, warm", "enter"),
    "a reading": ("S", "r", "type:900", "enter"),
    "a power cut": ("S", "end", "x", "1", "1"),
    "week": ("W", *[DOWN] * 20),
    "put up": (
        "p",
        "type:7 jars runner beans, pressure canned, larder minutes=20 psi=60kPa",
        "enter",
    ),
    "log": ("l", *["pagedown"] * 6),
    "outlook": ("y", *[DOWN] * 10, "m"),
    "books": ("y", "b"),
    "count": ("c", "1", *[DOWN] * 8, "f"),
    "sign": ("s", "1", "1"),
    "use some": ("slash", "type:potatoes", "enter", "u"),
    "discard": ("d",),
    "move": ("m",),
    "process": ("slash", "type:sweet corn", "enter", "i"),
    "household": ("comma", "1"),
    "units": ("comma", "3"),
    "methods": (),
    "jobs": ("full_stop",),
    "reckon": ("equals_sign", "1"),
    "boil": ("equals_sign", "type:boil", "enter"),
    "guides": ("f1", "1"),
}
#: What somebody typed in units of the other kind; titles of publications.
TITLES = ("US: pounds, pints, °F", "meats at 37 F", "Chart at 70 F", "3,000 to 10,000 ft", "psi=")
LITRES = (
    "metric: kilograms, litres, °C",
    "250 ml, 500 ml and 1 litre",
    "1 litre bottle",
    "5 litre crock",
    "60kPa",
)


@pytest.fixture(scope="module")
def twin(tmp_path_factory: pytest.TempPathFactory) -> bytes:
    path = tmp_path_factory.mktemp("twin") / "twin.db"
    build_twin(path, TODAY)
    return path.read_bytes()


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> bytes:
    path = tmp_path_factory.mktemp("demo") / "demo.db"
    build_demo(path, TODAY)
    return path.read_bytes()


def on_the_way(name: str, amount: str) -> tuple[str, ...]:
    """The keys of a walk, with an amount as that household types it."""
    if name != "methods":
        return WALKS[name]
    return ("semicolon", f"type:{amount} beets", "enter")


async def walk(
    store: Path, there: Sequence[str], size: tuple[int, int], wrong: Callable[[str], list[str]]
) -> list[str]:
    """Every line that is wrong on a way through the app."""
    found: list[str] = []
    with open_pantry(store, TODAY) as pantry:
        app = PantryApp(pantry)
        async with app.run_test(size=size) as pilot:
            await pilot.pause()
            for step in there:
                found += wrong(painted(pilot))
                await pilot.press(*keys_of(step))
                await pilot.pause()
            found += wrong(painted(pilot))
    return found


@pytest.mark.parametrize("size", [(80, 24), (120, 40)])
@pytest.mark.parametrize("name", WALKS)
async def test_no_screen_of_a_metric_household_speaks_of_pounds(
    tmp_path: Path, twin: bytes, name: str, size: tuple[int, int]
) -> None:
    store = tmp_path / "twin.db"
    store.write_bytes(twin)
    there = on_the_way(name, "4 kg")
    found = await walk(store, there, size, lambda text: american(text, *TITLES))
    assert found == []


@pytest.mark.parametrize("name", WALKS)
async def test_no_screen_of_a_us_household_speaks_of_litres(
    tmp_path: Path, demo: bytes, name: str
) -> None:
    store = tmp_path / "demo.db"
    store.write_bytes(demo)
    there = on_the_way(name, "9 lb")
    found = await walk(store, there, (120, 40), lambda text: metric(text, *LITRES))
    assert found == []
