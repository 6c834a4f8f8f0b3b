"""Whole texts for pages: a batch, a reading, a sign, a power cut, a count. No textual here."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

from pantry_tui.app.draw.spans import bar
from pantry_tui.app.format import clip, day, last_day, leaf, verdict
from pantry_tui.app.rowtext import next_step, row_detail, what_is_left
from pantry_tui.core.amounts import kitchen_count
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.keeping.no_day import best_or_why, best_said, discarded
from pantry_tui.core.safety.caution import CAUTION, cautioned
from pantry_tui.core.text import agreed, clean, counted, singular
from pantry_tui.core.words import Verdict
from pantry_tui.services.batchwork.contents import assumed
from pantry_tui.services.batchwork.made_from import say_sources
from pantry_tui.services.batchwork.many import OneLine
from pantry_tui.services.books.rows import FoodYear, LossView
from pantry_tui.services.books.year_words import year_of_losses
from pantry_tui.services.rows import (
    BatchView,
    Difference,
    OutageRow,
    PutUp,
    PutUpReading,
    SignAnswer,
    Took,
)
from pantry_tui.services.stock.rows import DueRow

#: Verdicts of which the dates say enough where a line is typed.
_DATED = (Verdict.SOUND, Verdict.EAT_SOON, Verdict.PAST_BEST, Verdict.NEEDS_CARE)
#: Cells of the longest bar of the loss record.
LOSS_BAR = 12


def difference_text(found: Sequence[Difference], left: int) -> str:
    """What a count found otherwise."""
    head = "All counted."
    if left:
        head = (
            f"{counted(left, 'lines')} {agreed(left, 'is', 'are')} not counted yet; "
            f"{agreed(left, 'it stays as it is', 'they stay as they are')}."
        )
    lines = [
        f"{one.code or 'new':<5} {clip(one.food, 30)}: expected {one.expected}, "
        f"counted {one.seen}: {one.booked_as}{_slip(one)}"
        for one in found
    ]
    return "\n".join([head, "", *(lines or ["Everything counted is as expected."])])


def _slip(one: Difference) -> str:
    if one.ever is None:
        return ""
    return f", though {one.ever} {agreed(one.ever, 'was', 'were')} ever put up: a slip?"


def so_many(reading: PutUpReading) -> str:
    """ "4 half-pint jars", "1 × 6 quart crock", "12" eggs, "2 lb" of beef: two numbers never stand
    side by side."""
    vessel = " ".join(clean(f"{reading.size} {reading.container}").split())
    if not vessel and reading.contents is not None:
        return (
            f"{reading.count} × {reading.contents}" if reading.count > 1 else f"{reading.contents}"
        )
    between = " × " if vessel[:1].isdigit() else " "
    return f"{reading.count}{between}{vessel}".strip()


def why_not(made: PutUp) -> list[str]:
    """What stands against a batch as it is put up, its cause first; nothing where its dates say
    it all."""
    if made.verdict in _DATED:
        return []
    return [clean(one) for one in made.reasons if "is assumed for its place" not in one]


def _made(view: BatchView) -> str:
    return f"made {day(view.made)}" if view.made else "made nobody knows when"


def _dates_of(row: DueRow) -> str:
    last = discarded(row.last_day, row.why_no_last_day)
    return last if row.must_go else f"{best_said(row.good_until, row.why_no_best)}; {last}"


def batch_text(view: BatchView) -> str:
    """Everything known of one batch but its rows, under plain headings."""
    facts = [f"{view.method.value}; {view.group}, {view.acidity}; {_made(view)}"]
    facts += [f"{clean(key)}: {clean(value)}" for key, value in view.process]
    facts += [clean(view.note)] if view.note else []
    facts += [f"({view.note_aside})"] if view.note_aside else []
    dates = [
        f"{clean(f'{row.state} {row.aside}')}, {clip(row.place, 60)} "
        f"({', '.join(row.container_ids)}): {_dates_of(row)}"
        for row in view.rows
    ]
    why = dict.fromkeys(clean(reason) for row in view.rows for reason in row.reasons)
    care = [CAUTION] if any(cautioned(row.verdict, row.usable) for row in view.rows) else []
    parts = (
        ("What it is", facts),
        ("Rated", [clean(one) for one in view.tasted]),
        ("Dates", dates),
        ("Why", list(why)),
        ("Next", list(dict.fromkeys(map(next_step, view.rows)))),
        *((f"Step by step, {first}", list(map(clean, steps))) for first, steps in view.chain),
        ("Take care", list(dict.fromkeys([*care, *map(clean, view.cautions)]))),
        ("Other published views", [clean(one) for one in view.views]),
        ("Gone", [clean(one) for one in view.gone]),
        ("History", [clean(one) for one in view.history]),
        ("Sources", [clean(one) for one in view.sources]),
    )
    return "\n\n".join(
        heading + "\n" + "\n".join(f"  {line}" for line in lines)
        for heading, lines in parts
        if lines
    )


def pane_text(row: DueRow, view: BatchView) -> str:
    """A row in full with what its batch has beside it: where the others are, how it was made, how
    it was, what was done last, on what its dates rest."""
    others = [
        f"{what_is_left(one).strip()}, {one.state.value}, {clip(leaf(one.place), 40)}"
        for one in view.rows
        if one.container_ids != row.container_ids
    ]
    made = [f"{clean(key)} {clean(value)}" for key, value in view.process]
    parts = (
        ("Next", [next_step(row)]),
        ("Others of this batch", others),
        ("How it was made", [_made(view), *([", ".join(made)] if made else []), clean(view.note)]),
        ("How it was", [clean(one) for one in view.tasted[-2:]]),
        ("Last done", [clean(one) for one in reversed(view.history[-3:])]),
        ("Source", [clean(one) for one in view.sources[:1]]),
    )
    more = [
        "\n".join([heading, *(f"  {one}" for one in lines if one)])
        for heading, lines in parts
        if any(lines)
    ]
    return "\n\n".join([row_detail(row), *more])


def books_text(lost: LossView, years: Sequence[FoodYear]) -> str:
    """The loss record and the year of every food."""
    lines = [year_of_losses(lost.year), "", "What was lost, and why"]
    if lost.rows:
        lines.append(
            f"  {kitchen_count(lost.servings)} servings, {lost.share:.1%} of what was put up"
        )
    else:
        lines.append("  Nothing was discarded.")
    lines += [f"  ! {clean(one)}" for one in lost.changes]
    most = max((row.servings for row in lost.rows), default=0)
    lines += [
        line
        for row in lost.rows
        for line in (
            f"  {_bar(row.servings, most)} {kitchen_count(row.servings):>5}  {clip(row.food, 30)}, "
            f"{row.method}",
            f"{'':{LOSS_BAR + 10}}{row.containers} for {clip(row.why, 40)!r}, "
            f"{row.share:.1%} of it",
        )
    ]
    whole = max((one.servings for one in lost.seasons), default=0)
    lines += [""] if lost.seasons else []
    lines += [
        f"  {_bar(one.servings, whole)} {kitchen_count(one.servings):>5}  in {one.season}, "
        f"{one.share:.0%} of all lost"
        for one in lost.seasons
    ]
    lines += ["", "The year of each food, in containers, or as it is drawn from"]
    for year in years:
        end = day(year.end) if year.end else "today"
        unit = f" ({year.unit})" if year.unit else ""
        lines += [
            f"  {clip(year.food, 40)}, {day(year.start)} to {end}{unit}",
            f"    {year.opening:g} + {year.made:g} made - {year.given:g} given - "
            f"{year.lost:g} lost - "
            f"{year.unrecorded:g} unrecorded - "
            f"{year.repacked:g} repacked - {year.closing:g} left = {year.eaten:g} eaten",
        ]
        kept = [f"{year.reserved} of what is left reserved"] if year.reserved else []
        lines += [f"    {clean(one)}" for one in (*kept, *year.tasted)]
    return "\n".join(lines)


def _bar(part: float, most: float) -> str:
    """Servings lost as a bar from nought, the longest of so many cells."""
    return f"{bar(part / most if most else 0, LOSS_BAR, '#'):<{LOSS_BAR}}"


def sign_text(said: SignAnswer, shown_by: Sequence[str]) -> str:
    """What a sign on those containers means, what to do and where it must go."""
    parts = (
        ("What to do", said.do),
        ("How to throw it away", said.disposal),
        ("Why", said.reasons),
        ("Source", said.sources),
    )
    also = "".join(f" and {one}" for one in shown_by[1:])
    head = f"{said.code}{also}, {clip(said.sign, 100)}: {verdict(said.verdict)}"
    body = [
        heading + "\n" + "\n".join(f"  {clean(line)}" for line in lines)
        for heading, lines in parts
        if lines
    ]
    return "\n\n".join([head, *body])


def outage_text(rows: Sequence[OutageRow]) -> str:
    """Every item after a power cut, what must go on top; why is said once for items alike."""
    lines: list[str] = []
    for (action, reasons), alike in groupby(rows, key=lambda row: (row.action, row.reasons)):
        for number, row in enumerate(alike):
            head = "" if number else action
            lines.append(f"{head:<9} {row.count} of {row.code} {clip(row.food, 40)}")
        lines += [f"{'':12}{clean(one)}" for one in reasons]
    return "\n".join(lines) or "Nothing stood there then."


def lines_text(found: Sequence[OneLine]) -> str:
    """Many put-up lines: each with how it was read, or with what is wrong with it."""
    bad = sum(bool(one.why) for one in found)
    if bad:
        it = agreed(bad, "it where it", "them where they")
        head = f"{counted(len(found), 'lines')}, {bad} to mend: mend {it} came from, paste again."
    elif all(one.made is not None and one.made.code for one in found):
        head = f"{counted(len(found), 'batches')} {agreed(len(found), 'is', 'are')} put up. "
        head += f"Write the {agreed(len(found), 'code', 'codes')} on the lids."
    else:
        head = f"{counted(len(found), 'lines')}, all understood: Enter puts up all of them."
    return "\n".join([head, "", *(text for one in found for text in _one_line(one))])


def _one_line(one: OneLine) -> list[str]:
    read = one.reading
    count = " ".join(f"{read.count} {clean(read.size)} {clean(read.container)}".split())
    parts = (
        f"{count} {clip(read.food, 60) or '?'}",
        read.method.value if read.method else "?",
        clip(read.place, 60) or "?",
        day(read.made) if read.made else "day unknown",
    )
    code = one.made.code if one.made is not None else ""
    lines = [f"{one.number:>4} {code}{' ' if code else ''}{', '.join(parts)}"]
    return lines + ([f"     mend: {clean(one.why)}"] if one.why else [])


def reading_text(
    reading: PutUpReading, made: PutUp | None, refusal: str = "", was: Sequence[str] = ()
) -> str:
    """What a put-up line was understood as, line by line; `was`: how it was before."""
    lines = [
        f"food           {clip(reading.food, 200) or 'not said'}",
        f"method         {reading.method.value if reading.method else 'not said'}",
        f"how many       {so_many(reading)}",
        *([f"holds          {size}"] if (size := assumed(reading)) else []),
        f"place          {clip(reading.place, 200) or 'not said'}",
        f"made           {_made_on(reading)}",
    ]
    lines += [f"opened         {day(reading.opened)}"] if reading.opened else []
    if made is not None and made.made_from:
        lines += map(_taken, made.made_from)
    elif reading.sources:
        lines.append(f"from           {clip(say_sources(reading.sources), 200)}")
    lines += [f"{clip(key, 14):<14} {clip(value, 100)}" for key, value in reading.process]
    lines += [f"printed        {day(reading.printed)}"] if reading.printed else []
    lines += [f"note           {clip(reading.note, 200)}"] if reading.note else []
    if made is not None:
        lines += [
            f"best by        {best_or_why(made.good_until, made.why_no_best)}",
            f"discard after  {last_day(made.discard_after, made.discard_after_why)}",
            f"verdict        {verdict(made.verdict)}{made.unchecked}",
        ]
        lines += [f"why            {one}" for one in why_not(made)]
        lines += [f"take care      {clean(one)}" for one in made.cautions]
    if reading.unread:
        lines.append("not understood: " + ", ".join(clip(word, 60) for word in reading.unread))
    lines += [f"still needed:  {clean(one)}" for one in reading.problems]
    lines += [f"not possible:  {clean(refusal)}"] if refusal else []
    lines += ["", *(clip(one, 200) for one in was)] if was else []
    return "\n".join(lines)


def _made_on(reading: PutUpReading) -> str:
    """The day; of a month or a year that was said, that it is the first of it."""
    if reading.made is None:
        return "unknown"
    first = f" (the first day of {reading.made_in}: which day is not said)"
    return f"{day(reading.made)}{first if reading.made_in else ''}"


def said_of(made: PutUp) -> str:
    """ "4 half-pint jars strawberry jam", how it is kept where the food does not say it, and its
    state where that was said."""
    read = made.reading
    method = read.method.value if read.method else ""
    kept = "" if not method or method in read.food else f", {method}"
    one = so_many(read) == "1"
    state = "".join(f", {value}" for key, value in read.process if key == "state")
    state += ", open" if read.opened else ""
    return clean(f"{so_many(read)} {singular(read.food) if one else read.food}{kept}{state}")


def _taken(one: Took) -> str:
    left = f"{one.left or 'nothing'} left in it"
    return f"from           {one.took or 'all'} of {one.container}; {left}"


def booked_text(made: PutUp) -> str:
    """What was put up just now, and the code to write on it, unless it must go."""
    code = f"Lid code {made.code}" if made.verdict in UNFIT else f"Write {made.code} on every lid."
    return "\n".join(
        [
            code,
            "",
            said_of(made),
            f"place          {made.reading.place}",
            *map(_taken, made.made_from),
            f"best by        {best_or_why(made.good_until, made.why_no_best)}",
            f"discard after  {last_day(made.discard_after, made.discard_after_why)}",
            f"verdict        {verdict(made.verdict)}{made.unchecked}",
            *why_not(made),
            *made.cautions,
            *([made.note_aside] if made.note_aside else []),
            "",
            "The next one? Type its line; Ctrl+Z takes this one back.",
        ]
    )
