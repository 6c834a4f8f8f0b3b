"""A few cuts; `python -m tests.faults.power` is every page."""

from __future__ import annotations

from pathlib import Path

from tests.faults.power import cut_journals, full_disks


def test_a_journal_that_is_cut_off_is_said_or_harmless(tmp_path: Path) -> None:
    tried, ended, wrong = cut_journals(tmp_path, every=10)
    assert wrong == []
    assert tried >= 6
    assert ended["said"], "on a disk that lies something is hurt"


def test_a_full_disk_refuses_and_loses_nothing(tmp_path: Path) -> None:
    tried, wrong = full_disks(tmp_path)
    assert wrong == []
    assert tried > 100
