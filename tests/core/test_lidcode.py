"""What is written on a lid: short, never twice, and hard to misread."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.lidcode import code_at, normal_code, number_of

SHORT, THREE = 7 * 16, 7 * 16 * 7


def test_the_first_codes_are_said_in_two() -> None:
    assert [code_at(n) for n in (0, 1, 6, 7, 8)] == ["2A", "3A", "9A", "2C", "3C"]
    assert code_at(SHORT - 1) == "9Y"
    assert code_at(SHORT) == "2A2"
    assert code_at(SHORT + THREE - 1) == "9Y9"
    assert code_at(SHORT + THREE) == "2A2A"


def test_no_code_comes_twice() -> None:
    many = [code_at(n) for n in range(3000)]
    assert len(set(many)) == len(many)
    assert [len(one) for one in many] == sorted(len(one) for one in many)


@given(st.integers(0, 10**7))
def test_a_code_begins_with_a_digit_and_has_nothing_that_looks_like_another(number: int) -> None:
    code = code_at(number)
    assert code[0].isdigit()
    assert not set(code) & set("018BGIOLQSUVZ")
    assert all(one.isdigit() == (n % 2 == 0) for n, one in enumerate(code))
    assert normal_code(f" {code.lower()} ") == code


def test_a_code_is_found_however_it_is_typed() -> None:
    assert normal_code("2a 7\tc") == "2A7C"


@pytest.mark.parametrize("number", [0, 1, 6, 7, 111, 112, 113, 783, 784, 895, 896, 13_439, 13_440])
def test_the_number_of_a_code_is_the_one_it_was_made_of(number: int) -> None:
    assert number_of(code_at(number)) == number


@pytest.mark.parametrize("text", ["", "2", "A2", "2B", "2a"])
def test_what_is_no_code_has_no_number(text: str) -> None:
    with pytest.raises(ValueError, match="no lid code"):
        number_of(text)
