"""What a household should eat first: open before closed, what falls due first, oldest first."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from typing import NamedTuple

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.keeping.fitness import UNFIT, usable
from pantry_tui.core.keeping.ladder import Judgement
from pantry_tui.core.keeping.rotation import first_date, order_key
from pantry_tui.core.model import Batch, Container, FoodFacts
from pantry_tui.core.words import Acidity, Group, Method, State, Verdict

DAY = date(2026, 11, 25)
PEAS = FoodFacts("peas", Group.VEGETABLE, Acidity.LOW_ACID)


class Jar(NamedTuple):
    """One container, and what the judge says of it; days count from `DAY`."""

    name: str
    best: int | None = 300
    last: int | None = None
    state: State = State.SEALED
    verdict: Verdict = Verdict.SOUND
    fit: bool = True
    made: int | None = -100
    code: str = "2A"
    number: int = 1

    def key(self) -> tuple[object, ...]:
        def day(n: int | None) -> date | None:
            return None if n is None else DAY + timedelta(days=n)

        batch = Batch("b", self.code, PEAS, Method.FROZEN, day(self.made))
        box = Container("b.1", "b", self.number, self.state, "freezer", ())
        judged = Judgement(self.verdict, day(self.best), day(self.last), (), (), usable=self.fit)
        return order_key(batch, box, judged)


def first(*jars: Jar) -> list[str]:
    return [jar.name for jar in sorted(jars, key=Jar.key)]


#: The one to eat first, and the one that waits for it.
PAIRS = [
    ("open before closed, though the closed one falls due sooner",
     Jar("open", best=50, state=State.OPEN), Jar("closed", best=3)),
    ("thawed before frozen", Jar("thawed", best=50, state=State.THAWED), Jar("frozen", best=3)),
    ("still in progress is not begun",
     Jar("closed", best=3), Jar("in progress", best=4, state=State.IN_PROGRESS)),
    ("of two that are open the one that falls due first",
     Jar("soon", best=2, state=State.OPEN), Jar("later", best=3, state=State.OPEN)),
    ("what falls due first, though it is younger",
     Jar("young", best=20, made=-1), Jar("old", best=30, made=-90)),
    ("past its best before what is not", Jar("past", best=-4), Jar("good", best=4)),
    ("the date it must be discarded after counts like the date of its quality",
     Jar("milk", best=30, last=2), Jar("jam", best=3)),
    ("with one date only, that one", Jar("lasagne", best=None, last=2), Jar("jam", best=3)),
    ("what has no date waits for what has one",
     Jar("dated", best=9000), Jar("undated", best=None, verdict=Verdict.SOUND)),
    ("of the same date the older batch", Jar("old", made=-90), Jar("young", made=-1)),
    ("nobody knows how old: older than any", Jar("unknown", made=None), Jar("old", made=-9000)),
    ("of the same day the lower code", Jar("2A", code="2A"), Jar("3A", code="3A")),
    ("of one batch the lower number", Jar("1", number=1), Jar("2", number=2)),
    ("what is known before what nobody knows, though that is open",
     Jar("known"), Jar("unknown", best=1, state=State.OPEN, verdict=Verdict.UNKNOWN)),
    ("what nobody knows and cannot hurt before what may not be eaten",
     Jar("harmless", best=None, verdict=Verdict.UNKNOWN),
     Jar("in progress", best=1, state=State.OPEN, fit=False)),
    ("what may not be eaten yet before what never will",
     Jar("in progress", best=None, fit=False, verdict=Verdict.NEEDS_CARE),
     Jar("off", best=1, state=State.OPEN, fit=False, verdict=Verdict.DISCARD)),
    ("unknown and not usable before what must be discarded",
     Jar("unknown", best=None, fit=False, verdict=Verdict.UNKNOWN),
     Jar("poison", best=1, state=State.OPEN, fit=False, verdict=Verdict.DO_NOT_TASTE)),
]  # fmt: skip


@pytest.mark.parametrize(("before", "after"), [p[1:] for p in PAIRS], ids=[p[0] for p in PAIRS])
def test_which_is_eaten_first(before: Jar, after: Jar) -> None:
    assert first(after, before) == [before.name, after.name]
    assert before.key() < after.key()


jars = st.builds(
    Jar,
    st.just("jar"),
    st.none() | st.integers(-5, 5),
    st.none() | st.integers(-5, 5),
    st.sampled_from([State.SEALED, State.OPEN, State.THAWED]),
    st.sampled_from([Verdict.SOUND, Verdict.EAT_SOON, Verdict.PAST_BEST]),
    st.just(True),
    st.none() | st.integers(-9, 0),
    st.sampled_from(["2A", "3A"]),
    st.integers(1, 3),
)


@given(jars, jars)
def test_of_what_may_be_eaten_no_closed_jar_comes_before_an_open_one(one: Jar, two: Jar) -> None:
    begun = (State.OPEN, State.THAWED)
    if (one.state in begun) and (two.state not in begun):
        assert one.key() < two.key()


@given(jars, st.integers(1, 9))
def test_the_older_of_two_alike_comes_first(jar: Jar, days: int) -> None:
    if jar.made is not None:
        assert jar._replace(made=jar.made - days).key() < jar.key()
        assert jar._replace(made=None).key() < jar.key()


def test_the_first_of_both_dates() -> None:
    judged = Judgement(Verdict.SOUND, DAY, DAY + timedelta(days=1), (), (), usable=True)
    assert first_date(judged) == DAY
    assert first_date(replace(judged, best_by=None)) == DAY + timedelta(days=1)
    assert first_date(replace(judged, best_by=None, discard_after=None)) == date.max


@pytest.mark.parametrize("harmless", [True, False])
@pytest.mark.parametrize("verdict", list(Verdict))
def test_what_is_offered_at_table(verdict: Verdict, harmless: bool) -> None:
    """What is good; what nobody knows or wants a hand, only where it cannot hurt; never what is
    still in progress, nor what must be thrown away."""
    good = verdict in (Verdict.SOUND, Verdict.EAT_SOON, Verdict.PAST_BEST)
    open_ = verdict in (Verdict.UNKNOWN, Verdict.NEEDS_CARE)
    assert usable(verdict, harmless, in_progress=False) is (good or (open_ and harmless))
    assert usable(verdict, harmless, in_progress=True) is False
    assert (verdict in UNFIT) is not (good or open_)
