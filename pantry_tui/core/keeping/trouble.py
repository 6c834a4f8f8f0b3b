"""What takes food outside the published figures: no figure at all, too warm, too cold."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from pantry_tui.core.canned import LIDDED
from pantry_tui.core.dataclass import dataclass
from pantry_tui.core.keeping.cases import Said, Told
from pantry_tui.core.keeping.exposure import Span
from pantry_tui.core.keeping.harm import can_hurt, kept_as
from pantry_tui.core.keeping.power import united
from pantry_tui.core.keeping.rules import Rule, Rulebook
from pantry_tui.core.keeping.weather import FOREVER, THAWS_F
from pantry_tui.core.model import Batch, Crop
from pantry_tui.core.safety.outage import keeps_opened
from pantry_tui.core.words import Climate, Kind, Method, State

#: Jars with a vacuum seal stand at 50 to 70 °F; above 95 °F they lose quality in weeks to months
#: and may spoil, frozen they may lose the seal (USDA AIB 539, storing canned food). No number.
CANNED_MAX_F, CANNED_MIN_F = 95.0, 32.0
#: The source in data/sources.csv of what is this program's stricter choice alone.
OUR_READING = "house-reading"


#: Of meat and fish under salt: how long they take is published by their thickness alone (NCHFP,
#: Curing and Smoking Meats for Home Food Preservation; from memory).
CURED_THROUGH = (
    " Whether it is cured through goes by its thickness and its recipe, which are not known here: "
    "it is not offered, ready or not. Eat it by what that recipe says, or not at all."
)


@dataclass(frozen=True, slots=True)
class Trouble:
    """A sentence and the rules it rests on."""

    text: str
    rules: tuple[Rule, ...] = ()


def trouble(batch: Batch, span: Span, said: Said, book: Rulebook) -> Trouble | None:
    """What the warmth of a span does that no figure covers, or None. What is unsafe there is
    reckoned elsewhere."""
    warm = span.temperature_f
    if said.coldest is not None:
        if said.perishable or warm <= said.coldest:
            return None
        how = "Read" if span.measured else "Set"
        return Trouble(
            f"{how} at {warm:g} F, above {said.coldest:g} F: warmer than the published figures."
        )
    if span.climate.is_cold:
        return None
    if kept_as(batch) in LIDDED:
        return _canned(warm)
    crop = book.crops.get(batch.food.name) if batch.method is Method.CELLAR else None
    return _cold_crop(warm, crop) if crop is not None else None


def nothing_against(batch: Batch, state: State, refusal: Rule, book: Rulebook) -> bool:
    """Whether no publication is behind a refusal of what was opened and cannot hurt, and the table
    of power cuts keeps such food however long it was warm: nobody knows, then, how good it is."""
    ours = state is State.OPEN and refusal.source == OUR_READING
    return ours and not can_hurt(batch) and keeps_opened(batch.food, batch.method, book.cuts())


def no_figure(batch: Batch) -> str:
    """How the sentence begins where there is none for its state in such a place."""
    return f"No published figure for {batch.food.name} ({batch.method})"


def frozen_in_time(told: Told, running: Iterable[object]) -> bool:
    """Whether it stands in a freezer that freezes, of which no figure speaks, while a last day of
    its own runs: what is frozen in time stays safe (USDA FSIS, Freezing and Food Safety), and that
    day is neither moved nor taken away by it."""
    span, state, said = told
    states = (State.SEALED,) if state is State.SEALED else (State.SEALED, State.OPEN)
    frozen = span.climate is Climate.FREEZER and span.temperature_f <= THAWS_F
    if not frozen or state not in (State.SEALED, State.OPEN) or said.refusal is not None:
        return False
    own = (rule for rule in running if isinstance(rule, Rule))
    return any(rule.kind is Kind.SAFETY and rule.state in states for rule in own)


def nothing_published(
    batch: Batch, state: State, climate: Climate, found: Sequence[Rule], came: Climate | None = None
) -> Trouble:
    """No figure for this state in this climate; of what was bought in and `came` into a freezer at
    once, how its record is put right."""
    mend = ""
    both = climate is Climate.FREEZER and came is climate
    shut = both and state is State.SEALED and bool(batch.code)
    if shut and batch.method is Method.BOUGHT and kept_as(batch) not in LIDDED:
        mend = f" Frozen food has figures: put it right, `correct {batch.code} --method frozen`."
    if state is State.IN_PROGRESS and batch.method is Method.SALTED and climate.is_cold:
        mend = CURED_THROUGH
    return Trouble(f"{no_figure(batch)}, {state} in a {climate}.{mend}", tuple(found))


def _canned(warm: float) -> Trouble | None:
    if warm > CANNED_MAX_F:
        return Trouble(
            f"Stood at {warm:g} F: above 95 F canned food may spoil, and no number is published."
        )
    if warm < CANNED_MIN_F:
        return Trouble(
            f"Stood at {warm:g} F: frozen jars may lose their seal, so look at each one; no "
            "number is published."
        )
    return None


def _cold_crop(warm: float, crop: Crop) -> Trouble | None:
    if crop.freezing_f is not None and warm < crop.freezing_f:
        return Trouble(
            f"Stood at {warm:g} F: below {crop.freezing_f:g} F it freezes; use what is firm at "
            "once, no figure is published."
        )
    if crop.chilling_f is not None and warm < crop.chilling_f:
        return Trouble(
            f"Stood at {warm:g} F: below {crop.chilling_f:g} F it is hurt by cold, and no figure "
            "is published."
        )
    return None


def lasting(
    bare: Sequence[tuple[Span, Trouble]],
    warm: Sequence[tuple[int, int]],
    now: int,
    least: int,
    *,
    hurts: bool,
) -> list[Trouble]:
    """A passage counts where it lasted: over `least` minutes (two hours of what can hurt or of an
    opened jar, a day of all else), any time in the cold of what can hurt; where it stands now
    always counts. `warm`: when it was out of the cold before or after, no new beginning of it."""
    spells = [*((one.start, one.end) for one, _ in bare), *warm]
    passed = united((start, min(end, now)) for start, end in spells)
    return [
        wrong
        for span, wrong in bare
        if span.end >= FOREVER
        or passed > least
        or (hurts and span.climate.is_cold and span.end > span.start)
    ]
