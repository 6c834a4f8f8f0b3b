"""What stands for bought food: the date on its pack, published days, or nothing."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from pantry_tui.core import scope
from pantry_tui.core.canned import LIDDED
from pantry_tui.core.keeping.cases import Said
from pantry_tui.core.keeping.harm import (
    GREENS,
    SOLD_DRY,
    can_hurt,
    is_tin,
    is_vacuum_packed,
    is_wet_pack,
    kept_as,
)
from pantry_tui.core.keeping.packs import SHELF_PACK, packed
from pantry_tui.core.keeping.printed import (
    date_stands_alone,
    days_cover,
    ends_with_its_days,
)
from pantry_tui.core.keeping.rules import Rule, Rulebook, closeness
from pantry_tui.core.keeping.sold import SOLD, Sold, opened_dry, sold
from pantry_tui.core.keeping.spans import Span
from pantry_tui.core.model import Batch
from pantry_tui.core.safety.outage import keeps_without_cold
from pantry_tui.core.safety.values import says
from pantry_tui.core.words import Climate, Kind, Method, State


class Shop:
    """A bought batch as a judge sees it; nothing of this speaks of what was put up at home."""

    def __init__(self, batch: Batch, book: Rulebook) -> None:
        self.batch, self.sold = batch, sold(batch, book)
        self.hurts = can_hurt(batch)
        self.method = kept_as(batch)
        if self.sold is Sold.SHELF and self.method in (Method.FRESH, Method.MEAL):
            # Figures for raw and cooked food do not reach what stands on a shop's shelf.
            self.method = Method.BOUGHT
        self.heard = self._heard()
        seen = says(batch.process, SOLD, "shelf") or is_tin(batch) or batch.food.name in SOLD_DRY
        # The power-cut table throws greens away as they are sold, since some are cut.
        perhaps = batch.food.group in GREENS or "rice" in batch.food.classes
        self._perhaps_chilled = perhaps and not seen
        bought = self.sold is not Sold.OWN
        self._keeps_out = bought and keeps_without_cold(batch.food, batch.method, book.cuts())
        self._dry = opened_dry(batch, book)
        self._food = packed(batch.food, batch, opened=False)
        self._shelf_pack = self.sold is Sold.SHELF and SHELF_PACK in self._food.classes

    def _heard(self) -> tuple[Method, ...]:
        """Other methods under which a household's own rule for it may be booked: once that was the
        method it was bought by, and it goes by the food alone, whatever its pack."""
        if self.sold is Sold.OWN:
            return ()
        plain = Batch("", "", self.batch.food, Method.BOUGHT, None)
        found = dict.fromkeys((Method.BOUGHT, kept_as(plain), kept_as(self.batch)))
        return tuple(one for one in found if one is not self.method)

    def stands(self, span: Span, state: State) -> bool:
        """Whether it may stand out of the cold, as far as anybody knows: no rule for food that
        perishes there reaches it, and unless a figure speaks for it, it is unknown."""
        if span.climate.is_cold:
            return False
        shut = state is State.SEALED and self.sold in (Sold.SHELF, Sold.EITHER)
        dry = state is State.OPEN and self._dry
        return shut or dry or self._keeps_out

    def held_cold(self, span: Span, state: State) -> bool:
        """Whether warmth counts against it there: what is kept cold, and what is opened."""
        if self.sold is Sold.SHELF and state is State.SEALED:
            # A bag of carrots may be of cut ones, a jar of beets one that was sold cold, and rice
            # in a refrigerator cooked.
            return span.climate.is_cold and self._perhaps_chilled
        opened = self.sold is not Sold.OWN and self.hurts and state is not State.SEALED
        return span.climate.is_cold or self.sold is Sold.COLD or opened

    def moist(self, state: State) -> bool:
        """Whether it has two hours in the warm also where no row of a table names it; a pouch of
        cooked pulses once it is open, whichever they are."""
        if state is not State.SEALED and is_wet_pack(self.batch):
            return True
        return self.sold is Sold.COLD or (self.sold is Sold.EITHER and state is not State.SEALED)

    def found(self, span: Span, state: State, said: Said) -> Sequence[Rule]:
        """The rules that reach it."""
        if not self.stands(span, state):
            return said.found
        return [rule for rule in said.found if rule.kind is not Kind.REFUSE]

    def speaks(self, span: Span, state: State, said: Said) -> bool:
        """Whether anything stands for it, in a state and place of its life."""
        shut, warm = state is State.SEALED, not span.climate.is_cold
        if shut and warm and self.sold is not Sold.SHELF:
            return False  # nobody said that it stood on a shelf
        printed = shut and self.batch.printed is not None
        if not self.hurts:
            if state is State.OPEN and said.refusal is not None and self.stands(span, state):
                # The table of power cuts keeps it for as long as a cut lasts. To stand open there
                # is another matter: that nobody publishes.
                return False
            here = (shut and (warm or self._shelf_pack)) or state is State.OPEN
            wide = said.wide is not None and here
            return printed or said.covered or said.refusal is not None or wide
        if self.method in LIDDED and span.climate is Climate.FREEZER:
            # What its maker printed on a tin does not speak of one that froze.
            return False
        if printed and (date_stands_alone(self.batch, self.sold) or span.frozen):
            return True
        if days_cover(said.safety, self._food):
            return True
        return self._shelf(said, warm) if shut else any(True for _ in self.last_days(state, said))

    def _shelf(self, said: Said, warm: bool) -> bool:
        """A shut pack on a shelf is safe while it is whole: how good it is, is all that is
        published (USDA FSIS, Shelf-Stable Food Safety)."""
        if is_vacuum_packed(self.batch) and not is_tin(self.batch):
            return False  # low in acid and without air: no figure for a loose pack speaks of it
        wide = said.wide is not None and (warm or self._shelf_pack)
        return self.sold is Sold.SHELF and (said.covered or wide)

    def last_days(self, state: State, said: Said) -> Iterator[Rule]:
        """The days of an opened pack, and of a shut one in oil that has no date, taken as its end
        where they are all that is published, or fewer than those of its class: the table names
        just this food."""
        opened = self.sold is not Sold.OWN and self.hurts and state is State.OPEN
        opened = opened and not is_wet_pack(self.batch)  # the table speaks of dry ones
        shut = self.sold is Sold.SHELF and state is State.SEALED
        undated = shut and self.batch.printed is None and ends_with_its_days(self.batch)
        mine = opened or undated
        if not mine or said.wide is None:
            return
        rule = said.wide.rule
        wider = (one for one in said.safety if closeness(one, self._food) < scope.ITSELF)
        if not days_cover(said.safety, self._food) or any(rule.days < one.days for one in wider):
            yield rule
