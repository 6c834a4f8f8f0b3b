"""Labels: for lids, of any size, round ones too, and for what is given away."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from html import escape

from pantry_tui.core import dates
from pantry_tui.core.canned import LIDDED, PROCESSED
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.keeping.limits import Judgement
from pantry_tui.core.model import Batch
from pantry_tui.core.safety import seals
from pantry_tui.core.safety.record import of_no_process
from pantry_tui.core.text import clean
from pantry_tui.core.words import Climate, Method, State, Verdict, at_work
from pantry_tui.errors import BadInput, PantryError, Refused
from pantry_tui.services.lookup.shelf_life import keeps
from pantry_tui.services.output.fitting import Piece, Size, fitted, least
from pantry_tui.services.output.page import page
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import Label
from pantry_tui.services.stock.pick import batch_named

IN_DOUBT = "IN DOUBT: do not open it, do not eat it."
#: The same of what is open already.
OPEN_IN_DOUBT = "IN DOUBT: do not eat it."
#: No longer as it was put up: that is said on the lid too.
_BEGUN = frozenset({State.OPEN, State.THAWED})
#: A gift label where no size is said.
GIFT = Size(90, 60)
_STYLE = (
    ".labels{display:grid;grid-template-columns:repeat(3,1fr);gap:.4em}"
    ".label{border:1px solid #444;padding:.5em;break-inside:avoid}.code{font-size:1.8em;"
    "font-weight:bold}@media print{.labels{font-size:8.5pt}.label{border-color:#000}}"
)
_CUT_STYLE = (
    "@page{margin:6mm}body{margin:0}.cuts{display:flex;flex-wrap:wrap;gap:2mm}"
    ".cut{box-sizing:border-box;border:.2mm solid #000;display:flex;flex-direction:column;"
    "justify-content:center;overflow:hidden;padding:0 1.2mm;line-height:1.2;break-inside:avoid;"
    "white-space:nowrap}.round{border-radius:50%;text-align:center;padding:0}"
    ".cut b{font-weight:bold}"
)


def labels(p: Pantry, codes: Sequence[str] = (), *, gift: bool = False) -> list[Label]:
    """One label a container that stands, for these codes or for every batch put up today. For a
    gift only what may be given. Raises BadInput, Refused where none may be."""
    if codes:
        batches = [batch_named(p, code) for code in codes]
    else:
        batches = [b for b in p.batches() if p.today in (b.made, b.booked)]
        if not batches:
            raise BadInput("Nothing was put up today: name the lid codes to print.")
    found = []
    for batch in batches:
        judged = [(one.state, p.judge(one)) for one in p.containers_of(batch) if one.here]
        fit = [(state, one) for state, one in judged if one.usable]
        if gift and not fit:
            raise Refused(_not_given(batch, [one for _, one in judged]))
        if not judged:
            raise Refused(
                f"{batch.code} {clean(batch.food.name)} gets no label: none of it stands."
            )
        found += [_label(p, batch, *one, gift=gift) for one in (fit if gift else judged)]
    return found


def _not_given(batch: Batch, judged: Sequence[Judgement]) -> str:
    name = f"{batch.code} {clean(batch.food.name)}"
    if not judged:
        return f"{name} gets no gift label: none of it stands."
    why = judged[0].reasons[0] if judged[0].reasons else f"{judged[0].verdict.value}."
    return f"{name} gets no gift label, since it may not be given: {why}"


def _label(p: Pantry, batch: Batch, state: State, judged: Judgement, *, gift: bool) -> Label:
    """What was opened or thawed says so. A best-by date that lies behind the discard date is left
    out: the earlier one counts; and of what is in doubt, or must go, no day is told that would say
    that it may be eaten until then."""
    best, safe = judged.best_by, judged.discard_after
    thrown = judged.verdict in UNFIT
    doubt = judged.verdict is Verdict.UNKNOWN and not judged.usable
    if doubt or thrown or (best and safe and safe < best):
        best = None
    process = _process(batch, judged)
    # A label stays on the lid: what is said until the seals are looked at stands on no label; nor
    # does twice that no process was recorded. What must not be eaten says why, and nothing beside.
    stays = [one for one in judged.standing if one not in (seals.FIRST, process)]
    if thrown or doubt:
        stays = [one for one in judged.reasons[:1] if one != process]
    return Label(
        batch.code,
        clean(batch.food.name),
        _method(batch, state),
        dates.say(batch.made) if batch.made else "unknown",
        _best(best, state, none="" if safe or doubt or thrown else "no published figure"),
        " ".join((_caution(batch, state, judged, doubt=doubt), *stays)),
        dates.say(safe) if safe and not (doubt or thrown) else "",
        process,
        _opened(p, batch) if gift else "",
    )


def _method(batch: Batch, state: State) -> str:
    """How it is kept, and what it is by now where it is not as it was put up, or not ready yet."""
    if state is State.IN_PROGRESS:
        return f"{batch.method.value}, {at_work(batch.method)}"
    return f"{batch.method.value}, {state.value}" if state in _BEGUN else batch.method.value


def _best(best: date | None, state: State, *, none: str) -> str:
    """The day that stands on the lid; what is in progress has none until it is ready."""
    if best is None:
        return "" if state is State.IN_PROGRESS else none
    return dates.say(best)


def _caution(batch: Batch, state: State, judged: Judgement, *, doubt: bool) -> str:
    """The one caution that must stand on the lid."""
    if judged.verdict in UNFIT:
        return f"{judged.verdict.value.upper()}."
    if doubt:
        return OPEN_IN_DOUBT if state is State.OPEN else IN_DOUBT
    if state is State.THAWED or (state is State.OPEN and batch.method in LIDDED):
        return "Keep cold."
    if batch.method in PROCESSED:
        return "Bulging or leaking: do not open."
    if batch.method is Method.IN_OIL:
        return "Keep cold; days only."
    if batch.method in (Method.FROZEN, Method.FREEZER_JAM):
        return "Thaw in the fridge."
    if batch.method.needs_cold:
        return "Keep cold."
    return "Mould or bad smell: discard."


def _process(batch: Batch, judged: Judgement) -> str:
    """ "25 minutes at 11 psi", or, as every screen says it, that it is not recorded or only in
    part; "" where there is none to record."""
    told = {name: clean(text) for name, text in batch.process}
    missing = next(filter(of_no_process, judged.standing), "")
    if missing or batch.method not in LIDDED or not told.get("minutes"):
        return missing
    at = f" at {told['psi']} psi" if told.get("psi") else ""
    return f"Processed {told['minutes']} minutes{at}."


def _opened(p: Pantry, batch: Batch) -> str:
    """How it is kept once it is open, in the fridge, by the strictest figure there is."""
    try:
        said = keeps(
            p.tables,
            batch.method.value,
            batch.food.name,
            climate=Climate.FRIDGE.value,
            state=State.OPEN.value,
        )
    except PantryError:  # a food of one's own, which no table knows
        return ""
    for kind, words in (("safety", "discard after"), ("quality", "best within")):
        span = said["published"][kind] if said["allowed"] else None
        if span and span[0]:
            return f"Once opened: keep it in the fridge, {words} {_span(span[0], span[2])}."
    return ""


def _span(number: float, unit: str) -> str:
    return f"{number:g} {unit.removesuffix('s')}{'' if number == 1 else 's'}"


def label_text(found: Sequence[Label]) -> str:
    """A few lines a label, an empty line between, for a label printer."""
    lines = (
        (f"{one.code}  {one.food}", one.method, f"made {one.made}", *_dates(one), *_below(one))
        for one in found
    )
    return "\n\n".join("\n".join(label) for label in lines) + "\n"


def _dates(label: Label) -> list[str]:
    found = [f"best by {label.best_by}"] if label.best_by else []
    return found + ([f"discard after {label.discard_after}"] if label.discard_after else [])


def _below(label: Label) -> list[str]:
    """What stands under the dates: only a process that is missing is said on every lid."""
    missing = label.process if of_no_process(label.process) or label.opened else ""
    return [one for one in (missing, label.opened, label.caution) if one]


def html(
    found: Sequence[Label], size: Size | None = None, *, gift: bool = False, roll: bool = False
) -> str:
    """A page of labels: of that size, else three across, a gift's half as wide. Raises BadInput."""
    if size is None and gift:
        size = GIFT
    return label_html(found) if size is None else sized_html(found, size, gift=gift, roll=roll)


def label_html(found: Sequence[Label]) -> str:
    """Three labels across."""
    body = "".join(
        f'<div class="label"><div class="code">{escape(one.code)}</div><b>{escape(one.food)}</b>'
        f"<br>{escape(one.method)}<br>made {escape(one.made)}<br>"
        f"{'<br>'.join(map(escape, (*_dates(one), *_below(one))))}</div>"
        for one in found
    )
    return page("Lid labels", f'<div class="labels">{body}</div>', _STYLE)


def sized_html(
    found: Sequence[Label], size: Size, *, gift: bool = False, roll: bool = False
) -> str:
    """Labels of that size, to cut out or to print on a sheet of them; on a roll each is a page of
    its own. Raises BadInput where the words do not fit: none of them is cut off."""
    body = "".join(_cut(_pieces(one, gift=gift), size, one) for one in found)
    style = _CUT_STYLE
    if roll:
        style += (
            f"@page{{size:{size.width:g}mm {size.height:g}mm;margin:0}}.cuts{{display:block}}"
            ".cut{border:0;break-after:page}"
        )
    return page("Labels", f'<div class="cuts">{body}</div>', style, headed=False)


def _pieces(label: Label, *, gift: bool) -> list[Piece]:
    """What stands on it, in order; of a gift also by whom, and what is in it, by hand."""
    made = f"{label.method}, made {label.made}"
    below = [Piece(one) for one in (*_dates(label), *_below(label))]
    if not gift:
        head = [Piece(label.code, 1.7), Piece(label.food, 1.2)]
        return [*head, Piece(label.method, optional=True), Piece(f"made {label.made}"), *below]
    by_hand = [Piece("Made of ____________________"), Piece("From ____________________")]
    return [Piece(label.food, 1.5), Piece(made), *below, *by_hand, Piece(f"Lid code {label.code}")]


def _cut(pieces: Sequence[Piece], size: Size, label: Label) -> str:
    laid = fitted(pieces, size)
    if laid is None:
        more = least(pieces, size)
        across = f"round {more.width:g}mm" if size.round else f"{more.width:g}x{more.height:g}mm"
        raise BadInput(
            f"What must stand on the label of {label.code} {label.food} has no room there: "
            f"take {across} or more."
        )
    lines = "".join(
        f'<div style="font-size:{scale:g}em">'
        f"{f'<b>{escape(text)}</b>' if scale > 1 else escape(text)}</div>"
        for text, scale in laid.lines
    )
    return (
        f'<div class="cut{" round" if size.round else ""}" style="width:{size.width:g}mm;'
        f'height:{size.height:g}mm;font-size:{laid.type_mm:g}mm">{lines}</div>'
    )
