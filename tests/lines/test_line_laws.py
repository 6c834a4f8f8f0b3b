"""Laws of the put-up line: a reading that is rendered reads the same, and no line is too long."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.services.batchwork.line import read_line
from tests.lines.corpus import cases, kitchen
from tests.lines.say_line import say_line

CLEAR = [
    (case.kitchen, case.line)
    for case in cases()
    if not (read := read_line(case.line, kitchen(case.kitchen))[0]).asks
    and read.food
    and read.method is not None
]


@pytest.mark.parametrize(("kind", "line"), CLEAR, ids=[line for _, line in CLEAR])
def test_a_reading_as_a_line_reads_the_same(kind: str, line: str) -> None:
    # A month is typed again as its first day, and is said as that.
    read = replace(read_line(line, kitchen(kind))[0], unread=(), problems=(), made_in="")
    again = read_line(say_line(read), kitchen(kind))[0]
    assert replace(again, problems=()) == read


@given(st.sampled_from(CLEAR), st.randoms(use_true_random=False))
def test_the_order_of_the_parts_does_not_matter(case: tuple[str, str], random: object) -> None:
    kind, line = case
    read = replace(read_line(line, kitchen(kind))[0], unread=(), problems=())
    first, *rest = say_line(replace(read, note="")).split(", ")
    random.shuffle(rest)  # type: ignore[attr-defined]
    again = read_line(", ".join((*rest, first)), kitchen(kind))[0]
    assert (again.food, again.method, again.count, again.size, again.place, again.made) == (
        read.food, read.method, read.count, read.size, read.place, read.made
    )  # fmt: skip


LONG = ["x" * 40_000, "a-" * 20_000, "1 1/2 " * 8_000, "7 pint jars " * 4_000, "=" * 40_000,
        "½" * 40_000, "1/2/" * 10_000, "beans " * 7_000]  # fmt: skip


@pytest.mark.parametrize("text", LONG, ids=[text[:12] for text in LONG])
def test_a_long_line_is_named_as_too_long_and_costs_no_more_than_its_length(text: str) -> None:
    found, _ = read_line(text, kitchen("us"))
    assert found.unread
    assert found.problems


@given(st.text(max_size=300))
def test_no_text_breaks_it(text: str) -> None:
    for kind in ("us", "me"):
        read_line(text, kitchen(kind))


@pytest.mark.parametrize(
    "line",
    ["7 pint jars snap beans, pressure canned, frobnicated, shelf 1",
     "6 bags peas, freezer, from the far field"],
)  # fmt: skip
def test_what_is_not_understood_is_named(line: str) -> None:
    assert read_line(line, kitchen("us"))[0].unread
