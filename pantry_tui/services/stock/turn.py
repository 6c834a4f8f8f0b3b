"""Whose turn it is: which containers of a food should be eaten before others, read off the stock
tables in the order of `core.keeping.rotation.order_key`. A food may have thousands of batches, and
an act on one of them must not hold the store while all are folded."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.keeping.rotation import order_key
from pantry_tui.core.model import Container
from pantry_tui.core.text import clean
from pantry_tui.core.words import Method, State, Verdict
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.ready import ready
from pantry_tui.store import lines as table
from pantry_tui.store.store import reading

#: Lines that are fetched at a time.
_SOME = 16
#: So many batches are named beside the one that is taken.
_NAMED = 2

#: Ways to keep a food that are eaten for one another: nobody takes dried apples for fresh ones. Of
#: any other way only its own. Our own choice.
_ALIKE = (
    frozenset({Method.FRESH, Method.CELLAR}),
    frozenset({Method.BOILING_WATER, Method.PRESSURE}),
    frozenset({Method.DRIED, Method.FREEZE_DRIED}),
    frozenset({Method.FRIDGE_PICKLE, Method.VINEGAR_PICKLE}),
    frozenset({Method.JAM, Method.FREEZER_JAM}),
)

#: As `core.keeping.fitness.usable`.
_USABLE = (
    f"(state <> '{State.IN_PROGRESS}' AND "
    f"(verdict IN ({table.numbers(Verdict.SOUND, Verdict.EAT_SOON, Verdict.PAST_BEST)}) OR "
    f"(harmless AND verdict IN ({table.numbers(Verdict.UNKNOWN, Verdict.NEEDS_CARE)}))))"
)
#: As `core.keeping.rotation.order_key`.
_ORDER = (
    f"CASE WHEN verdict IN ({table.numbers(*UNFIT)}) THEN 3 WHEN NOT {_USABLE} THEN 2 "
    f"ELSE verdict = {table.numbers(Verdict.UNKNOWN)} END, "
    f"(state NOT IN ('{State.OPEN}', '{State.THAWED}') AND NOT begun), first_date, made, code, "
    "CAST(numbers AS INTEGER)"
)


def in_turn(p: Pantry, food: str) -> Iterator[table.Line]:
    """All lines of a food, what is to be eaten first before the rest; read as they are asked for.
    Raises StoreError."""
    return _lines(p, "WHERE food = :food", {"food": food})


def _lines(p: Pantry, where: str, values: dict[str, object]) -> Iterator[table.Line]:
    ready(p, all_of_it=False)
    day = p.today.isoformat()
    with reading(p.path):
        table.refuse_food(p.store.db, str(values["food"]))
        ids = table.ids(p.store.db, where, _ORDER, {"day": day, **values})
    for at in range(0, len(ids), _SOME):
        some = ids[at : at + _SOME]
        with reading(p.path):
            found = {id_: line for id_, line, *_ in table.rows(p.store.db, day, some)}
        yield from (found[id_] for id_ in some)


def left_behind(p: Pantry, taken: Container) -> tuple[str, ...]:
    """Says where a container of the same food, kept alike, stands that should have gone first, and
    that an older one is rightly passed over: of two batches at most."""
    batch = p.stock.batches[taken.batch]
    last, closed, first, _, code, number = order_key(batch, taken, p.judge(taken))
    mine = {
        "last": last,
        "closed": int(closed),
        "first": first.isoformat(),
        "made": batch.made.isoformat() if batch.made else "",
        "code": code,
        "number": number,
        "food": batch.food.name,
        "batch": batch.id,
    }
    alike = next((some for some in _ALIKE if batch.method in some), (batch.method,))
    methods = ", ".join(f"'{one}'" for one in sorted(alike))
    kind = f"food = :food AND method IN ({methods})"
    others = f"WHERE {kind} AND batch <> :batch AND reserved = '' AND {_USABLE}"
    before = f"({_ORDER}) < (:last, :closed, :first, :made, :code, :number)"
    older = "made <> '' AND made < :made"
    said_of: dict[str, str] = {}
    for line in _lines(p, f"{others} AND {before}", mine):
        what, is_older = _what(line), bool(line.made) and line.made < str(mine["made"])
        if line.state in (State.OPEN, State.THAWED):
            why = f"is {line.state}"
        elif line.begun:
            why = "is begun"
        else:
            why = "is older" if is_older else "falls due first"
        said_of.setdefault(line.batch, f"{what} {why}: take that one first next time.")
        if len(said_of) == _NAMED:
            return tuple(said_of.values())
    due = "is begun" if taken.begun else "falls due first"
    why = f"is {taken.state}" if taken.state is State.OPEN else due
    for line in _lines(p, f"{others} AND NOT ({before}) AND {older}", mine):
        said = f"{_what(line)} is older, but this one {why}: it is rightly first."
        said_of.setdefault(line.batch, said)
        if len(said_of) == _NAMED:
            break
    return tuple(said_of.values())


def must_go_beside(p: Pantry, taken: Sequence[Container]) -> tuple[str, ...]:
    """Says which begun or thawed containers of the same batch are over, and what to do with them:
    they were passed over, and still stand there."""
    mine, said = {one.id for one in taken}, []
    batch = p.stock.batches[taken[0].batch]
    for one in p.containers_of(batch):
        begun = one.state in (State.OPEN, State.THAWED) or one.begun
        if not (one.here and begun) or one.id in mine:
            continue
        verdict = p.judge(one).verdict
        if verdict in UNFIT:
            name = f"{batch.code}/{one.number}"
            why = "Do not taste it" if verdict is Verdict.DO_NOT_TASTE else "Do not eat it"
            state = "begun" if one.state is State.SEALED else str(one.state)
            said.append(
                f"{name} {clean(batch.food.name)} in {p.where(one)} is {state} and must go: it was "
                f"passed over. {why}; `discard {name}`."
            )
    return tuple(said[:_NAMED])


def _what(line: table.Line) -> str:
    number = line.numbers.partition(" ")[0]
    return f"{line.code}/{number} {line.food} in {line.path}"
