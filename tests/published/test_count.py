"""How many published figures the program is held to, by kind. A table's cell is one figure, however
many packs and jars it is printed for; the same line under two publications is one."""

from __future__ import annotations

import pytest

from tests.published import (
    test_calc,
    test_keeping,
    test_outage,
    test_planning,
    test_process,
    test_signs,
    test_stricter,
    test_yields,
)
from tests.published.limits import REFUSED, TYPED


def figures() -> dict[str, int]:
    """Kind -> how many, without what is checked twice."""
    limits = {line[1:] for line in test_keeping.lines(TYPED)}
    refusals = {line[1:] for line in test_keeping.lines(REFUSED.items())}
    processes = {
        (band.food, band.canner, band.low, band.high, pair, band.jar if band.jar == "quart" else "")
        for band in test_process.BANDS
        for pair in band.pairs
    }
    never_canned = {food for foods in test_process.REFUSED.values() for food in foods}
    return {
        "keeping limits": len(limits),
        "places refused": len(refusals),
        "stricter views": len({line[1:] for line in test_stricter.LINES}),
        "canning processes": len(processes),
        "not published or recalled": len(test_process.NOT_PUBLISHED) + len(test_process.RECALLED),
        "never canned": len(never_canned),
        "power cuts": len({line[1:] for line in test_outage.lines()})
        + len(set(test_outage.named())),
        "signs": len({line[1:] for line in test_signs.LINES}),
        "yields": len(test_yields.USDA) + len(test_yields.MSU) + 2 * len(test_yields.FROZEN_RANGE),
        "arithmetic": len({row[1:] for row in test_calc.ROWS}),
        "planning": len(test_planning.ROWS) + len(test_planning.FAMILIES),
    }


def test_the_figures_are_many_and_of_every_kind(capsys: pytest.CaptureFixture[str]) -> None:
    found = figures()
    with capsys.disabled():
        print("\npublished figures:", sum(found.values()), found)
    assert sum(found.values()) >= 800
    assert found["keeping limits"] >= 450
    assert found["canning processes"] >= 400
    assert min(found.values()) >= 30
