"""The corpus: at least 95 % read whole or asked as they should be, and none wrong."""

from __future__ import annotations

import pytest

from tests.lines.corpus import Case, asked_as_it_should, cases, wrong


@pytest.mark.parametrize("case", cases(), ids=lambda case: case.line)
def test_nothing_is_read_cleanly_and_wrongly(case: Case) -> None:
    assert wrong(case) == []


def test_at_least_95_in_100_are_read_whole_or_asked_as_they_should_be() -> None:
    missed = [case.line for case in cases() if wrong(case) or not asked_as_it_should(case)]
    assert len(cases()) >= 400
    assert len(missed) <= 0.05 * len(cases()), missed


@pytest.mark.parametrize("kitchen", ["us", "uk", "au", "me"])
def test_every_kitchen_has_its_lines(kitchen: str) -> None:
    assert sum(case.kitchen == kitchen for case in cases()) >= 40
