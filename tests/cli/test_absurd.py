"""A count that is most likely a slip is a question of the command, and booked with --more."""

from __future__ import annotations

import json

from tests.cli.conftest import Kitchen

MANY = "620 jars plum jam, shelf 2, today"


def test_a_count_that_is_a_slip_is_asked_about_and_booked_with_more(kitchen: Kitchen) -> None:
    before = kitchen.booked()
    code, out, err = kitchen.run("putup", MANY)
    assert (code, out) == (2, "")
    assert "620 jars plum jam at once are a lot for one household" in err
    assert "--more" in err
    code, out, _ = kitchen.run("putup", MANY, "--json")
    asked = json.loads(out)
    assert code == 2
    assert [(one["about"], one["typed"]) for one in asked["asks"]] == [("count", "620")]
    assert asked["read_as"]["count"] == 620
    assert kitchen.booked() == before, "nothing was"
    assert len(kitchen.answer("putup", MANY, "--more")["containers"]) == 620


def test_a_dry_run_asks_nothing(kitchen: Kitchen) -> None:
    assert kitchen.answer("putup", MANY, "--dry-run")["read_as"]["count"] == 620
