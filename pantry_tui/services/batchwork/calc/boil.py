"""Boiling points and canner pressures from physics: shown beside a published row, never instead."""

from __future__ import annotations

from pantry_tui.core.batchwork.steam import (
    air_psi,
    boiling_point_f,
    canner_f,
    gauge_psi,
)
from pantry_tui.errors import BadInput
from pantry_tui.services.batchwork.calc.answer import OTHER_SCALES, Answer, Books, Line, tidy
from pantry_tui.services.batchwork.calc.sentence import Sentence

#: Of one psi.
KPA = 6.894757293
_BAR = 100 / KPA
_PHYSICS = ("bw-iapws-1997", "bw-atmosphere-1976")
_NEVER = (
    "A pressure or a time for canning is only ever the one that its table prints: these are not.",
)
_WEATHER = "Weather moves the boiling point by a degree or so; a tested process allows for it."


def boil(books: Books, said: Sentence) -> Answer:
    """Boiling point by altitude; with a pressure, how hot its steam is; with a temperature above
    boiling, the pressure it takes."""
    feet, pressure = said.feet(), said.take(("psi", "kPa", "bar"))
    warmth = said.take(("F", "C"))
    said.has("altitude", "sea level", "gauge", "boiling", "point", "dial", "weighted", "sea")
    said.finish()
    if said.words():
        raise BadInput(f"{said.words()[:40]!r} is not understood: calc boil 1800ft, or 11 psi.")
    height = feet if feet is not None else books.altitude_ft or 0
    if not -1500 <= height <= 20_000:
        raise BadInput(f"{height:,} ft is no place where anybody cooks.")
    source = "; ".join(str(books.tables.sources[one]) for one in _PHYSICS)
    notes = [_WEATHER]
    if feet is None and books.altitude_ft is None:
        notes.insert(0, "Altitude not said: for sea level.")
    boils = boiling_point_f(height)
    lines = [
        _heat("water boils at", boils, f"saturated steam at {air_psi(height):.2f} psi", source)
    ]
    if pressure is not None:
        gauge = pressure.value * {"psi": 1.0, "kPa": 1 / KPA, "bar": _BAR}[pressure.unit]
        if gauge > 30:
            raise BadInput(f"{pressure} is more than any home canner holds.")
        how = f"saturated steam at {air_psi(height):.2f} + {gauge:.2f} psi"
        lines.insert(
            0, _heat(f"steam at {pressure} on the gauge", canner_f(gauge, height), how, source)
        )
    elif warmth is not None:
        lines.insert(0, _pressure_for(warmth.value, warmth.unit, height, source))
    lines += _gel(books, boils)
    also = tuple(line for one in lines for line in (one, *_other_scale(one)))
    return Answer(also[0], also[1:], tuple(notes), _NEVER)


def _heat(what: str, fahrenheit: float, formula: str, source: str) -> Line:
    return Line(what, round(fahrenheit, 1), "°F", formula, source)


def _pressure_for(value: float, unit: str, height: int, source: str) -> Line:
    fahrenheit = value if unit == "F" else value * 9 / 5 + 32
    if not boiling_point_f(height) < fahrenheit <= 300:
        raise BadInput("Give a temperature above boiling there and up to 300 °F.")
    psi = gauge_psi(fahrenheit, height)
    how = f"saturation pressure at {fahrenheit:g} °F - {air_psi(height):.2f} psi of air"
    return Line(f"gauge pressure for {fahrenheit:g} °F", tidy(psi), "psi", how, source)


def _gel(books: Books, boils: float) -> list[Line]:
    return [
        Line(
            f"jellying point, {row.wording}",
            round(boils + row.low, 1),
            "°F",
            f"{row.low:g} °F above boiling",
            books.cite(row),
        )
        for row in books.batch.about("jellying point")
    ]


def _other_scale(line: Line) -> list[Line]:
    if line.unit != "°F" or not isinstance(line.answer, float):
        if line.unit == "psi" and isinstance(line.answer, float | int):
            kpa = round(line.answer * KPA, 1)
            return [Line(f"{line.what}, the same", kpa, "kPa", OTHER_SCALES[2])]
        return []
    celsius = round((line.answer - 32) * 5 / 9, 1)
    return [Line(f"{line.what}, the same", celsius, "°C", OTHER_SCALES[1])]
