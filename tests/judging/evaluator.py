"""The bound: what a program may say at most of one container, from the facts alone.

The strictest order that the facts allow counts: a fact whose hour nobody knows is tried at every
hour of its day that could matter, and the strictest outcome stands (house law 7.1).

Choices where the laws leave freedom, each the laxer one:
- A limit passed in the middle of a day still counts that day as its last; from that minute on the
  food is not usable.
- Up to two hours in all where a food is refused, or where no rule speaks, charge the clock alone.
- In a climate that food came to from a colder one the published days begin on its arrival.
- In a place at 40.1 to 41 F, freezer or fridge, no clock runs; the British day counts hold.
- Raw crops and dry, sugared, sour or spirit food have no clock on a shelf.
- Food that a shelf is published for is not perishable, wherever it stands.
- A freezer holds everything that is not refused there, with no end of its own.
- Above 90 F a minute counts twice: one hour instead of two (USDA FSIS, freezing and food safety).
- A fridge without power is over at 4 h for what stood in it all that time (HR60); what came later
  has its two hours.
- Of two moves on one and the same minute either may have been the last, but for one that was booked
  as it happened: that came after all that had been booked before it.
- Of a thaw no more is asked than the day for each 5 lb and the days after it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import reduce

from tests.judging import hazards, papers
from tests.judging.counting import lives_found
from tests.judging.descent import of_parts, put_up_of, used_before
from tests.judging.orders import about, orders
from tests.judging.places import COLD_F
from tests.judging.ruling import Ruling
from tests.judging.timeline import Life, Span, merged, warmer_or_as_warm
from tests.judging.world import (
    COLD_TO_WARM,
    DAY,
    CorrectedMade,
    Fact,
    History,
    LooksSound,
    Moved,
    PutUp,
    SignSeen,
    Thawed,
    day_of,
    in_force,
)

TWO_HOURS = 120


def judge(history: History, container: str) -> Ruling:
    """The bound for one container on the minute that the history asks about."""
    return judge_facts(in_force(history), container, history.now)


def judge_facts(told: Sequence[Fact], container: str, now: int) -> Ruling:
    """The same of facts that no undo has taken back."""
    batch = put_up_of(told, container)
    if batch is None:
        return Ruling(None, False, "never put up")
    found = lives_found(told, batch, container, now)
    if found:
        return reduce(Ruling.stricter, (judge_facts(one, container, now) for one in found))
    worst = of_parts(told, batch, container, now, judge_facts)
    used = used_before(told, batch, now, warm_minutes)
    facts = about(told, batch, container)
    for at in orders(facts, batch, container, now):
        worst = worst.stricter(_one_order(facts, batch, container, at, now, used))
    return worst


def warm_minutes(told: Sequence[Fact], container: str, now: int) -> int:
    """The minutes above 40 F that it has had by then of its two hours; lax: at their fewest."""
    batch = put_up_of(told, container)
    assert batch is not None
    assert isinstance(batch.what, PutUp)
    facts, found = about(told, batch, container), []
    for at in orders(facts, batch, container, now):
        made = min(_made(facts, batch, at), day_of(now))
        life = Life(facts, batch, made, _born(batch, made, at, now), at, container, now)
        found.append(sum(m for s in merged(life.spans) for m in [_charged(batch.what, s)]))
    return min(found)


def _charged(p: PutUp, s: Span) -> int:
    if _allowed_warm(p, s) != TWO_HOURS or s.temp_f <= COLD_F:
        return 0
    return (s.end - s.start) * (2 if s.temp_f > 90 else 1)


def _one_order(
    facts: Sequence[Fact], batch: Fact, container: str, at: dict[str, int], now: int, used: int
) -> Ruling:
    p = batch.what
    assert isinstance(p, PutUp)
    made = min(_made(facts, batch, at), day_of(now))
    born = _born(batch, made, at, now)
    life = Life(facts, batch, made, born, at, container, now)
    ruling = _of_life(life, p, facts, container, at, used)
    if life.tied:
        life = Life(facts, batch, made, born, at, container, now, turned=True)
        ruling = ruling.laxer(_of_life(life, p, facts, container, at, used))
    return ruling


def _of_life(
    life: Life, p: PutUp, facts: Sequence[Fact], container: str, at: dict[str, int], used: int
) -> Ruling:
    found = [*_limits(life, p), *_clocks(life, p, used), *_whole(life, p, facts, container, at)]
    ruling = Ruling(None, True, "nothing speaks against it")
    for r in found:
        ruling = ruling.stricter(r)
    last = ruling.discard_after
    if last is not None and ruling.usable and day_of(life.now) > last:
        ruling = Ruling(ruling.discard_after, False, f"{ruling.reason}: its last day is over")
    return ruling


def _made(facts: Sequence[Fact], batch: Fact, at: dict[str, int]) -> int:
    """The day made as last put right."""
    p = batch.what
    assert isinstance(p, PutUp)
    put_right = [
        (f.booked, f.what.day)
        for f in facts
        if isinstance(f.what, CorrectedMade) and f.what.batch == p.batch
    ]
    return max(put_right)[1] if put_right else batch.day


def _born(batch: Fact, made: int, at: dict[str, int], now: int) -> int:
    """Since when it stands there; lax: a day that was put right counts from its last minute."""
    if made == batch.day:
        return min(at[batch.id], now)
    return min(made * DAY + DAY - 1, now)


def _until(day: int, why: str) -> Ruling:
    return Ruling(day, True, why)


def _limits(life: Life, p: PutUp) -> Iterator[Ruling]:
    """Every published limit that any span of its life started; none of them ever goes away."""
    for i, s in enumerate(life.spans):
        if s.climate == "freezer" or s.frozen:
            continue
        if p.printed is not None and hazards.can_hurt(p.food, p.method, s.state, s.vacuum):
            yield _until(p.printed, "the printed date")
        where = f"{p.method} {p.food.name}, {s.state} in the {s.climate}"
        for state, day0 in _running(s):
            days = _life_in(p, s, state)
            if days is not None:
                yield _until(papers.add(_day0(life.spans, i, day0), days), where)
    for day in life.thaws:
        thawed = _thawed_life(p)
        if thawed is not None:
            yield _until(papers.add(day, thawed), "thawed")
    if life.cooked_by is not None and (
        p.method == "frozen" or hazards.can_hurt(p.food, p.method, "thawed", False)
    ):
        yield _until(life.cooked_by, "thawed in water or a microwave: cook at once")


def _running(s: Span) -> list[tuple[str, int]]:
    """The states whose limits run there, with their day 0: opening stops nothing that ran."""
    mine = [(s.state, s.day0)]
    return [*mine, ("sealed", s.made)] if s.state == "open" else mine


def _said(p: PutUp, s: Span, state: str) -> papers.Said:
    """What the papers say of it. A pack from a shop that has no date, or was opened, has the days
    of food of its kind: the Cold Food Storage Chart is written for shop food, shut from the
    purchase and opened. On a shelf only a row that gives a shut pack its days there speaks for it,
    whether or not there is air in the pack."""
    own = papers.said(p.method, p.food, s.vacuum, state, s.climate)
    animal = p.food.group in ("meat", "fish", "egg", "dairy")
    if p.method != "bought in" or (state == "sealed" and p.printed):
        return own
    cooked = p.food.group == "meal" or "stock" in p.food.classes
    kind = "cooked meal" if cooked else "fresh" if animal else p.method
    if state == "open" or (state == "sealed" and s.climate == "fridge"):
        return papers.said(kind, p.food, s.vacuum, state, s.climate)
    if state == "sealed" and animal:
        shelf = papers.said("fresh", p.food, False, state, s.climate)
        return own if shelf.life is None else shelf
    return own


def _life_in(p: PutUp, s: Span, state: str) -> papers.Life | None:
    says = _said(p, s, state)
    life = says.life
    if life is None and state == "thawed" and not says.refused:
        # lax: no row for thawed food, so the row of the closed one goes on.
        life = papers.said(p.method, p.food, s.vacuum, "sealed", s.climate).life
    # The 41 F question is one of fridges (README, defaults); a shelf has its own rules.
    warm = s.climate not in papers.SHELVES and (
        40 < s.temp_f <= COLD_F or (s.temp_f > COLD_F and s.end - s.start > TWO_HOURS)
    )
    strict = hazards.strict_at_41(p.method, p.food, state) if warm else None
    fridge = s.climate == "fridge"
    warmer = fridge and papers.said_warmer(p.method, p.food, s.vacuum, state, s.temp_f)
    lives = [x for x in (life, strict, warmer or None) if x is not None]
    return min(lives, key=papers.length) if lives else None


def _day0(spans: Sequence[Span], i: int, day0: int) -> int:
    """The day made, opened or thawed; lax: its arrival here where it came from the colder."""
    s = spans[i]
    before = [x for x in spans[:i] if x.start < x.end]
    if all(warmer_or_as_warm(x.climate, s.climate) for x in before):
        return day0
    first = next(x for x in spans if x.climate == s.climate)
    return max(day0, day_of(first.start))


def _thawed_life(p: PutUp) -> papers.Life | None:
    """Days once thawed: its method's own figure, else frozen food's, else a day (README)."""
    own = papers.said(p.method, p.food, False, "thawed", "fridge")
    hurts = hazards.can_hurt(p.food, p.method, "thawed", False)
    if own.covered and not own.refused:
        if own.life is not None and own.catch_all and not hurts and _closer_quality(p):
            return None
        return own.life
    if not hurts:
        return None
    return papers.said("frozen", p.food, False, "thawed", "fridge").life or (1, "days")


def _closer_quality(p: PutUp) -> bool:
    """lax: a quality figure nearer than `any food` for what was frozen and lies in a fridge."""
    return any(
        r.method == p.method and r.kind == "quality" and "fridge" in r.climates and r.life
        and (papers.closeness(r.keys, p.food, p.food.classes) or 0) > 0
        for r in papers.keeping()
    )  # fmt: skip


def _clocks(life: Life, p: PutUp, used: int) -> Iterator[Ruling]:
    """Minutes too warm, minutes where it is refused, minutes nothing is published for."""
    warm = thawed_warm = used
    refused = unknown = 0
    spans = merged(life.spans)
    for s in spans:
        minutes = s.end - s.start
        allowed = _allowed_warm(p, s)
        if allowed is not None and s.temp_f > COLD_F and minutes:
            charge = minutes * (2 if s.temp_f > 90 else 1)
            warm += charge if allowed == TWO_HOURS else 0
            thawed_warm += charge
            over = warm - TWO_HOURS if allowed == TWO_HOURS else thawed_warm - allowed
            if over > 0:
                yield _ended(s.end - over, life.now, f"above 40 F for over {allowed // 60} h")
            if s.cut is not None and s.climate == "fridge" and s.arrived <= s.cut:
                yield _ended(s.start, life.now, "a fridge without power for over 4 h")
        standing = _standing(p, s)
        now = s is spans[-1]
        if standing == "refused":
            refused += minutes
            if refused > TWO_HOURS:
                yield _ended(s.end - (refused - TWO_HOURS), life.now, f"refused: {s.climate}")
        elif standing == "unknown" and now:
            yield Ruling(None, False, f"can hurt, and nothing is published: {s.state}, {s.climate}")
        elif (
            standing == "unknown"
            and s.state != "in progress"
            # a jar without a tested process has its 24 hours (`_doubt`)
            and not hazards.untested(p.method, p.food)
        ):
            unknown += minutes
            if unknown > TWO_HOURS:
                yield Ruling(None, False, "stood where nothing is published for it")


def _ended(t: int, now: int, why: str) -> Ruling:
    """Over at that minute; its day is the last."""
    return Ruling(day_of(max(t, 0)), now <= t, why)


def _allowed_warm(p: PutUp, s: Span) -> int | None:
    """Minutes above 40 F that it stands; None: warmth is not its end."""
    if s.frozen:
        return hazards.thawed_warm_minutes(p.food, p.method)
    if s.state == "in progress" and hazards.works_warm(p.food, p.method):
        return None
    if s.climate in papers.SHELVES and not hazards.can_hurt(p.food, p.method, s.state, s.vacuum):
        return None
    if hazards.stands_warm(p.method, p.food, s.vacuum, s.state):
        return None
    keeps = hazards.warm_verdict(p.method, p.food, s.vacuum, s.state) == "keep"
    return None if keeps else TWO_HOURS


def _standing(p: PutUp, s: Span) -> str:
    """`refused`, `unknown` (can hurt, no rule) or `covered`."""
    if s.climate == "freezer":
        refused = papers.said(p.method, p.food, s.vacuum, s.state, "freezer").refused
        return "refused" if refused else "covered"
    if s.frozen and s.climate == "fridge":
        return "covered"
    states = ["sealed", s.state] if s.frozen else [s.state]
    says = [_said(p, s, x) for x in states]
    if any(x.refused for x in says):
        return "covered" if _keeps_opened(p, s) else "refused"
    # opening never lengthens: where the closed one is refused, so is the open one
    if (
        s.state in ("open", "thawed")
        and papers.said(p.method, p.food, s.vacuum, "sealed", s.climate).refused
    ):
        return "refused"
    if not hazards.can_hurt(p.food, p.method, s.state, s.vacuum):
        return "covered"
    if any(x.life is not None if p.method == "bought in" else x.covered for x in says):
        return "covered"
    if s.climate == "fridge" and hazards.untested(p.method, p.food):
        return "covered"  # as an opened jar, where it was put into the fridge within the day
    if s.climate == "fridge" and s.state == "thawed":
        return "covered"
    if s.climate == "fridge" and s.state == "open" and s.state != "in progress":
        closed = papers.said(p.method, p.food, s.vacuum, "sealed", s.climate)
        return "covered" if closed.covered and not closed.refused else "unknown"
    if p.printed is not None and s.state == "sealed":
        return "covered"
    return "covered" if _cooler(p, s) else "unknown"


def _keeps_opened(p: PutUp, s: Span) -> bool:
    """Opened jam, pickles and relish, which no publication refuses and the power-cut chart keeps
    (foodsafety.gov): they cannot hurt, so they are unknown and still offered (house law 4)."""
    return (
        s.state == "open"
        and papers.refused_by_us(p.method, p.food, s.vacuum, "open", s.climate)
        and not hazards.can_hurt(p.food, p.method, s.state, s.vacuum)
        and hazards.warm_verdict(p.method, p.food, s.vacuum, s.state) == "keep"
    )


def _cooler(p: PutUp, s: Span) -> bool:
    """Whether a warmer shelf is published for it: README, defaults, "anything cooler than its
    reference: no longer than the published life"."""
    if p.method not in hazards.SHELF_METHODS or s.climate not in (*papers.SHELVES, "fridge"):
        return False
    warmer = COLD_TO_WARM[COLD_TO_WARM.index(s.climate) + 1 :]
    says = [papers.said(p.method, p.food, s.vacuum, s.state, c) for c in warmer]
    return any(x.covered and not x.refused for x in says)


def _whole(
    life: Life, p: PutUp, facts: Sequence[Fact], container: str, at: dict[str, int]
) -> Iterator[Ruling]:
    """What concerns it whatever the place: never-rules, doubt, signs, being gone."""
    if life.ended is not None:
        yield Ruling(None, False, "used up")
    for climate in {s.climate for s in life.spans}:
        why = hazards.never(p.method, p.food, climate)
        if why:
            yield Ruling(None, False, why)
    untested = hazards.untested(p.method, p.food)
    if untested or (p.doubt and p.food.acidity == "low-acid" and p.method in papers.CANNED):
        yield _doubt(life, p, untested or "its process is in doubt")
    yield from _signs(life, p, facts, container, at)


def _doubt(life: Life, p: PutUp, why: str) -> Ruling:
    """In the cold within 24 hours, and in it since, it is kept as an opened jar; else discarded
    (USDA AIB 539, as the extension services carry it; README, signs where publications differ:
    "within 24 h ..., else discard; in the fridge 3 days")."""
    cold = [s for s in life.spans if s.climate in ("fridge", "freezer")]
    warm = [s for s in life.spans if s.climate in papers.SHELVES and s.end > s.start]
    late = cold and cold[0].start - life.born > DAY
    if not cold or late or any(s.start >= cold[0].start for s in warm):
        return Ruling(None, False, why)
    if all(s.climate == "freezer" for s in cold):
        return Ruling(None, True, f"{why}, and it was frozen within the day")
    days = 2 if p.food.group in ("meat", "fish") else 3
    return _until(life.made + days, f"{why}, saved in the fridge")


def _signs(
    life: Life, p: PutUp, facts: Sequence[Fact], container: str, at: dict[str, int]
) -> Iterator[Ruling]:
    """lax: `looks sound`, said later, lifts a sign that is not `do not taste`, and a sister's."""
    cleared = max(life.sound_at, default=-1)
    for t, verdict, sign in life.signs:
        if verdict == "do not taste" or (verdict == "discard" and cleared < t):
            yield Ruling(None, False, f"sign: {sign}")
    for f in facts:
        if not isinstance(f.what, SignSeen) or f.what.container == container:
            continue
        t = at[f.id]
        verdict, suspect, _ = hazards.sign_says(p.method, p.food, True, f.what.sign)
        if verdict == "do not taste" and suspect and cleared <= t and _sealed_then(facts, at, f):
            yield Ruling(None, False, f"another of the batch: {f.what.sign}")


def _sealed_then(facts: Sequence[Fact], at: dict[str, int], sign: Fact) -> bool:
    """Whether nothing had been done to the sister before its sign was found."""
    jar = getattr(sign.what, "container", None)
    return not any(
        getattr(f.what, "container", None) == jar
        and at.get(f.id, 0) <= at[sign.id]
        and not isinstance(f.what, SignSeen | LooksSound | Moved | Thawed)
        for f in facts
    )
