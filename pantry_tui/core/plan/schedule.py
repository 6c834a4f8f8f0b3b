"""Which containers to open this week, so that the fewest servings pass their date; and which next.

Ask of every food: how many weeks can it still wait? Take its dates one by one. Until a date there
are so many weeks (days away do not count, guests count more); what falls due by then takes so
many weeks to eat, at the most the household eats of that food in a week. What is left over are
*weeks to spare*, and the date with the fewest speaks for the food. Thirty servings of beans due
in twelve weeks, at three a week, have two weeks to spare; two of peas due in six have more than
five: the beans come first though the peas are older. Strict earliest-date-first does not see
that, and is left with a pile that nobody can eat in time. What cannot be saved any more, at the
most that is eaten in a week, does not press: nearer dates must not wait for it.

The food with the fewest weeks to spare gives a container, the next to be eaten; its pile is
smaller then, so another food may be next. Only where more than a fortnight is to spare, a food
comes sooner by the weeks that it is behind its pace (core/plan/shares.py), and later by those that
it is ahead, counted with what of it is on the table already: half a jar a week comes every other
week, and the week is not beans only. So it goes on until the week is full; where nothing presses,
only until each group has its share, at which it lasts until more comes.

A container is opened only if it can be finished in time: one that keeps three days may be begun at
the end of the week, so a third of it has to find room this week and the rest in the next. Not a
big jar on the day before leaving, then, unless it would be past its date on the return.

The list does not end with the week: what more one might open comes after it, in the same order, so
that the table decides how much is eaten. Last comes what a group that has given its share keeps.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import accumulate, chain
from math import ceil, inf
from typing import NamedTuple

from pantry_tui.core.plan.appetite import STAPLES
from pantry_tui.core.plan.pace import CRUMB, FAR, Credit
from pantry_tui.core.plan.room import Ceilings, Lot, Room
from pantry_tui.core.words import Role

#: Weeks that a food waits when a week's fill of it is on the table already; for variety. Of 3 to 45
#: the losses are the same in made-up households; above 9 a food that is ahead of its pace comes
#: again before another that lies there has been begun twice.
AGAIN = 9.0
#: With more weeks to spare than this a food can wait: for its pace, for variety, to make its group
#: last. Of 1 to 4 the losses are the same; less of it gives more kinds of food a week.
CALM = 2.0
#: What has no date counts as due so many weeks after there is more of it, and has so many weeks to
#: spare at least: it waits for what presses. Of 5 to 15 whatever stands has its turn.
_AFTER, _NO_HASTE = 5, CALM + 1.0
#: What would be so many weeks of all that is eaten of its kind is not begun but in the last SOON
#: weeks before its date. Common practice, no source.
TOO_MUCH, SOON = 2.0, 4
#: Of a side or fruit that can wait a week has no more than so many days, or as many as its pace
#: asks for. Our own choice.
OFTEN = 4.0
#: Raw fruit comes more often than is usual where there is so many times as much of it as is eaten
#: by its date: an apple a day rather than a jar of pears that keeps. Our own choice.
MUCH = 1.5
#: So many containers of one food are named beyond the week.
A_FEW = 4
#: The week of what nothing hurries: after all others.
_UNDATED = FAR + 1


class Opening(NamedTuple):
    """A container to open, as its place in the lots, and the weeks its food had to spare; `kept` is
    what its group needs to last until more comes."""

    lot: int
    spare: float
    kept: bool = False


def choose(
    lots: Sequence[Lot],
    ceilings: Ceilings,
    coming: Sequence[float] = (),
    already: Sequence[Lot] = (),
    shares: Mapping[str, float] | None = None,
    credits: Mapping[str, Credit] | None = None,
) -> tuple[list[Opening], Iterator[Opening]]:
    """The containers to open this week, the most pressing first; of one food in the order given,
    which is the order of eating, unless one would be lost by it. What is past its last week is
    passed over. And others, in the order in which they would come if more is wanted; last those
    that are kept.

    `coming` is what the household knows of this week and the next ones as a multiple of its usual
    table: 0 away, 1.5 guests; weeks beyond are usual ones. `already` is on the table in any case
    and takes its room: what is open, thawed or pinned. `shares` are the servings that a group gives
    this week while nothing presses; a group without one gives what there is room for. `credits`
    say how far each food is behind its pace.
    """
    choice = _Choice(lots, ceilings, coming, already, shares or {}, credits or {})
    return list(choice.week()), choice.more()


class _Choice:
    """What stands of each food, and what is chosen of it."""

    def __init__(
        self,
        lots: Sequence[Lot],
        ceilings: Ceilings,
        coming: Sequence[float],
        already: Sequence[Lot],
        shares: Mapping[str, float],
        credits: Mapping[str, Credit],
    ) -> None:
        self.lots, self.ceilings = lots, ceilings
        self.shares, self.credits = shares, credits
        self.table = Room(ceilings, coming[0] if coming else 1.0)
        self.after = Room(ceilings, coming[1] if len(coming) > 1 else 1.0)
        self.clock = list(accumulate([*coming, *[1.0] * (FAR + 1)][: FAR + 1]))
        self.due = [_UNDATED if lot.last is None else min(lot.last, FAR) for lot in lots]
        self.meals: dict[str, float] = defaultdict(float)
        self.given: dict[str, float] = defaultdict(float)  # of each group's share
        for lot in already:
            self._eat(lot, anyway=lot.last == 0)
        self.piles: dict[str, list[int]] = defaultdict(list)
        for i, lot in enumerate(lots):
            if self.due[i] >= 0:
                self.piles[lot.food].append(i)
        for food in [food for food in self.piles if ceilings.of_food(food) <= 0]:
            del self.piles[food]
        self.dated = {
            food: sorted(pile, key=lambda i: (self.due[i], lots[i].servings))
            for food, pile in self.piles.items()
        }
        self.falls = {food: self._falls(pile) for food, pile in self.dated.items()}
        self.more_in = {food: max(0, min(FAR, one.harvest)) for food, one in credits.items()}
        self.spare = {food: self._spares(food) for food in self.piles}

    def week(self) -> Iterator[Opening]:
        """As long as there is room, and each group's share where nothing presses. Of fruit that
        softens there may be more than is usual, rather than one that would keep."""
        foods = set(self.piles)
        softens: list[str] = []
        while foods:
            food = min(foods, key=self._turn)
            one = self._next(food)
            if one is None or (self._waits(food) > CALM and self._no_more(self.lots[one])):
                foods.remove(food)
                softens += [food] if one is None and self._softens(food) else []
                continue
            instead = self._waits(food) > CALM and self.lots[one].role == Role.FRUIT and softens
            if instead:
                food, one = instead[0], self.piles[instead[0]][0]
            yield self._take(food, one, anyway=bool(instead))
            if not self.piles[food]:
                foods.discard(food)
            if food in softens and not self._softens(food):
                softens.remove(food)

    def _softens(self, food: str) -> bool:
        """Whether it is fruit out of a crate of which much would be lost, and no more than one a
        head lies on each day."""
        pile = self.piles[food]
        if not pile or not self.lots[pile[0]].softens or self._waits(food) > CALM:
            return False
        lot = self.lots[pile[0]]
        usual = self.ceilings.of_food(food) * self.clock[min(FAR, self.due[pile[0]])]
        most = self.ceilings.role.get(lot.role, inf) * self.table.factor
        much = sum(self.lots[i].servings for i in pile) > MUCH * usual
        return much and self.table.laid[food] + lot.servings <= most + CRUMB

    def more(self) -> Iterator[Opening]:
        """Whatever else there is, in the order in which it would come: a few of each food, as
        nobody wants more of one in a week; then what is kept; then of mains what makes up a week's
        meals where no others stand."""
        left = {food: min(len(pile), A_FEW) for food, pile in self.piles.items() if pile}
        later = {}
        while left:
            food = min(left, key=self._turn)
            if self._waits(food) > CALM and self._enough(self.lots[self.piles[food][0]]):
                later[food] = left.pop(food)
            else:
                yield self._one_more(food, left)
        kept = set(later)
        while later:
            yield self._one_more(min(later, key=self._turn), later)._replace(kept=True)
        left = {food: n for food, pile in self.piles.items() if (n := self._meals_more(pile))}
        while left:
            food = min(left, key=self._turn)
            yield self._one_more(food, left)._replace(kept=food in kept)

    def _meals_more(self, pile: Sequence[int]) -> int:
        """How many more of a pile of mains than a few a week's meals take."""
        if not pile or self.lots[pile[0]].role != Role.MAIN:
            return 0
        meals = self.ceilings.role.get(Role.MAIN, 0.0)
        enough = ceil(meals / max(1.0, self.lots[pile[0]].servings))
        return max(0, min(len(pile), enough - A_FEW))

    def _one_more(self, food: str, left: dict[str, int]) -> Opening:
        left[food] -= 1
        if not left[food]:
            del left[food]
        return self._take(food, self.piles[food][0])

    def _take(self, food: str, one: int, *, anyway: bool = False) -> Opening:
        opening = Opening(one, self.spare[food])
        self.piles[food].remove(one)
        self.dated[food].remove(one)
        self._off(self.falls[food], one)
        self._eat(self.lots[one], anyway=anyway)
        self.spare[food] = self._spares(food)
        return opening

    def _eat(self, lot: Lot, *, anyway: bool = False) -> None:
        """Puts it on the table; what finds no room there is for the next week, or, where it is
        eaten `anyway`, in the place of another main, side or fruit."""
        self.table.laid[lot.food] += lot.servings
        self.meals[lot.food] += lot.meals
        eaten = self.table.eat(lot, lot.servings)
        over = lot.servings - eaten
        if lot.food not in STAPLES:
            self.given[lot.group] += eaten
        if anyway:
            self.table.role[lot.role] += over
        else:
            self.after.eat(lot, over)

    def _turn(self, food: str) -> tuple[float, float, float, int, str]:
        """Of those that wait alike, to the day or so, the nearest date comes first; of those that
        press the one of which less is on the table."""
        weeks = sooner = self._waits(food)
        if weeks > CALM and food in self.credits:
            sooner -= self.credits[food].weeks(self.table.laid[food])
            weeks = max(CALM, sooner)
        hurries = weeks <= CALM
        laid = round(self.table.laid[food] / self.ceilings.of_food(food), 1) if hurries else 0.0
        return round(weeks, 1), round(sooner, 1), laid, self.due[self.dated[food][0]], food

    def _waits(self, food: str) -> float:
        weeks = self.spare[food]
        if weeks <= CALM:
            return weeks
        return weeks + AGAIN * self.table.laid[food] / self.ceilings.of_food(food)

    def _spares(self, food: str) -> float:
        """Weeks to spare of a food, all of it, by date; an empty pile has no end of them. What has
        no date is not lost, and has its turn among the others until there is more of it."""
        ceiling, due, least = self.ceilings.of_food(food), 0.0, inf
        for week, servings in self.falls[food].items():
            if week == _UNDATED:
                whole = sum(chain.from_iterable(self.falls[food].values()))
                weeks = self.clock[self.more_in.get(food, FAR)] + _AFTER
                return min(least, max(_NO_HASTE, weeks - whole / ceiling))
            weeks = self.clock[week]
            due = min(sum(servings, due), ceiling * weeks)
            least = min(least, weeks - due / ceiling)
        return least

    def _falls(self, dated: Iterable[int]) -> dict[int, list[float]]:
        """The servings of a pile by the week in which they fall due, the nearest first."""
        found: dict[int, list[float]] = defaultdict(list)
        for i in dated:
            found[self.due[i]].append(self.lots[i].servings)
        return found

    def _off(self, falls: dict[int, list[float]], one: int) -> None:
        due = self.due[one]
        falls[due].remove(self.lots[one].servings)
        if not falls[due]:
            del falls[due]

    def _next(self, food: str) -> int | None:
        """The next of it that can be opened: in the order of eating, unless another of it would be
        lost by that."""

        def first(pile: Iterable[int]) -> int | None:
            full: set[tuple[str, str]] = set()  # of one food there is no room for any of a kind
            for i in pile:
                lot = self.lots[i]
                if (lot.group, lot.role) in full:
                    continue
                if self.table.free(lot) <= CRUMB:
                    full.add((lot.group, lot.role))
                elif _opens(lot, self.table, self.after):
                    return i
            return None

        one = first(self.piles[food])
        if one is None or one == self.dated[food][0]:
            return one
        taken = self.table.food[food] + self.lots[one].servings
        waits = taken / self.ceilings.of_food(food) <= self.spare[food]
        if waits:
            return one
        found = first(self.dated[food])
        if found is None or self.due[found] <= SOON:
            return found
        # Nothing near: the first in is the first out, though it is past its best and has no date.
        return first(i for i in self.piles[food] if i == found or self._like(i, found))

    def _like(self, one: int, other: int) -> bool:
        """Whether one without a date is as good for a meal as another."""
        mine, its = self.lots[one], self.lots[other]
        if self.due[one] != _UNDATED:
            return False
        return (mine.servings, mine.role, mine.group) == (its.servings, its.role, its.group)

    def _no_more(self, lot: Lot) -> bool:
        """Whether its group has given its share, or it lies on enough days for variety."""
        if self._enough(lot) or not lot.meals:
            return self._enough(lot)
        credit = self.credits.get(lot.food)
        pace = credit.rate * lot.meals / lot.servings if credit is not None and lot.servings else 0
        return self.meals[lot.food] + lot.meals / 2 > max(OFTEN, pace) + CRUMB

    def _enough(self, lot: Lot) -> bool:
        if lot.food in STAPLES:
            return False
        share = self.shares.get(lot.group, inf)
        return self.given[lot.group] + lot.servings / 2 > share + CRUMB


def _waits_for_guests(lot: Lot, ceilings: Ceilings) -> bool:
    """Whether it is a whole bird that would be all of the mains for weeks: until its date is near
    it waits for a day on which many sit there."""
    much = lot.servings > TOO_MUCH * ceilings.role.get(lot.role, inf)
    return much and (lot.last is None or lot.last > SOON)


def _opens(lot: Lot, table: Room, after: Room) -> bool:
    """Whether it may be eaten, its share has room this week, and the rest in time (or else it is
    lost). What two usual weeks could not finish comes when none of its food is on the table."""
    free = table.free(lot)
    if free <= CRUMB or lot.days < 0:  # what may not be eaten once it is open
        return False
    if _waits_for_guests(lot, table.ceilings):
        return False
    if lot.servings > 2 * table.ceilings.of(lot):
        return not table.food[lot.food]
    if free < lot.servings * lot.share - CRUMB:
        return False
    rest = lot.servings - free
    return rest <= after.free(lot) + CRUMB or lot.last == 0 or lot.days >= 14
