"""Words as they are shown."""

from __future__ import annotations

import pytest

from pantry_tui.core.text import begun


@pytest.mark.parametrize(
    ("typed", "shown"),
    [
        ("put up 3 of 2A beans", "Put up 3 of 2A beans"), ("discarded 9H/1", "Discarded 9H/1"),
        ("", ""), ("2A", "2A"), ("power cut (40 F)", "Power cut (40 F)"), ("Anna's", "Anna's"),
    ],
)  # fmt: skip
def test_a_sentence_begins_large_and_goes_on_as_it_is(typed: str, shown: str) -> None:
    assert begun(typed) == shown
