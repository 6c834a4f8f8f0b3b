"""What to eat this week, within the household's appetite (core/plan/appetite.py). In this order:

1. what the household itself has put on a day,
2. what is open or thawed: its clock runs, so it goes even above a ceiling,
3. dishes of the household's own that take mostly what should go,
4. what must be discarded by the end of the week, whatever the ceilings (core/plan/lost.py);
5. what has the fewest weeks to spare: it passes its best, or is so much that it must be begun
   though others fall due sooner; then foods behind their pace (core/plan/schedule.py, shares.py);
6. for a day without a main the next that it could have, for one without anything of the garden
   some of that, though it should last (core/plan/plate.py); a week is never empty.

What is no meal by itself (core/plan/roles.py) comes in a dish, or when it must be used up. Beside
the days one relish and one spread are opened at a time. What comes next is `more`.

Containers are whole, as opening one ties it up; from bulk a meal's portion is taken. Which day
each comes on: core/plan/days.py. Pure.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterator, Sequence
from datetime import date
from itertools import chain, count
from math import ceil

from pantry_tui.core.dataclass import replace
from pantry_tui.core.plan.appetite import Appetite
from pantry_tui.core.plan.balance import balanced, change_places, left_for_later, settle
from pantry_tui.core.plan.beside import eaten_up
from pantry_tui.core.plan.coming import what_comes
from pantry_tui.core.plan.cooked import Kitchen, worth_cooking
from pantry_tui.core.plan.days import Chosen, Table, begun_on, spread, while_open
from pantry_tui.core.plan.guests import awaited, beside_it, for_guests, may_come, second
from pantry_tui.core.plan.lots import by_itself, discarded_by, due_by, in_parts, in_turn, parts
from pantry_tui.core.plan.menu import Candidate, Dish, Menu, Needs, Why, Wishes
from pantry_tui.core.plan.plate import is_meal, more_mains, would_do
from pantry_tui.core.plan.roles import A_HEAD
from pantry_tui.core.plan.running import once_more, parted
from pantry_tui.core.plan.schedule import CALM
from pantry_tui.core.words import Role


def plan(
    candidates: Sequence[Candidate],
    appetite: Appetite,
    start: date,
    needs: Needs,
    wishes: Wishes | None = None,
    dishes: Sequence[Dish] = (),
    length: int = 7,
) -> Menu:
    """`length` days from `start`. Candidates come in eating order, without unfit ones."""
    asked = wishes or Wishes()
    table = Table(appetite, start, asked.out, length)
    week = _Week(table, asked, [table.at_home(one) for one in candidates], needs)
    week.kept()
    week.running()
    week.cook(dishes)
    week.guests()
    week.fill()
    week.complete()
    return week.menu()


class _Week:
    """What is chosen, step by step, from what stands in `free`."""

    def __init__(
        self, table: Table, wishes: Wishes, candidates: Sequence[Candidate], needs: Needs
    ) -> None:
        self.table, self.wishes, self.needs = table, wishes, needs
        self.appetite = table.appetite
        kinds = {(one.food, one.group) for one in candidates if one.food not in wishes.left_out}
        eaten = {kind for kind in kinds if self.appetite.eats(*kind)}
        wanted = (one for one in candidates if (one.food, one.group) in eaten)
        meals = (parts(one, self.appetite.people) if one.bulk else (one,) for one in wanted)
        self.free = dict(enumerate(chain.from_iterable(meals)))
        self._numbers = count(len(self.free))  # of none that was ever chosen
        self.chosen: list[Chosen] = []
        self.next: list[int] = []
        self.keeps: set[int] = set()  # of those, what its group needs to last
        self._laid_out: Menu | None = None
        self.pressing: set[int] = set()  # of those, what has no weeks to spare
        self.big: dict[int, Candidate] = {}  # too big for this week's table
        self.dishes: Sequence[Dish] = ()
        self.with_spare = False  # what stands by is opened too

    def menu(self) -> Menu:
        """By day, and what comes next: of bulk the first meal only, and of a crate that lies on a
        day where the rest of it presses."""
        found = spread(self.chosen, self.table)
        named = {pick.candidate.container for pick in found.picks}
        coming = ((n, self.free[n], n in self.keeps) for n in self.next if n in self.free)
        more, kept = in_turn(
            (one, keeps)
            for number, one, keeps in coming
            if one.container not in named or (number in self.pressing and is_meal(one))
        )
        end = self.table.end
        stand = [one for one in self.free.values() if not discarded_by(one, end)] + self._taken()
        mains = sum(one.servings for one in stand if one.at_table is Role.MAIN)
        on_table = (pick.candidate for pick in found.picks if not pick.dish)
        over = tuple(one for one in on_table if eaten_up(one, self.table.start, self.needs.credits))
        return replace(found, more=more, kept=kept, mains=mains, over=over)

    def _taken(self) -> list[Candidate]:
        return [one.candidate for one in self.chosen]

    def _choose(self, number: int, why: Why, day: date | None = None, dish: str = "") -> None:
        self.chosen.append(Chosen(self.free.pop(number), why, day, dish))
        self._laid_out = None

    def kept(self) -> None:
        """What the household put on a day, whatever the ceilings say; of bulk, one meal for those
        who sit there."""
        people = self.appetite.people
        for container, day in self.wishes.pins:
            heads = people if day is None else self.appetite.sit(day)
            mine = [n for n, one in self.free.items() if one.container == container]
            meals = ceil(heads / people) if mine and self.free[mine[0]].bulk else 1
            for number in mine[: max(1, meals)]:
                self._choose(number, Why.KEPT, day)

    def running(self) -> None:
        """What is open or thawed, as it would be lost: all of it, and of what keeps for longer its
        part of the week. An open bag of flour waits for a dish."""
        put = {chosen.candidate.container for chosen in self.chosen}
        begun = ((n, one) for n, one in self.free.items() if one.must)
        for number in in_parts(by_itself(begun, put, self.table.end), self.free, self.table):
            self._choose(number, Why.MUST)

    def guests(self) -> None:
        """A bird on the day of those for whom it stands, and what they eat beside it."""
        usual = self.appetite.people
        days = [day for day in self.table.days if self.appetite.sit(day) > usual]
        for day in filter(self._cooks, days):
            found = for_guests(day, self.free, self.table, self._spread(), self._said_enough)
            if found is not None:
                self.free[found[0]] = found[1]
                self._choose(found[0], Why.GUESTS, day)
        should, after = self._should_go() if days else ((), ())
        numbers = (*(number for number, _ in should), *after)
        order = tuple(dict.fromkeys(self.free[number].food for number in numbers))
        for day in filter(self._cooks, days):
            for number in sorted(beside_it(day, order, self.free, self.table, self._spread())):
                if not self._said_enough(self.free[number]):
                    self._choose(number, Why.GUESTS, day)

    def fill(self) -> None:
        """What should go this week, within the ceilings."""
        should, self.next = self._should_go()
        for number, spare in should:
            due = due_by(self.free[number], self.table.end)
            self._choose(number, Why.DUE if due else Why.BEGIN if spare <= CALM else Why.PACE)

    def _leave_for_later(self) -> None:
        """What its evening does not need, and nothing hurries, comes next."""
        for at in left_for_later(self.chosen, self._spread(), self.table):
            number = next(self._numbers)
            self.free[number] = self.chosen.pop(at).candidate
            self.next.insert(0, number)
            self._laid_out = None

    def complete(self) -> None:
        """A main for all on each day that lacks one; then what makes a meal of an evening."""
        self._leave_for_later()
        settle(self.chosen, self._spread())
        self._laid_out = None
        self._add_mains()
        bare = filter(self._bare, self.table.days)
        if balanced(self.chosen, self.table, self._spread(), bare):
            self._laid_out = None
        for day in filter(self._bare, self.table.days):
            self._cook_any(day)
        self.with_spare = True
        self._add_mains()
        for day in self.table.days:
            if day not in self._cooked() and self._cooks(day):
                self._add(day, set(A_HEAD), self.pressing if self.chosen else None)
        for day in () if self.chosen else self.table.days:
            self._add_big(day, A_HEAD)
        for day in sorted(self._cooked()):
            self._fill_up(day)
        self._add_mains()  # what filled one day up may have been the main of another
        self._leave_for_later()
        if parted(self.chosen, self.table, self._spread()):
            self._laid_out = None
        while any(map(self._make_whole, self.table.days)):
            pass  # what came for one evening may have lain on another

    def _add_mains(self) -> None:
        for day in self.table.days:
            half = self.appetite.sit(day) / 2
            while self._cooks(day) and self._laid(day, Role.MAIN) < half:
                if not self._add_main(day) and not self._change_places(day):
                    break

    def _change_places(self, day: date) -> bool:
        def add(other: date) -> bool:
            self._laid_out = None
            return self._add_main(other)

        found = change_places(self.chosen, self.table, self._spread(), day, add)
        self._laid_out = None
        return found

    def _fill_up(self, day: date) -> None:
        """More mains for guests, where too few are fed, and of those that would be lost."""
        while any(self._add(day, {Role.MAIN}, among) for among in self._more_mains(day)):
            pass

    def _more_mains(self, day: date) -> list[set[int]]:
        some = self._coming(), self.keeps, self.pressing
        return more_mains(day, self.table, self._spread(), *some)

    def _make_whole(self, day: date) -> bool:
        """Whether one more of the next, if need be of what is kept, makes more of that evening."""
        some = would_do(day, self.table, self._spread(), self._coming(), self.keeps)
        return day in self._cooked() and self._add(day, {Role.SIDE, Role.FRUIT}, some)

    def _coming(self) -> Iterator[tuple[int, Candidate]]:
        """What comes next, in its order."""
        return ((n, self.free[n]) for n in self.next if n in self.free)

    def _cooked(self) -> set[date]:
        """The days on which there is anything to eat, but for what is opened beside or used up:
        the milk that must be drunk makes no evening."""
        picks = self._spread().picks
        meals = [pick for pick in picks if pick.dish or pick.candidate.at_table in A_HEAD]
        return {day for pick in meals for day in pick.days}

    def _cooks(self, day: date) -> bool:
        """Whether that day is one of those on which a meal comes from the stores."""
        cooked = self._cooked()
        return day in cooked or len(cooked) < self.appetite.meals

    def _bare(self, day: date) -> bool:
        """Whether a meal comes from the stores that day, and has neither a main nor a dish."""
        dish = any(pick.dish and pick.day == day for pick in self._spread().picks)
        return self._cooks(day) and not dish and not self._laid(day, Role.MAIN)

    def _laid(self, day: date, role: Role) -> float:
        return self._spread().laid(day, {role})

    def _spread(self) -> Menu:
        """What is chosen, on its days; laid out anew when there is more of it."""
        if self._laid_out is None:
            self._laid_out = spread(self.chosen, self.table)
        return self._laid_out

    def _add(
        self,
        day: date,
        roles: Collection[Role],
        among: Collection[int] | None = None,
        shared: bool = False,
    ) -> bool:
        """The next that suits, of all or `among` some."""
        coming = (n for n in self.next if among is None or n in among)
        one = next((n for n in coming if self._suits(n, day, roles, shared)), None)
        if one is not None:
            why = Why.BEGIN if one in self.pressing else Why.TABLE
            self._choose(one, Why.DUE if due_by(self.free[one], self.table.end) else why, day)
        return one is not None

    def _add_main(self, day: date) -> bool:
        """The next main, one that fits before one of which some is too much at any time; what does
        not press rather not once more the food of the evenings about that day."""
        main, coming = {Role.MAIN}, dict(self._coming())
        others = coming.keys() - once_more(day, coming, self._spread()) | self.pressing
        some = self._add(day, main, others) or self._add(day, main)
        return some or self._add(day, main, shared=True) or self._add_big(day, main)

    def _add_big(self, day: date, roles: Collection[Role]) -> bool:
        """One a week of what is too big for the table, where there is nothing smaller."""
        if any(map(self.table.feast, self._taken())):
            return False
        coming = (n for n, one in self.big.items() if n in self.free and one.at_table in roles)
        number = next((n for n in coming if may_come(self.free[n], day, self.table)), None)
        if number is not None:
            self._choose(number, Why.TABLE, day)
        return number is not None

    def _suits(self, number: int, day: date, roles: Collection[Role], shared: bool) -> bool:
        one = self.free.get(number)
        if one is None or one.at_table not in roles or day not in self.table.possible(one):
            return False
        if one.stands_by and not self.with_spare:
            return False
        if not due_by(one, self.table.end) and self._said_enough(one):
            return False
        waits = number in self.big and awaited(one, self.table)
        if waits or second(one, day, self.table, self._taken()):
            return False
        if not one.may_open or not while_open(one, day, begun_on(one, self._spread())):
            return False
        return self.table.wasted(one, day) <= max(one.servings / 4, shared * self.table.shared(one))

    def _said_enough(self, one: Candidate) -> bool:
        """Whether the household itself said that it eats no more of that in a week; what the
        charts say leaves nobody without a main."""
        laid = [(each.food, each.group, each.servings) for each in self._taken()]
        kind = one.food, one.group, one.servings
        return self.appetite.said_enough(kind, laid, self.table.factor)

    def _should_go(self) -> tuple[list[tuple[int, float]], list[int]]:
        """What to open next to what is chosen, with the weeks that its food has to spare, and what
        would come next."""
        found = what_comes(self.free, self.chosen, self.table, self.needs)
        self.big, self.keeps, self.pressing = found.big, found.keeps, found.pressing
        return found.should, found.next

    # -- dishes ----------------------------------------------------------------------------------

    def cook(self, dishes: Sequence[Dish]) -> None:
        """Dishes asked for, then those that take the most of what should go: at least half of
        what they take, one dish a day, each once."""
        self.dishes = dishes
        asked = [dish for dish in dishes if dish.name in self.wishes.dishes]
        for dish in asked:
            self._cook(dish, self.wishes.dishes[dish.name])
        rest = [dish for dish in dishes if dish not in asked]
        goes: dict[str, float] = defaultdict(float)
        should = self._should_go()[0] if rest else ()
        for one in (*self._taken(), *(self.free[number] for number, _ in should)):
            goes[one.food] += one.servings
        for dish in worth_cooking(rest, goes):
            self._cook(dish, None)

    def _cook_any(self, day: date) -> None:
        """The first dish that is not cooked this week and can be, on a day without a main."""
        cooked = {one.dish for one in self.chosen}
        for dish in self.dishes:
            if dish.name not in cooked and self._cook(dish, day):
                break

    def _cook(self, dish: Dish, day: date | None) -> bool:
        """Take its containers, those chosen already first; nothing, where it cannot be cooked."""
        found = Kitchen(self.chosen, self.free, self.table).takes(dish, day)
        if found is None:
            return False
        loose, fresh, when = found
        for part in loose:
            part.day, part.dish = when, dish.name
        for number in fresh:
            self._choose(number, Why.DISH, when, dish.name)
        self._laid_out = None
        return True
