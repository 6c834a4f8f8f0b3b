"""One batch whole: its containers, dates, every step behind them, sources and history."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from pantry_tui.core import dates
from pantry_tui.core.keeping.explain import UNTIL, chain
from pantry_tui.core.keeping.limits import as_packed
from pantry_tui.core.keeping.rules import Rule
from pantry_tui.core.log.events import standing
from pantry_tui.core.log.fold_place import path_of
from pantry_tui.core.log.payloads import Discard, Give
from pantry_tui.core.model import Batch, Container
from pantry_tui.core.safety.outage import OutageRule
from pantry_tui.core.words import State
from pantry_tui.services.books.logbook import log
from pantry_tui.services.lookup.shelf_life import views
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import BatchView
from pantry_tui.services.stock.pick import batch_named, name_of
from pantry_tui.services.stock.rows import DueRow
from pantry_tui.services.stock.view import cautions, note_aside, rows_of
from pantry_tui.store.log import of_batch
from pantry_tui.store.store import reading


def show(p: Pantry, code: str) -> BatchView:
    """One batch with its containers, dates, why, sources and history. Raises BadInput."""
    batch = batch_named(p, code)
    containers = p.containers_of(batch)
    found = tuple(rows_of(p, batch))
    cited: dict[str, None] = {}
    for c in containers:
        if c.here:
            for rule in p.judge(c).rules:
                cited[f"{p.cite(rule)}: {said_by(rule)}"] = None
    how = _how_it_went(p, batch)
    gone = tuple(
        f"{name_of(p, c)} {c.fate} {dates.say(c.ended) if c.ended else ''}".strip()
        + how.get(c.id, "")
        for c in containers
        if not c.here
    )
    return BatchView(
        code=batch.code,
        food=batch.food.name,
        group=batch.food.group.value,
        acidity=batch.food.acidity.value,
        method=batch.method,
        made=batch.made,
        process=batch.process,
        note=batch.note,
        note_aside=note_aside(p, batch),
        rows=found,
        gone=gone,
        sources=tuple(cited),
        cautions=cautions(batch, [(row.verdict, row.usable) for row in found]),
        history=tuple(log(p, batch.code)),
        chain=tuple(_chains(p, batch, found)),
        tasted=tuple(f"{dates.say(one.day)}: {one}" for one in batch.rated),
        views=_views(p, batch, containers),
    )


def _how_it_went(p: Pantry, batch: Batch) -> dict[str, str]:
    """Container -> why it was discarded, or to whom it was given, as it was said."""
    found: dict[str, str] = {}
    with reading(p.path):
        events = standing(of_batch(p.store.db, batch.id))
    for event in events:
        match event.payload:
            case Discard(containers=ids, why=why) if why:
                found |= dict.fromkeys(ids, f" ({why})")
            case Give(containers=ids, to=to) if to:
                found |= dict.fromkeys(ids, f" to {to}")
    return found


def _views(p: Pantry, batch: Batch, containers: Sequence[Container]) -> tuple[str, ...]:
    """Stricter and other published views of it as it stands; they give no date."""
    found: dict[str, None] = {}
    for c in containers:
        place = p.places.get(c.place)
        if c.here and place is not None:
            food = as_packed(batch, c.state is State.OPEN).food
            found |= dict.fromkeys(views(p.tables, batch.method, food, c.state, place.climate))
    return tuple(found)


def said_by(rule: Rule | OutageRule) -> str:
    """What a rule says, in our words."""
    return rule.wording if isinstance(rule, Rule) else rule.note


def _chains(
    p: Pantry, batch: Batch, rows: Iterable[DueRow]
) -> Iterator[tuple[str, tuple[str, ...]]]:
    """Every step behind the dates of each row, with its source."""
    by_name = {name_of(p, c): c for c in p.containers_of(batch)}
    paths = p.place_paths()
    for row in rows:
        steps = chain(
            batch,
            by_name[row.container_ids[0]],
            p.ever,
            p.book_of_rules,
            p.clock.now,
            lambda id_: paths.get(id_) or f"{path_of(p.ever, id_) or '?'} (gone since)",
            p.cite,
        )
        if row.must_go:  # until when it would have been good is no matter any more
            steps = [one for one in steps if UNTIL not in one]
        yield row.container_ids[0], tuple(steps)
