"""Plain text for the command line and for screen readers: one fact a line, no box art, no colour.

Every text that a person typed goes through `clean`, so that no name can steer the terminal.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from datetime import date
from typing import Any

from pantry_tui.core.dates import say
from pantry_tui.core.plan.appetite import at_table
from pantry_tui.core.text import clean
from pantry_tui.core.words import MARK, Verdict
from pantry_tui.services.rows import (
    BatchView,
    Done,
    DueRow,
    Kept,
    OutageRow,
    PutUp,
    PutUpReading,
    RoundLine,
    Shelf,
    SignAnswer,
    SignRow,
    WeekView,
)

_UNFIT = (Verdict.DISCARD, Verdict.DO_NOT_TASTE)


def table(heads: Sequence[str], rows: Iterable[Sequence[str]]) -> list[str]:
    """Columns as wide as their widest cell; long cells are cut at 40 characters."""
    cells = [[clean(cell) for cell in row] for row in rows]
    cut = [[cell if len(cell) <= 40 else cell[:39] + "…" for cell in row] for row in cells]
    widths = [max(map(len, column)) for column in zip(heads, *cut, strict=True)]
    return [
        "  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip()
        for row in (heads, *cut)
    ]


def _day(day: date | None) -> str:
    return day.isoformat() if day else "-"


def _food(row: DueRow) -> str:
    return f"{row.food}{row.remark}"


def _due_cells(row: DueRow) -> tuple[str, ...]:
    left = "-" if row.days_left is None else str(row.days_left)
    verdict = f"{MARK[row.verdict]} {row.verdict}"
    return (
        verdict,
        row.code,
        _food(row),
        str(row.count),
        row.place.rsplit("› ", 1)[-1],
        _day(row.good_until),
        _day(row.discard_after),
        left,
    )


DUE_HEADS = ("verdict", "code", "food", "n", "place", "best by", "discard after", "days")


def due(rows: Sequence[DueRow]) -> list[str]:
    """The stock list, and under it why what is unfit must go."""
    if not rows:
        return ["Nothing is in store here: put something up with `pantry-tui putup`."]
    lines = table(DUE_HEADS, map(_due_cells, rows))
    unfit = [row for row in rows if row.verdict in _UNFIT]
    for row in unfit:
        lines.append(f"{row.code} {clean(row.food)}: {row.verdict}. {clean(' '.join(row.reasons))}")
    if unfit:
        lines.append(
            "Never taste to find out. Ask your local food-safety authority; "
            "if anyone feels ill, get medical help at once."
        )
    return lines


def shelves(found: Sequence[Shelf]) -> list[str]:
    """Every place with what stands there."""
    lines: list[str] = []
    for shelf in found:
        of = f" of {shelf.capacity}" if shelf.capacity else ""
        kind = f"{shelf.climate}, {shelf.temperature_f:g} °F"
        lines.append(f"{clean(shelf.path)} ({kind}): {shelf.count}{of}")
        lines += ["  " + line for line in due(shelf.rows)] if shelf.rows else []
    return lines or ["There is no place yet: add one with `pantry-tui place add`."]


def places(found: Sequence[Shelf]) -> list[str]:
    """Places alone."""
    if not found:
        return shelves(found)
    rows = [
        (s.path, s.climate, f"{s.temperature_f:g} F", str(s.count), str(s.capacity or "-"))
        for s in found
    ]
    return table(("place", "climate", "temp", "holds", "room for"), rows)


def batch(view: BatchView) -> list[str]:
    """One batch whole."""
    made = say(view.made) if view.made else "nobody knows when"
    lines = [
        f"{view.code} {clean(view.food)}, {view.method} ({view.group}, {view.acidity})",
        f"made: {made}",
    ]
    lines += [f"{clean(key)}: {clean(value)}" for key, value in view.process]
    lines += [f"note: {clean(view.note)}"] if view.note else []
    lines += [f"tasted: {clean(one)}" for one in view.tasted]
    for row in view.rows:
        aside = f" {clean(row.aside)}" if row.aside else ""
        lines.append(
            f"{row.count} {row.state}{aside} in {clean(row.place)} "
            f"({', '.join(row.container_ids)}): "
            f"{row.verdict}; best by {_day(row.good_until)}; "
            f"discard after {_day(row.discard_after)}"
        )
        lines += [f"  why: {clean(reason)}" for reason in row.reasons]
    for first, steps in view.chain:
        lines += [f"step for {first}: {clean(step)}" for step in steps]
    lines += [f"gone: {clean(one)}" for one in view.gone]
    lines += [f"care: {clean(one)}" for one in view.cautions]
    lines += [f"history: {clean(one)}" for one in view.history]
    lines += [f"source: {clean(one)}" for one in view.sources]
    return lines


def done(what: Done) -> list[str]:
    """The sentence, then what else should be known."""
    return [clean(what.message), *(f"Note: {clean(one)}" for one in what.warnings)]


def reading(read: PutUpReading) -> list[str]:
    """What a line was understood as."""
    count = " ".join(f"{read.count} {read.size} {read.container}".split())
    made = say(read.made) if read.made else "unknown"
    lines = [
        f"food: {clean(read.food) or '-'}",
        f"method: {read.method or '-'}",
        f"how many: {count}",
        f"place: {clean(read.place) or '-'}",
        f"made: {made}",
    ]
    lines += [f"{clean(key)}: {clean(value)}" for key, value in read.process]
    lines += [f"note: {clean(read.note)}"] if read.note else []
    if read.unread:
        lines.append("not understood: " + ", ".join(clean(word) for word in read.unread))
    lines += [f"still needed: {clean(one)}" for one in read.problems]
    return lines


def putup(made: PutUp) -> list[str]:
    """The lid code first, then dates and cautions."""
    head = f"Lid code {made.code}: write it on every lid." if made.code else "Nothing was booked."
    lines = [head, *reading(made.reading)]
    lines.append(f"verdict: {made.verdict}")
    lines.append(f"best by: {say(made.best_by) if made.best_by else 'no published figure'}")
    if made.discard_after:
        lines.append(f"discard after: {say(made.discard_after)}")
    lines += [f"why: {clean(one)}" for one in made.reasons]
    return lines + [f"care: {clean(one)}" for one in made.cautions]


def week(view: WeekView) -> list[str]:
    """Day by day, then what to know, what waits and what must go; last why each is in it."""
    state = "accepted" if view.accepted else "proposed"
    lines = [f"{say(view.start)} to {say(view.end)}, for {view.people}, {state}"]
    rows = [
        (
            say(take.day),
            take.code,
            take.food,
            take.amount or str(take.count),
            take.place,
            f"{take.servings:g}",
            say(take.thaw_by) if take.thaw_by else "",
            take.dish,
        )
        for take in view.take
    ]
    if rows:
        heads = ("day", "code", "food", "n", "place", "servings", "thaw from", "dish")
        lines += table(heads, rows)
    else:
        lines.append(_no_menu(view))
    lines += [clean(one) for one in (*view.notes, *(text for _, text in view.table))]
    if view.left_out:
        lines.append(clean(f"Left out this week: {', '.join(view.left_out)}."))
    lines += list(_named("Needs a hand or has no published figure", view.waiting))
    lines += list(_named("Must go", view.discard))
    why = ["  " + clean(f"{one.code} {one.food}: {' '.join(one.why)}") for one in view.take]
    lines += ["Why:", *dict.fromkeys(why)] if why else []
    return lines


def _no_menu(view: WeekView) -> str:
    if view.accepted:
        return "Nothing is left to eat of this week's plan."
    if view.stocked:
        return "Nothing in store asks to be eaten this week."
    return "Nothing to propose: put something up with `pantry-tui putup`."


def table_days(days: Sequence[tuple[date, int]]) -> list[str]:
    """Days on which another number eats."""
    lines = [f"{say(day)}: {at_table(n)}" for day, n in days]
    return lines or ["As usual: `pantry-tui table away 2026-12-24 2026-12-27` says otherwise."]


def _named(head: str, rows: Sequence[DueRow]) -> Iterator[str]:
    if rows:
        yield f"{head}:"
    for row in rows:
        why = clean(row.reasons[0]) if row.reasons else ""
        yield f"  {row.code} {clean(_food(row))} in {clean(row.place)}: {row.verdict}. {why}"


def sign(said: SignAnswer) -> list[str]:
    """The verdict first, then what to do with it and where it must go."""
    lines = [f"{said.code}, {said.sign}: {said.verdict}."]
    lines += [f"do: {step}" for step in said.do]
    lines += [f"disposal: {step}" for step in said.disposal]
    lines += [f"why: {clean(one)}" for one in said.reasons]
    return lines + [f"source: {one}" for one in said.sources]


def signs(rows: Sequence[SignRow]) -> list[str]:
    """One sign a line."""
    return [
        f"{'/'.join(row.methods)} ({row.seal}): {row.sign}: {row.verdict}. {row.means}"
        for row in rows
    ] or ["No sign is tabled for that method."]


def outage(rows: Sequence[OutageRow]) -> list[str]:
    """What to use first on top, what must go last, each with its reason."""
    lines = [
        f"{row.action}: {row.count} of {row.code} {clean(row.food)} in {clean(row.place)}. "
        f"{clean(' '.join(row.reasons))}"
        for row in rows
    ]
    return lines or ["Nothing stood there."]


def round_lines(lines: Sequence[RoundLine]) -> list[str]:
    """What should stand there, to be counted."""
    rows = [
        (
            one.code,
            one.food,
            one.state.value,
            one.place,
            str(one.expected),
            "" if one.seen is None else str(one.seen),
        )
        for one in lines
    ]
    return table(("code", "food", "state", "place", "expected", "seen"), rows)


def next_places(rows: Sequence[dict[str, Any]]) -> list[str]:
    """Which place to count next."""
    lines = [
        f"{clean(row['place'])}: "
        + ("never counted" if row["days"] is None else f"counted {row['days']} days ago")
        for row in rows
    ]
    return lines or ["Nothing stands anywhere yet."]


def recall(rows: Sequence[Kept]) -> list[str]:
    """One container a line."""
    lines = []
    for row in rows:
        when = f" on {say(row.ended)}" if row.ended else ""
        to = f" to {clean(row.to)}" if row.to else ""
        where = f" in {clean(row.place)}" if row.place else ""
        seen = f"; seen: {', '.join(row.signs)}" if row.signs else ""
        lines.append(f"{row.container}: {row.state}{where}{to}{when}{seen}")
    return lines


def keys(rows: Sequence[dict[str, str]]) -> list[str]:
    """One command a line."""
    cells = [(row["id"], row["keys"], row["does"], row["screens"]) for row in rows]
    return table(("id", "keys", "does", "on"), cells)


def process(answer: dict[str, Any], altitude_ft: int) -> list[str]:
    """A tested process, or why there is none."""
    lines = [f"{answer['answer']} (at {altitude_ft} ft)"]
    for key, word in (
        ("minutes", "minutes"),
        ("psi", "psi"),
        ("acidify", "acidify"),
        ("headspace_in", "headspace, inches"),
    ):
        if answer[key] is not None:
            lines.append(f"{word}: {answer[key]}")
    for option in answer["options"]:
        lines.append("option: " + ", ".join(f"{k} {v}" for k, v in option.items() if v))
    lines += [f"why: {clean(str(one))}" for one in answer["reasons"]]
    return lines + [f"source: {clean(str(one))}" for one in answer["sources"]]


def keeps(answer: dict[str, Any]) -> list[str]:
    """Published limits, both kinds, with sources."""
    lines = [f"{answer['food']}, {answer['method']}, {answer['state']}, {answer['place']}"]
    if not answer["allowed"]:
        lines.append("Not allowed there by publications.")
    for kind in ("quality", "safety"):
        found = answer["published"][kind]
        lines.append(f"{kind}: {_range(found)}")
    for key, word in (("best_by", "best by"), ("discard_after", "discard after")):
        if answer[key]:
            lines.append(f"{word}: {say(date.fromisoformat(answer[key]))}")
    lines += [f"why: {clean(one)}" for one in answer["reasons"]]
    return lines + [f"source: {clean(one)}" for one in answer["sources"]]


def _range(found: list[Any] | None) -> str:
    if not found:
        return "no published figure"
    least, most, unit = found
    if least is None or most is None or least == most:
        return f"{most if most is not None else least:g} {unit}"
    return f"{least:g} to {most:g} {unit}"
