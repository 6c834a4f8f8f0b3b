"""Four people at one store at once; `python -m tests.faults.together` is the same at full size."""

from __future__ import annotations

from pathlib import Path

from tests.faults.together import evening, faults


def test_what_several_people_were_told_is_true_of_the_store(tmp_path: Path) -> None:
    found = evening(tmp_path, people=4, acts=40)
    assert faults(found) == []
