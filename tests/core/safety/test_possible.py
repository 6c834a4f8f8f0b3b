"""How warm what ferments, dries, smokes or is frozen can be at all; the lines are our own, wide
enough for any published practice."""

from __future__ import annotations

import pytest

from pantry_tui.core.safety.possible import impossible, with_degrees
from pantry_tui.core.words import Method

M = Method
FERMENTING = (M.LACTIC, M.PASTE, M.VINEGAR_FERMENT, M.ALCOHOL_FERMENT)
#: Method -> from where to where, °F, what it is called, what may be written instead.
LINES = {
    **dict.fromkeys(FERMENTING, (28, 212, "fermenting", "temperature=70F")),
    M.SALTED: (28, 212, "salted", "temperature=70F"),
    M.FROZEN: (-120, 0, "frozen", "temperature=0F"),
    M.FREEZER_JAM: (-120, 0, "frozen", "temperature=0F"),
    M.CELLAR: (20, 120, "stored", "temperature=38F"),
    M.FRESH: (20, 120, "fresh", "temperature=38F"),
    M.DRIED: (28, 350, "dried", "temperature=140F"),
    M.HOT_SMOKED: (28, 450, "hot smoked", "temperature=165F"),
    M.COLD_SMOKED: (28, 450, "cold smoked", "temperature=165F"),
}


@pytest.mark.parametrize("method", LINES)
def test_it_can_be_so_warm_and_no_warmer_or_colder(method: Method) -> None:
    low, high, what, hint = LINES[method]
    for fine in (low, high):
        assert impossible(method, [("temperature", f"{fine}F")]) == ()
    for typed in (f"{low - 1}F", f"{high + 1}F", f"{low} to {high + 1}F"):
        (said,) = impossible(method, [("ph", "4"), ("temperature", typed)])
        assert said.startswith(f"temperature={typed} of what is {what} cannot be: ")
        assert hint in said


def test_a_freezer_that_is_warmer_is_a_reading_of_its_place() -> None:
    (said,) = impossible(M.FROZEN, [("temperature", "50F")])
    assert said.endswith("a warmer one is a reading of its place.")


@pytest.mark.parametrize("method", [None, *(one for one in Method if one not in LINES)])
def test_where_no_line_is_drawn_any_warmth_can_be(method: Method | None) -> None:
    assert impossible(method, [("temperature", "999F")]) == ()


def test_what_says_no_degrees_cannot_be_wrong() -> None:
    for pairs in ([], [("temperature", "unknown")], [("ph", "300")], [("minutes", "999")]):
        assert impossible(M.LACTIC, pairs) == ()


def test_a_long_value_is_said_in_part() -> None:
    (said,) = impossible(M.LACTIC, [("temperature", "300F " + "x" * 99)])
    assert said.startswith(f"temperature=300F {'x' * 35} of")


@pytest.mark.parametrize(
    ("key", "typed", "meant"),
    [
        ("temperature", "20", "20 C"), ("temperature", " 20 ", "20 C"),
        ("temperature", "20-22", "20-22 C"), ("temperature", "twenty", "twenty C"),
        ("temperature", "fifteen", "fifteen C"), ("temperature", "68F", "68F"),
        ("temperature", "68 f", "68 f"), ("temperature", "20C", "20C"),
        ("temperature", "20 °c", "20 °c"), ("temperature", "unknown", "unknown"),
        ("altitude", "1500", "1500m"), ("altitude", " 1,500 ", "1,500m"),
        ("altitude", "1500ft", "1500ft"), ("altitude", "unknown", "unknown"),
        ("minutes", "20", "20"), ("psi", "11", "11"),
    ],
)  # fmt: skip
def test_a_number_without_its_unit_is_in_that_of_the_household(
    key: str, typed: str, meant: str
) -> None:
    assert with_degrees([("by", "us"), (key, typed)], "C") == (("by", "us"), (key, meant))
    feet = meant.removesuffix("m") + "ft" if key == "altitude" and meant[-1] == "m" else typed
    assert with_degrees([(key, typed)], "F") == ((key, feet),)


@pytest.mark.parametrize("method", [M.PRESSURE, M.BOILING_WATER, M.JAM, M.VINEGAR_PICKLE])
def test_no_canner_runs_longer_than_any_published_process(method: Method) -> None:
    for fine in ("300", "5h", "160 min"):
        assert not impossible(method, [("minutes", fine)]), fine
    for long in ("301", "15h", "20h", "900 min", "25-900"):
        (said,) = impossible(method, [("minutes", long)])
        assert said.startswith(f"minutes={long} ")
        assert "more than 300 minutes" in said


@pytest.mark.parametrize("method", [M.DRIED, M.HOT_SMOKED])
def test_what_dries_or_smokes_may_take_all_day(method: Method) -> None:
    assert not impossible(method, [("minutes", "20h")])
