"""Keeping the stock tables: which lines the log leaves, and when they are made again.

A booking makes the lines of the batches it touches in its own transaction. What touches a whole
place only marks it there; marked batches are judged before anything is shown (`ready`). Another
table of rules, or another program, marks everything.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from time import process_time

from pantry_tui.core.log.payloads import batch_of
from pantry_tui.core.model import Batch
from pantry_tui.core.words import Method
from pantry_tui.errors import StoreError
from pantry_tui.reference import rules_fingerprint
from pantry_tui.services.named_parts import named_in
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.came_of import row_of
from pantry_tui.services.stock.ladders import lines_of, today_only
from pantry_tui.services.stock.lines import in_each, inside
from pantry_tui.store import damage, marks, past
from pantry_tui.store import lines as table

#: Marked batches are judged so long, in seconds of CPU, before others may write; and so many at
#: most are looked at for it.
_TURN_S = 0.025
_TURN = 200
#: Before the id of a batch that others were made with, by their notes alone.
_BY_NOTE = "batch:"


def keep(p: Pantry, touched: Collection[str], marked: Collection[str]) -> None:
    """What was booked, in the stock tables; inside the transaction that booked it."""
    db = p.store.db
    past.make(db)
    for batch in _resting_on(p, touched):
        _make(p, batch)
    for what in marked:
        marks.add(db, _with_inner(p, what) if what != "*" else [what])
    p.ready_for = p.judged_for = None


def kin(p: Pantry, touched: Collection[str]) -> Sequence[str]:
    """These batches with all that they were made from and all that was made from them, however far
    off."""
    found, waiting = dict.fromkeys(touched), list(touched)
    while waiting:
        held = p.load(waiting.pop())
        if held is None:
            continue
        near = [*map(batch_of, held[0].parts), *held[0].into]
        waiting += [id_ for id_ in near if id_ not in found]
        found |= dict.fromkeys(near)
    return tuple(found)


def _resting_on(p: Pantry, touched: Collection[str]) -> Sequence[str]:
    """These batches with their kin, and those that were made with them by a note alone."""
    found: dict[str, None] = {}
    waiting = list(touched)
    while waiting:
        new = [one for one in kin(p, waiting) if one not in found]
        found |= dict.fromkeys(new)
        by_note = (one for of in new for one in marks.stood_in(p.store.db, f"{_BY_NOTE}{of}"))
        waiting = [one for one in by_note if one not in found]
    return tuple(found)


def _with_inner(p: Pantry, place: str) -> list[str]:
    """A place and all that is or ever was in it, as marks."""
    return [f"place:{id_}" for id_ in sorted(inside(p, place, ever=True))]


def _make(p: Pantry, batch: str) -> None:
    db = p.store.db
    found = p.load(batch)
    here = [] if found is None else [c for c in found[1].values() if c.here]
    made = [] if found is None else lines_of(p, found[0], here)
    for line in made:  # what cannot be shown is not booked
        in_each(Method(line.method), line.size, line.amount)
    table.replace_batch(db, batch, made)
    stood = {turn.place for c in here for turn in c.turns if turn.place}
    if found is not None and here:
        for id_ in kin(p, [batch])[1:] if found[0].parts else ():
            other = p.load(id_)
            lives = other[1].values() if other is not None else ()
            stood |= {turn.place for c in lives for turn in c.turns if turn.place}
    if found is not None and here and found[0].note:
        stood |= set(_by_note(p, found[0]))
    table.stood(db, batch, stood)
    past.replace(db, row_of(p, batch))


def _by_note(p: Pantry, batch: Batch) -> Iterator[str]:
    """What else makes a batch be judged again that names others in its note: these, where they
    ever stood, and what they were made with."""
    seen, waiting = {batch.id}, [batch]
    while waiting:
        for of in named_in(p, waiting.pop()):
            if of.id in seen:
                continue
            seen.add(of.id)
            waiting.append(of)
            yield f"{_BY_NOTE}{of.id}"
            for id_ in kin(p, [of.id]):
                held = p.load(id_)
                lives = held[1].values() if held is not None else ()
                yield from (turn.place for c in lives for turn in c.turns if turn.place)


def past_made(p: Pantry) -> bool:
    """Whether what came of each batch lies there to be read: made where an older program left none,
    False where the file may not be written. `ready` is asked before."""
    db = p.store.db
    if not past.is_ours(db):
        _freshen(p)
    return past.is_ours(db) and not marks.any_left(db)


def put_right(p: Pantry, *, look: bool = True) -> None:
    """What is marked is judged. With `look`, raises Damaged where the tables are not as they were
    written."""
    db = p.store.db
    db.execute("DROP TABLE IF EXISTS temp.lines")
    _mark_run_out(p)
    if p.store.meta("rules") != rules_fingerprint() or marks.any_left(db):
        _freshen(p)
    if look:
        table.refuse_hurt(db)
    early = table.resting_on_later(db, p.clock.minute_now, p.today.isoformat())
    if early:
        # Before the last fact: what rests on later ones is judged in memory, never written.
        _in_memory(p, early)


def _mark_run_out(p: Pantry) -> None:
    """What stood in the warm until its hours ran out is judged again."""
    sql = "SELECT DISTINCT batch FROM main.lines WHERE +again_at <= ?"
    over = [row[0] for row in p.store.db.execute(sql, (p.clock.now.first,))]
    if over and not p.store.writing:
        p.refresh_events()  # what was reckoned from the rows as they were
        with p.writing():
            marks.add(p.store.db, [f"batch:{id_}" for id_ in over])


def _freshen(p: Pantry) -> None:
    """Judge what is marked, a while at a time, so that others may write between."""
    try:
        while _some(p):
            pass
    except StoreError:
        if damage.noted(p.path):
            raise
        # It may not be written: look at it in memory.
        _in_memory(p, [row[0] for row in p.store.db.execute("SELECT batch FROM codes")])


def _some(p: Pantry) -> bool:
    """A turn of it; whether anything is left."""
    db = p.store.db
    with p.writing():
        past.make(db)
        if p.store.meta("rules") != rules_fingerprint():
            from pantry_tui.store import rebuild  # once for each version of the program

            rebuild.beside(db)
            p.places_changed()
            p.store.set_meta("rules", rules_fingerprint())
        begun, done = process_time(), []
        for batch in marks.batches(db, _TURN):
            _make(p, batch)
            done.append(f"batch:{batch}")
            if process_time() - begun > _TURN_S:
                break
        marks.take(db, done)
    return marks.any_left(db)


def _in_memory(p: Pantry, batches: Sequence[str]) -> None:
    """The lines of these batches as of today, over those of the file, never written to it."""
    db = p.store.db
    db.execute("CREATE TEMP TABLE lines AS SELECT * FROM main.lines")
    for batch in batches:
        db.execute("DELETE FROM temp.lines WHERE batch = ?", (batch,))
        found = p.load(batch)
        if found is None:
            continue
        for line in lines_of(p, found[0], found[1].values()):
            table.insert(db, today_only(p, line, found[1]), "temp.lines")
    db.execute("UPDATE temp.lines SET id = rowid")
