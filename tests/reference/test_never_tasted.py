"""No text on what is still at work sends anybody to taste whether it is ready: that is the one way
to find out which every screen forbids."""

from __future__ import annotations

import csv
import re
from pathlib import Path

import pytest

DATA = Path(__file__).parents[2] / "data"
TASTES = re.compile(r"(?<!not )(?<!never )\btast(?:e|ed|ing)\b", re.IGNORECASE)
#: Made of spirits, in which nothing that hurts grows.
SAFE = {"alcohol infusion"}


def at_work() -> list[tuple[str, str]]:
    rules = [
        (row["rule_id"], row["wording"])
        for row in csv.DictReader((DATA / "keeping.csv").open(encoding="utf-8"))
        if row["state"] == "working"
    ]
    jobs = [
        (f"{row['job']}, {row['methods']}", row["how"])
        for row in csv.DictReader((DATA / "tending.csv").open(encoding="utf-8"))
        if row["state"] == "in progress" and row["methods"] not in SAFE
    ]
    return rules + jobs


@pytest.mark.parametrize(("row", "says"), at_work())
def test_what_is_at_work_is_not_judged_by_its_taste(row: str, says: str) -> None:
    assert not TASTES.search(says), row


@pytest.mark.parametrize(
    ("says", "found"),
    [("go by smell and taste", True), ("taste until sharp", True), ("is not tasted", False),
     ("never taste it", False), ("tasty jars", False)],
)  # fmt: skip
def test_the_words_that_are_looked_for(says: str, found: bool) -> None:
    assert bool(TASTES.search(says)) is found
