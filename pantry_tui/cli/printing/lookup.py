"""Published figures, and what a household added."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from typing import Any

from pantry_tui.cli.printing.lines import listed
from pantry_tui.core.dates import say, span
from pantry_tui.core.keeping.no_day import instead_of_day
from pantry_tui.core.text import clean


def process(answer: dict[str, Any], altitude_ft: int | None) -> list[str]:
    """A tested process, or why there is none."""
    where = "altitude not said" if altitude_ft is None else f"at {altitude_ft} ft"
    lines = [f"{answer['answer']} ({where})"]
    for key, word in (
        ("minutes", "minutes"),
        ("psi", "psi"),
        ("acidify", "acidify"),
    ):
        if answer[key] is not None:
            lines.append(f"{word}: {answer[key]}")
    if answer["headspace_in"] is not None:
        lines.append(f"headspace: {_inches(answer['headspace_in'])}")
    lines += [
        "option: " + ", ".join(_option(key, value) for key, value in option.items() if value)
        for option in answer["options"]
    ]
    lines += [f"why: {clean(str(one))}" for one in answer["reasons"]]
    lines += [f"beside it: {one}" for one in answer["physics"]]
    lines += [f"source: {clean(str(one))}" for one in answer["sources"]]
    return lines + [f"care: {one}" for one in answer["cautions"]]


def _inches(number: float) -> str:
    return f"{number:g} inch"


def _option(key: str, value: Any) -> str:
    if key == "headspace_in":
        return f"headspace {_inches(value)}"
    return f"{value} psi" if key == "psi" else f"{key} {value}"


def shelf_life(answer: dict[str, Any]) -> list[str]:
    """Published limits, both kinds, with sources."""
    lines = [f"{answer['food']}, {answer['method']}, {answer['state']}, {answer['place']}"]
    if not answer["allowed"]:
        lines.append("Not allowed by publications.")
    for kind in ("quality", "safety"):
        found = answer["published"][kind]
        lines.append(f"{kind}: {_figure(answer['in_use'][kind], _range(found))}")
    for key, word in (("best_by", "best by"), ("discard_after", "discard after")):
        if answer[key]:
            lines.append(f"{word}: {say(date.fromisoformat(answer[key]))}")
    if answer["discard_after_why"]:
        lines.append(f"discard after: {instead_of_day(answer['discard_after_why'])}")
    lines += [f"why: {clean(one)}" for one in answer["reasons"]]
    lines += [f"source: {clean(one)}" for one in answer["sources"]]
    return lines + [f"care: {one}" for one in answer["cautions"]]


def _figure(used: list[Any] | None, published: str) -> str:
    """ "1 day (published: 1 to 2 days)": what counts first, as the reasons say it."""
    if used is None:
        return published
    said = span(*used)
    return said if said == published else f"{said} (published: {published})"


def _range(found: list[Any] | None) -> str:
    if not found:
        return "no published figure"
    least, most, unit = found
    if least is None or most is None or least == most:
        return span(most if most is not None else least, unit)
    return f"{least:g} to {most:g} {unit}"


def added(lines: Sequence[str]) -> list[str]:
    """The household's own foods and rules."""
    return listed(lines, "Nothing of your own yet: see `pantry-tui add-food --help`.")
