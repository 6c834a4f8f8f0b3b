"""The program is never more lenient than the second evaluator, over thousands of histories."""

from __future__ import annotations

from datetime import date, timedelta

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from pantry_tui.core.keeping.exposure import stretches
from pantry_tui.core.keeping.limits import Judgement, judge
from pantry_tui.core.keeping.rotation import UNFIT
from pantry_tui.core.model import Batch, Container, Place, Spell, Stay
from pantry_tui.core.words import ASSUMED_F, Climate, Method, State, Verdict
from pantry_tui.reference.tables import load_tables
from tests.core.keeping.second import Answer, Day, evaluate

MADE = date(2026, 3, 1)
CASES = [
    ("garlic", Method.IN_OIL), ("pesto", Method.IN_OIL), ("basil", Method.IN_OIL),
    ("salmon", Method.HOT_SMOKED), ("salmon", Method.COLD_SMOKED), ("beef", Method.HOT_SMOKED),
    ("salmon", Method.FROZEN), ("ground beef", Method.FROZEN), ("peas", Method.FROZEN),
    ("strawberries", Method.FROZEN), ("chickens", Method.FROZEN), ("bread", Method.FROZEN),
    ("runner beans", Method.PRESSURE), ("beef", Method.PRESSURE),
    ("peaches", Method.BOILING_WATER), ("crushed tomatoes", Method.BOILING_WATER),
    ("strawberry jam", Method.JAM), ("strawberry jam", Method.FREEZER_JAM),
    ("jerky", Method.DRIED), ("lasagne", Method.MEAL), ("chicken soup", Method.MEAL),
    ("eggs", Method.FRESH), ("ground beef", Method.FRESH), ("butter", Method.FRESH),
    ("dill pickles", Method.FRIDGE_PICKLE), ("dill pickles", Method.VINEGAR_PICKLE),
    ("sauerkraut", Method.LACTIC), ("kimchi", Method.LACTIC), ("bacon", Method.SALTED),
    ("country hams", Method.SALTED), ("herb vinegar", Method.FLAVOURED_VINEGAR),
    ("vanilla extract", Method.INFUSION), ("maple syrup", Method.SUGAR), ("lard",
    Method.RENDERED_FAT), ("eggs", Method.LIME), ("cider", Method.ALCOHOL_FERMENT),
]  # fmt: skip

WARMTHS = {
    Climate.ROOM: [60.0, 70.0, 85.0, 100.0],
    Climate.PANTRY: [40.0, 60.0, 70.0],
    Climate.CELLAR: [30.0, 36.0, 45.0],
    Climate.FRIDGE: [34.0, 38.0, 39.0, 45.0, 50.0],
    Climate.FREEZER: [-10.0, 0.0, 10.0, 20.0],
}
STEPS = st.lists(
    st.one_of(
        st.tuples(st.just("move"), st.integers(0, 90), st.sampled_from(list(Climate))),
        st.tuples(st.just("open"), st.integers(0, 90), st.none()),
        st.tuples(st.just("thaw"), st.integers(0, 60), st.sampled_from(["", "microwave"])),
        st.tuples(st.just("read"), st.integers(0, 40), st.integers(0, 4)),
    ),
    max_size=6,
)


class History:
    """A container's life as the program keeps it: stays, and places with their spells."""

    def __init__(self, climate: Climate, steps: list[tuple[str, int, object]]) -> None:
        self.places = {
            c.value: Place(c.value, c.value, c, spells=(Spell(date.min, c, ASSUMED_F[c]),))
            for c in Climate
        }
        self.stays = [Stay(MADE, climate.value, climate, State.SEALED, ASSUMED_F[climate])]
        self.last = MADE
        for what, gap, detail in steps:
            self.step(what, gap, detail)

    def step(self, what: str, gap: int, detail: object) -> None:
        self.last += timedelta(days=gap)
        now = self.stays[-1]
        if what == "read":
            assert isinstance(detail, int)
            place = self.places[now.place]
            warm = WARMTHS[place.climate][detail % len(WARMTHS[place.climate])]
            spells = (*place.spells, Spell(self.last, place.climate, warm, True))
            self.places[now.place] = Place(place.id, place.name, place.climate, spells=spells)
            return
        climate, state, thawed = now.climate, now.state, now.thawed
        if what == "move":
            assert isinstance(detail, Climate)
            leaves = climate is Climate.FREEZER and detail is not Climate.FREEZER
            state = State.THAWED if leaves and state is State.SEALED else state
            climate = detail
        elif what == "open":
            state, thawed = State.OPEN, ""
        elif climate is Climate.FREEZER:
            state, climate, thawed = State.THAWED, Climate.FRIDGE, str(detail)
        self.stays.append(
            Stay(self.last, climate.value, climate, state, ASSUMED_F[climate], thawed=thawed)
        )

    def judged(self, batch: Batch, today: date) -> Judgement:
        stays = stretches(tuple(self.stays), self.places)
        box = Container("b.1", "b", 1, stays[-1].state, "", stays)
        return judge(batch, box, load_tables().book, today)

    def days(self, today: date) -> list[Day]:
        """Day by day; where it only passed through within a day, that is said."""
        found: list[Day] = []
        for index, stay in enumerate(self.stays):
            final = index + 1 == len(self.stays)
            until = today + timedelta(days=1) if final else self.stays[index + 1].since
            lasted = max(1, (until - stay.since).days)
            passing = not final and until == stay.since
            for number in range(lasted):
                found.append(self._day(stay, stay.since + timedelta(days=number), passing))
        return found

    def _day(self, stay: Stay, on: date, passing: bool) -> Day:
        spells = [spell for spell in self.places[stay.place].spells if spell.since <= on]
        warm = spells[-1].temperature_f
        return Day(on, stay.climate.value, stay.state.value, warm, stay.thawed, passing)


def batch_of(food: str, method: Method) -> Batch:
    facts = load_tables().facts(food)
    assert facts is not None, food
    return Batch("b", "2A", facts, method, MADE)


def second(batch: Batch, history: History, today: date) -> Answer:
    rules = load_tables().rules[batch.method]
    return evaluate(batch.food, batch.method.value, list(rules), history.days(today))


@settings(max_examples=5000, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(
    case=st.sampled_from(CASES),
    climate=st.sampled_from(list(Climate)),
    steps=STEPS,
    after=st.integers(0, 500),
)
def test_never_more_lenient_than_the_second_evaluator(
    case: tuple[str, Method], climate: Climate, steps: list[tuple[str, int, object]], after: int
) -> None:
    batch, history = batch_of(*case), History(climate, steps)
    today = max(history.last, MADE + timedelta(days=after))
    judged, answer = history.judged(batch, today), second(batch, history, today)
    if answer.last_safe is not None:
        assert judged.discard_after is not None
        assert judged.discard_after <= answer.last_safe
        if today > answer.last_safe:
            assert judged.verdict in UNFIT
    if not answer.covered:
        assert judged.verdict in (*UNFIT, Verdict.UNKNOWN)
    if answer.spent_on is not None and answer.spent_on < today:
        assert judged.verdict not in (Verdict.SOUND, Verdict.EAT_SOON) or (
            judged.best_by is not None and judged.best_by <= answer.spent_on
        )


@settings(max_examples=1000, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(
    case=st.sampled_from(CASES),
    climate=st.sampled_from(list(Climate)),
    steps=STEPS,
    extra=STEPS.filter(bool),
    after=st.integers(0, 300),
)
def test_no_event_moves_discard_after_later(
    case: tuple[str, Method],
    climate: Climate,
    steps: list[tuple[str, int, object]],
    extra: list[tuple[str, int, object]],
    after: int,
) -> None:
    batch, history = batch_of(*case), History(climate, steps)
    before = history.judged(batch, history.last).discard_after
    for what, gap, detail in extra:
        history.step(what, gap, detail)
        judged = history.judged(batch, history.last + timedelta(days=after))
        if before is not None:
            assert judged.discard_after is not None
            assert judged.discard_after <= before
        before = judged.discard_after or before
