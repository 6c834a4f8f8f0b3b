"""Notes that a process ended before its time: the weight came off, the timer rang. More time than
is published, by intent, is no less."""

from __future__ import annotations

from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import quoted, tried_each

CHICKEN = "3 pint jars chicken, pressure canned, larder, minutes=75 psi=11 canner=dial"
BEANS = "3 pint jars green beans, pressure canned, larder, minutes=20 psi=11 canner=dial"
JAM = "3 half-pint jars strawberry jam, jam, larder, minutes=10"


def test_a_process_that_ended_early_is_held_against_it(chilled: Pantry) -> None:
    short = ("took the weight off at 60 min", "weight off at 60", "stopped at 60 to be safe",
             "timer rang at 60", "gave up at 60 min", "timer went off at 60 min")  # fmt: skip
    assert quoted(tried_each(chilled, CHICKEN, short)) == set(short)
    short = ("timer rang at 15, close enough", "timer beeped after 15 min", "off at 15 in case")
    assert quoted(tried_each(chilled, BEANS, short)) == set(short)
    assert quoted(tried_each(chilled, JAM, ("timer rang at 5",))) == {"timer rang at 5"}


def test_more_time_by_intent_and_the_time_itself_raise_nothing(chilled: Pantry) -> None:
    well = ("stopped at 25 min to be safe", "25 minutes to be sure", "timer rang at 20",
            "took the weight off at 20 min", "off at 25 in case",
            "25 min for good measure", "weight 3 lb in all")  # fmt: skip
    assert quoted(tried_each(chilled, BEANS, well)) == set()
