"""The metric twin of the demo: the same household, with what it types typed in metric units."""

from __future__ import annotations

import re
from datetime import date
from pathlib import Path

from pantry_tui.core.amounts import read_temperature
from pantry_tui.services.demo import Rows, build_demo, rows_of

#: What it types instead. A low-acid half-litre takes the quart's minutes by the makers' manuals
#: (core/safety/metric_jars.py): the times of data/process.csv for quarts.
_TYPED = {
    "half-pint": "250 ml", "pint": "500 ml", "quart": "1 litre", "1 lb": "500 g",
    "30 lb": "14 kg", "50 lb": "25 kg", "18 lb": "8 kg", "20 lb": "9 kg", "6 lb": "3 kg",
    "12 lb": "5 kg", "4 lb": "2 kg", "1.5 lb": "800 g", "psi=11": "psi=76kPa",
}  # fmt: skip
#: A word that means two things in metric countries, said so that it means one.
_NAMES = {"tomato sauce": "sugo"}
_QUARTS = {
    "runner beans": "25",
    "carrots": "30",
    "sweet corn": "85",
    "beets": "35",
    "venison": "90",
}
#: What it types of its places, °C.
_CELSIUS = {"70": "21C", "60": "15C", "42": "6C", "40": "4C", "38": "3C", "0": "-18C"}
_ANY = re.compile(rf"(?<![\w-])(?:{'|'.join(map(re.escape, _TYPED))})(?!\w)")


def typed(name: str) -> Rows:
    """The rows of a file of the demo, as a metric household types them."""
    return [_row(dict(row)) for row in rows_of(name)]


def _row(row: dict[str, str]) -> dict[str, str]:
    for column in ("container", "process", "then"):
        if column in row:
            row[column] = _ANY.sub(lambda found: _TYPED[found[0]], row[column])
    if row.get("food") in _NAMES:
        row["food"] = _NAMES[row["food"]]
    if row.get("method") == "pressure canned":
        row["process"] = f"minutes={_QUARTS[row['food']]};psi=76kPa"
    if row.get("temp_f"):
        row["temp_f"] = str(read_temperature(_CELSIUS[row["temp_f"]]))
    return row


def build_twin(path: Path, today: date) -> None:
    """A fresh twin at `path`."""
    build_demo(path, today, "metric", typed)


#: What a metric household must never read, typed by hand. A lid code may be "7F"; a jar of a
#: published table may be called by its name with the metric one it stands for.
AMERICAN = re.compile(
    r"\d ?(?:lbs?|oz)\b|\bpounds?\b|\bounces?\b|\bgallons?\b|\binch(?:es)?\b|\bfeet\b"
    r"|\d ft\b|\bpsi\b"
    r"|\d ?in[).,;]|\bFahrenheit\b|° ?F\b|\d F\b|\d\dF\b|\d cups?\b"
    r"|\b(?:half-pint|pint|quart)s?\b(?! \((?:250 ml|500 ml|1 litre)\))"
)
#: And what one with US units must not.
METRIC = re.compile(
    r"° ?C\b|\d C\b|\d\dC\b|\d ?kg\b|\blitres?\b|\d ?l\b|\d ?ml\b|\bkPa\b|\d ?[cm]m\b"
)


def american(text: str, *names: str) -> list[str]:
    """Lines that say a US measure outside of `names`: what the household typed, and titles of
    publications."""
    return _lines(AMERICAN, text, names)


def metric(text: str, *names: str) -> list[str]:
    """The same of metric measures."""
    return _lines(METRIC, text, names)


def _lines(wrong: re.Pattern[str], text: str, names: tuple[str, ...]) -> list[str]:
    for name in names:
        text = text.replace(name, "")
    return [line for line in text.splitlines() if wrong.search(line)]
