"""What publications say against a process, for this household: the one place where its record, its
jars and its altitude come together."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from datetime import date
from itertools import islice

from pantry_tui.core.canned import LIDDED, still_possible
from pantry_tui.core.log.payloads import batch_of
from pantry_tui.core.model import Batch, FoodFacts
from pantry_tui.core.safety.made_of import Used
from pantry_tui.core.safety.metric_jars import MAKER, by_maker, low_acid
from pantry_tui.core.safety.process import Doubt, ProcessRow, doubt
from pantry_tui.core.words import Climate, Method, State
from pantry_tui.reference.process import load_not_recommended, processes_named
from pantry_tui.services.pantry import Pantry


def checked(
    p: Pantry,
    method: Method,
    food: FoodFacts,
    size: str,
    record: dict[str, str],
    altitude_ft: int | None,
    note: str = "",
    parts: Sequence[Used] = (),
    made: date | None = None,
) -> Doubt | None:
    """Why no publication stands for a process, None where nothing speaks against it. Altitude in
    feet, unless the record has one. What the note says is held against it too, and what went into
    it from older batches (`parts`); `made` is the day of its process."""
    rows, advice = processes_of(method, food), load_not_recommended()
    tested = {
        key: in_tested_jar(p, method, food, typed)
        for key, typed in record.items()
        if key in ("jar", "amount")
    }
    size = in_tested_jar(p, method, food, size)
    record = {**record, **tested}

    def judged(said: Mapping[str, str]) -> Doubt:
        found = doubt(method, food, size, said, altitude_ft, rows, advice)
        return found or Doubt((), still_possible(food, again=bool(rows)))

    def doubted(said: Mapping[str, str]) -> tuple[str, ...]:
        return judged(said).problems

    found = judged(record)
    if not (note or parts or "temperature" in record):
        return found if found.problems else None
    from pantry_tui.core.safety.notes import doubted_notes  # few have one

    def noted(text: str) -> list[str]:
        told = method, food, size, record, altitude_ft, text
        return doubted_notes(*told, doubted, p.tables.named, made)

    with_parts = tuple(_of_parts(method, food, parts, noted)) if parts else ()
    processed = (
        *found.problems,
        *noted(note),
        *(one for one, of_process in with_parts if of_process),
    )
    # What no process was part of is put right by none.
    possible = found.still_possible if processed else ""
    spoken = note or "temperature" in record
    told = _kept(p, method, food, size, record, note, doubted) if spoken else ()
    heard = {one.partition(": ")[0] for one in processed}
    told = (*told, *_put_in(p, method, food, note, heard))
    kept = (*told, *(one for one, of_process in with_parts if not of_process))
    problems = tuple(dict.fromkeys((*processed, *kept)))
    return Doubt(problems, possible) if problems else None


def _of_parts(
    method: Method,
    food: FoodFacts,
    parts: Sequence[Used],
    noted: Callable[[str], list[str]],
) -> Iterator[tuple[str, bool]]:
    """One sentence of each part that stands against it, and whether it is its process that does."""
    from pantry_tui.core.safety import made_of
    from pantry_tui.core.safety.kept_notes import put_in
    from pantry_tui.core.safety.note_foods import untested_with

    for used in dict.fromkeys(parts):
        if made_of.no_raw_crop(method, food, used):
            yield made_of.made_with(used, made_of.NO_RAW_CROP), False
    for used in made_of.strange(food, parts):
        names = made_of.as_note(used), made_of.as_kind(used)
        if against := noted(names[0]):
            yield made_of.of_part(against[0], used), True
        elif untested_with(method, food, used.food):
            yield made_of.made_with(used), True
        elif made_of.in_a_ferment(method, food, used):
            yield made_of.made_with(used, made_of.IN_A_FERMENT), False
        elif made_of.in_acid(method, food, used):
            yield made_of.made_with(used, made_of.KEEPS_COLD_ALONE), False
        elif method is Method.FREEZER_JAM and untested_with(Method.JAM, food, used.food):
            yield made_of.made_with(used, made_of.NO_COLD), False
        elif method not in LIDDED:
            told = (why for one in names for why in put_in(method, food, one))
            yield from ((made_of.made_with(used, why), False) for why in islice(told, 1))


def _put_in(
    p: Pantry, method: Method, food: FoodFacts, note: str, heard: Collection[str]
) -> Iterator[str]:
    """A sentence of each clause of a note that names a food which lies in it, as if that were a
    part of it; `heard`: the clauses that are held against its process already."""
    from pantry_tui.core.safety import made_of
    from pantry_tui.core.safety.note_before import QUOTES
    from pantry_tui.core.safety.notes import clauses

    for typed, clause in clauses(note):
        for used in made_of.strange(food, made_of.told_in(clause, p.tables.named)):
            why = made_of.IN_A_FERMENT if made_of.in_a_ferment(method, food, used) else ""
            why = why or (made_of.KEEPS_COLD_ALONE if made_of.in_acid(method, food, used) else "")
            why = why or (made_of.NO_COLD if made_of.in_a_jam(method, food, used) else "")
            if not why and f"{QUOTES}{typed!r}" not in heard:
                why = made_of.UNTESTED if made_of.in_a_process(method, food, used) else ""
            if why:
                yield f"{QUOTES}{typed!r}: {why}"
                break


def used_in(p: Pantry, batch: Batch) -> tuple[Used, ...]:
    """What went into a batch from older ones; () of what only goes on in other vessels."""
    if batch.carried or not batch.parts:
        return ()
    of = (p.stock.load(batch_of(one)) for one in batch.parts)
    return tuple(Used(held[0].food, held[0].method) for held in of if held is not None)


#: What stands against what nothing speaks against.
NOTHING = Doubt((), "")


def as_recorded(
    p: Pantry, batch: Batch, altitude_ft: int | None, record: Mapping[str, str] | None = None
) -> Doubt:
    """What stands against a batch as it is recorded, or by another `record`: a process is that of
    the jar in which it was done."""
    said = dict(batch.process if record is None else record)
    told = batch.method, batch.food, batch.processed, said, altitude_ft, batch.note
    return checked(p, *told, used_in(p, batch), batch.made) or NOTHING


def _kept(
    p: Pantry,
    method: Method,
    food: FoodFacts,
    size: str,
    record: Mapping[str, str],
    note: str,
    doubted: Callable[[Mapping[str, str]], Sequence[str]],
) -> list[str]:
    """What the note says against food that no lid keeps, and how warm its record has it; loaded
    where there is either."""
    from pantry_tui.core.safety.kept_notes import doubted_kept, needs_cold
    from pantry_tui.core.safety.outage import perishes
    from pantry_tui.reference.signs import load_signs

    where = Climate.FREEZER if method is Method.FROZEN else Climate.FRIDGE

    def must_go() -> bool:
        return needs_cold(method, food) and perishes(
            food, method, State.SEALED, where, p.book_of_rules.cuts()
        )

    return doubted_kept(
        method,
        food,
        size,
        record,
        note,
        perishes=must_go,
        doubted=doubted,
        signs=load_signs,
    )


def processes_of(method: Method, food: FoodFacts) -> tuple[ProcessRow, ...]:
    """The processes of a food; of one in vinegar also those of the pickle that it is."""
    pickle = processes_named(f"pickled {food.name}") if method is Method.VINEGAR_PICKLE else ()
    return tuple(dict.fromkeys((*processes_named(food.name), *pickle)))


def in_tested_jar(p: Pantry, method: Method, food: FoodFacts, size: str) -> str:
    """The published jar whose time a metric one takes, where the household goes by the makers'
    manuals; else the size as it is."""
    jar = by_maker(size, low_acid=low_acid(method, food)) if p.jars == MAKER else None
    return size if jar is None else jar
