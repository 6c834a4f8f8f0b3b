"""Random keys fall over nothing and book nothing that cannot be taken back (tests/long/keys.py has
20,000 of them)."""

from __future__ import annotations

from tests.long.keys import hold


def test_random_keys_book_nothing_that_cannot_be_taken_back() -> None:
    assert hold(7, 120) == ""
