"""Lines of stock as text: what it is, how much is left, where, until when. No textual here."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from rich.cells import cell_len

from pantry_tui.app.format import (
    CODE,
    Column,
    clip,
    code_column,
    keep_indent,
    last_day,
    leaf,
    near_day,
    sentence,
    short_day,
    verdict,
)
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.keeping.no_day import NOW, best_or_why, instead_of_day, is_gone
from pantry_tui.core.safety.caution import CAUTION, cautioned
from pantry_tui.core.text import clean, singular
from pantry_tui.core.vessels import vessel_word
from pantry_tui.core.words import MARK, Method, State, Verdict
from pantry_tui.services.stock.rows import DueRow


def short_last_day(row: DueRow) -> str:
    """The same where a list has no room for the day of the week."""
    if row.last_day is None:
        why = NOW if is_gone(row.why_no_last_day) else row.why_no_last_day
        return _SHORT_WHY.get(why) or instead_of_day(why)
    return short_day(row.last_day)


def short_best_day(row: DueRow) -> str:
    """Its last day of good quality, in a column of a list."""
    if row.good_until is not None:
        return short_day(row.good_until)
    said = row.why_no_best
    return {"see discard after": "see discard", "no published figure": "not published"}.get(
        said, said
    )


#: A column of a list holds thirteen cells.
_SHORT_WHY = {"nothing published": "not published", "process in doubt": "doubtful"}


def act_by(row: DueRow) -> date | None:
    """The date that `days_left` counts to: the earlier one ahead, else the last one past."""
    dates = sorted(one for one in (row.best_by, row.discard_after) if one is not None)
    if not dates or row.verdict in UNFIT:
        return row.discard_after
    later = len(dates) == 2 and row.best_over and (row.days_left or 0) >= 0
    return dates[1] if later else dates[0]


def ends(row: DueRow) -> bool:
    """Whether it is past its best, and a last day still to come counts instead: a bird that was
    frozen long and is thawed now."""
    last = row.discard_after
    return row.verdict is Verdict.PAST_BEST and last is not None and act_by(row) == last


def said_verdict(row: DueRow) -> str:
    """Its verdict, with the last day where that is what counts: "! past best, eat by 29 Nov"."""
    said = f"{mark_of(row)} {row.verdict.value}"
    return f"{said}, {until(row)}" if ends(row) else said


def mark_of(row: DueRow) -> str:
    """That of its verdict; of what has a last day still to come, the mark of all that must be eaten
    by a day."""
    return MARK[Verdict.EAT_SOON if ends(row) else row.verdict]


def what_is_left(row: DueRow) -> str:
    """`  7 jars`, `  1 crate`, ` 38 lb`, `3×40 lb`: the number at the right of three cells."""
    if row.amount:
        number, _, unit = row.held.partition(" ")
        return f"{number:>3} {unit}".rstrip()
    return count_of(row, row.count)


def count_of(row: DueRow, number: int) -> str:
    """`  7 jars`, `  1 crate`: so many vessels of a row."""
    vessel = vessel_word(row.size)
    return f"{number:>3} {singular(vessel) if number == 1 else vessel}".rstrip()


def until(row: DueRow) -> str:
    """Its date with its kind: `discard 21 Oct` and `eat by today` are safety, `best Sep 2026` is
    quality; else why it has none."""
    if row.verdict is Verdict.DO_NOT_TASTE:
        return "do not taste"
    if row.verdict is Verdict.DISCARD:
        past = row.discard_after is not None and (row.days_left or 0) < 0
        return f"discard {near_day(row.discard_after, row.days_left)}" if past else "discard now"
    if row.hurried:
        return "too warm: now"
    when = act_by(row)
    if when is None or row.verdict is Verdict.UNKNOWN:
        why = _SHORT_WHY.get(row.discard_after_why, row.discard_after_why)
        return _NO_DATE.get(why, why)
    if when != row.discard_after:
        return f"best {'today' if row.days_left == 0 else near_day(when, row.days_left)}"
    return f"eat by {'today' if row.days_left == 0 else safe_day(when, row.days_left or 0)}"


#: Why a row has no date, where that is no word for a list.
_NO_DATE = {"": "in doubt", "no limit": "in doubt"}


def safe_day(value: date, days: int) -> str:
    """`3 Feb`, with the year where it is far: never less than the day."""
    return short_day(value) if abs(days) > 300 else short_day(value).rsplit(" ", 1)[0]


#: A list this wide has a column for how much is left.
ROOMY = 68
#: Cells of a food and its method that no place takes from them.
_FOOD = 27
#: A food is named in no less than this for the sake of where it stands.
_NARROW_FOOD = 8


def due_columns(
    width: int, beside: str = "place", *, longest: int = CODE, named: int = 0
) -> tuple[Column, ...]:
    """The columns of a stock list, as many as `width` holds. `beside` the food stands its place,
    or its method alone in a list that is by place already. `longest`: the characters of the longest
    lid code; `named`: those of the longest name of a place, which has them where the food can spare
    them."""
    free = width - 2
    where = beside == "place"
    if width < ROOMY:
        return _narrow_columns(free, longest, where=where)
    worded, dated = width >= 100, width >= 130
    left = 12 if where else 15
    code = code_column(longest)
    fixed = (15 if worded else 2) + code.width + left + (28 if dated else 18)
    spare = min(named + 1, free - fixed - _FOOD)
    place = max(14, min(26, max(free // 6, spare))) if where else 0
    fixed += place
    columns = [Column("verdict", "verdict", 15) if worded else Column("mark", "", 2)]
    columns += [code, Column("food", "food, method", max(free - fixed, 12))]
    columns += [Column("left", "left", left)]
    columns += [Column("place", "where", place)] if where else []
    if dated:
        return (*columns, Column("best", "best by", 14), Column("safe", "discard after", 14))
    return (*columns, Column("until", "until", 18))


def _narrow_columns(free: int, longest: int, *, where: bool) -> tuple[Column, ...]:
    """Its lid code, which is what one types, what it is, where, until when. In very large letters
    on a phone its place goes, then of its name as much as must: a date that is cut off says
    another day."""
    mark, until = Column("mark", "", 2), Column("until", "until", 14)
    lid = Column("code", "lid", max(longest, 3) + 1)
    room = free - mark.width - lid.width - until.width
    place = 9 if room >= 9 + 13 else 8
    if where and room - place < _NARROW_FOOD:
        place -= 1
    if not where or room - place < _NARROW_FOOD:
        return (mark, lid, Column("food", "food", max(room, 4)), until)
    return (mark, lid, Column("food", "food", room - place), Column("place", "where", place), until)


def due_cells(row: DueRow, columns: Sequence[Column]) -> tuple[tuple[str, str], ...]:
    """The text of one row, clipped to its columns (one cell of air at the right), and what stands
    behind it, quieter: how the food is kept, its state, for whom it is reserved."""
    wide = next((column.width for column in columns if column.field == "food"), 40) - 1
    name, tail = food_and_method(row, wide)
    fields = {
        "mark": mark_of(row),
        "verdict": f"{mark_of(row)} {row.verdict.value}",
        "code": row.code,
        "count": what_is_left(row),
        "left": what_is_left(row),
        "place": leaf(row.place),
        "until": until(row),
        "best": short_best_day(row),
        "safe": short_last_day(row),
        # Where a row stands among the days of the week, its verdict takes the place of the day;
        # where the word has no room its mark stands alone, since half a word says another thing.
        "day": _whole(verdict(row.verdict), MARK[row.verdict], columns),
        "servings": "",
    }
    last = columns[-1]  # needs no cell of air
    return tuple(
        (name, tail)
        if column.field == "food"
        else (fields[column.field], "")
        if column.field in ("left", "count")  # fitted when it is painted, in the household's units
        else (keep_indent(fields[column.field], column.width - (column is not last)), "")
        for column in columns
    )


def _whole(word: str, mark: str, columns: Sequence[Column]) -> str:
    room = next((column.width for column in columns if column.field == "day"), 0) - 1
    return word if cell_len(word) <= room else mark


#: How a method is called where its whole name has no room.
_SHORT_METHOD = {
    Method.BOILING_WATER: "canned",
    Method.PRESSURE: "canned",
    Method.LACTIC: "ferment",
    Method.VINEGAR_FERMENT: "ferment",
    Method.ALCOHOL_FERMENT: "ferment",
    Method.VINEGAR_PICKLE: "pickle",
    Method.FRIDGE_PICKLE: "pickle",
    Method.INFUSION: "infusion",
    Method.CELLAR: "stored",
    Method.MEAL: "cooked",
    Method.BOUGHT: "bought",
    Method.HOT_SMOKED: "smoked",
    Method.COLD_SMOKED: "smoked",
}


#: Cells for a food, below which it has them for its name.
_NARROW = 16
#: As many cells of a name, or of for whom it is, tell anything.
_LEAST = 6


def methods_for(method: Method) -> tuple[str, ...]:
    """What a method may be called, the longest first, at last nothing."""
    short = _SHORT_METHOD.get(method, method.value)
    return tuple(dict.fromkeys((method.value, short, "")))


def food_and_method(row: DueRow, width: int) -> tuple[str, str]:
    """The food, and behind it how it is kept, its state where it is not sealed, for whom it is
    reserved. Where there is no room the method is called by a short word, then goes; the name
    gives way next, then the person, never the state."""
    food = clean(row.food)
    # In a very narrow list the heading says that it is open or thawed, the date that it is in
    # progress.
    room = _NARROW + 4 if row.state is State.IN_PROGRESS else _NARROW
    sealed = row.state is State.SEALED or width < room
    state = "" if sealed else row.state.value
    for method in methods_for(row.method):
        said = "" if method and method in food else method
        tail = "".join(f", {one}" for one in (said, state, row.aside) if one)
        if cell_len(food + clean(tail)) <= width:
            return food, clean(tail)
    behind = f", {state}" if state else ""
    spare = width - _LEAST - cell_len(behind) - 2
    if row.aside and spare >= _LEAST:
        behind += f", {clip(row.aside, spare)}"
    return clip(food, width - cell_len(behind)), behind


def caution(row: DueRow) -> str:
    """What to say under the list about food that must not be eaten; empty for all else."""
    if row.verdict not in UNFIT and row.verdict is not Verdict.UNKNOWN:
        return ""
    why = sentence(clean(row.reasons[0])) if row.reasons else ""
    said = CAUTION if cautioned(row.verdict, row.usable) else ""
    return f"{verdict(row.verdict)}: {row.code}. {why} {said}".strip()


def row_detail(row: DueRow) -> str:
    """One row in full, for the pane beside a wide list: what it is, where, until when, and why."""
    ids = ", ".join(row.container_ids[:8]) + (" …" if len(row.container_ids) > 8 else "")
    kept = ", ".join(filter(None, (row.method.value, row.state.value, clip(row.aside, 60))))
    lines = [
        f"{row.code}  {clip(row.food, 300)}",
        kept,
        f"{what_is_left(row).strip()}, {clip(row.place, 200)}",
        ids,
        *([f"left in {'each' if row.count > 1 else 'it'}: {row.amount}"] if row.amount else ()),
        "",
        said_verdict(row),
        f"best by        {best_or_why(row.good_until, row.why_no_best)}",
        f"discard after  {last_day(row.last_day, row.why_no_last_day)}",
        "",
        *map(clean, row.reasons),
    ]
    if cautioned(row.verdict, row.usable):
        lines += ["", CAUTION]
    return "\n".join(lines)


#: What to press next, by verdict.
_NEXT = {
    Verdict.DO_NOT_TASTE: "s says how to throw it away, d books it as discarded",
    Verdict.DISCARD: "d discards it",
    Verdict.EAT_SOON: "u uses one",
    Verdict.PAST_BEST: "u uses one; it is safe if sound",
    Verdict.NEEDS_CARE: "look at it; f when it is ready, s if it looks wrong",
    Verdict.UNKNOWN: "look at it; s records what you see",
    Verdict.SOUND: "u uses one, o opens one",
}


def next_step(row: DueRow) -> str:
    """What to do about it, with its key."""
    if row.verdict is Verdict.UNKNOWN and any("No process" in one for one in row.reasons):
        return "i records how it was canned"
    if ends(row):
        return f"u uses one: {until(row)}"
    return _NEXT[row.verdict]
