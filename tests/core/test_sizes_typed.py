"""Sizes as people type them: understood, or named; no log of any kind breaks on one."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.amounts import MOST
from pantry_tui.core.keeping.thawing import thaw_days
from pantry_tui.core.vessels import contents_of, vessel_of, wrong_size
from pantry_tui.core.words import Method

WRONG = (
    "9" * 400 + " pint jars", "-3 pint", "- 3 pint", "−3 pint", "0 pint", "0.0 l", "0/4 pint",
    "nan pint", "inf l", "1e400 pint", "1e3 ml", "1/0 pint", "1 1/0 pint", "1,5 l", "1,000 ml",
    "2000000 ml", "box of 99999999999", "jars of " + "x" * 100,
)  # fmt: skip
RIGHT = (
    "", "pint", "half-pint jars", "1 1/2 pint jars", "½ pint", "500 ml", "12-oz jars", "500ml",
    "40 lb crates", "box of 12", "heads", "1.5 l bottle", "quart jars", "#10 can", "10 x 8 tin",
    "2-quart crock", "jars of a dozen", "infused pint jars",
)  # fmt: skip


@pytest.mark.parametrize("size", WRONG)
def test_a_figure_no_vessel_has_is_named(size: str) -> None:
    assert wrong_size(size).endswith(".")
    assert len(wrong_size(size)) < 200


@pytest.mark.parametrize("size", RIGHT)
def test_what_people_write_is_let_be(size: str) -> None:
    assert wrong_size(size) == ""


@given(
    st.one_of(
        st.sampled_from(WRONG), st.text(max_size=80),
        st.from_regex(r"-?\d{1,400}([ .,/]\d{1,9}){0,2} ?(pint|lb|l|of \d{1,9})? ?(jars)?"),
    )
)  # fmt: skip
def test_any_size_holds_something_bounded_or_nobody_knows_what(size: str) -> None:
    held = contents_of(size)
    assert held is None or 0 < held.number <= MOST
    assert thaw_days(size, None) >= 1
    for method in Method:
        vessel_of(method, size, held.unit if held else None)
