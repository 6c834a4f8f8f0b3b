"""What the household says of its table: who eats when, how much, dishes, stand-ins, own foods and
rules."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import date
from functools import partial
from typing import TYPE_CHECKING

from pantry_tui.app.screens.forms import Field, show_form
from pantry_tui.app.screens.meant import WHO_EATS
from pantry_tui.core.dates import say
from pantry_tui.core.plan.appetite import at_table
from pantry_tui.core.text import begun
from pantry_tui.core.words import Group
from pantry_tui.errors import BadInput
from pantry_tui.services.lookup import own
from pantry_tui.services.plan import appetite, dishes, substitute
from pantry_tui.services.rows import Done

if TYPE_CHECKING:
    from pantry_tui.app.host import Host
    from pantry_tui.core.plan.menu import Dish
    from pantry_tui.services.pantry import Pantry


def table(host: Host, done: Callable[[], None]) -> None:
    """Days on which another number sits at table than usual."""
    p = host.pantry

    def fields() -> Sequence[Field]:
        known = [
            Field(
                say(day), at_table(people), f"Who eats on {say(day)}?",
                partial(_on, p, day),
                "away, 6, or usual",
            )
            for day, people in appetite.table(p)
        ]  # fmt: skip
        new = Field(
            "other days ...", "", WHO_EATS,
            partial(appetite.read_table, p), "6 from 24 dec to 2 jan",
        )  # fmt: skip
        return [*known, new]

    show_form(host, "Who eats when? Days otherwise than usual.", fields, done)


def _on(p: Pantry, day: date, typed: str) -> Done:
    return appetite.read_table(p, f"{typed} on {day.isoformat()}")


def ceilings(host: Host, done: Callable[[], None]) -> None:
    """At most so many servings a person a week, and the main meals from the stores."""
    p = host.pantry

    def fields() -> Sequence[Field]:
        found = appetite.appetite(p)
        meals = Field(
            "main meals a week", str(found.meals), "Main meals a week from the stores?",
            lambda typed: appetite.set_meals(p, _whole(typed)), "7", str(found.meals),
        )  # fmt: skip
        named = {group.value: found.group_ceiling(group) for group in Group}
        named |= {food: found.food_ceiling(food) for food in sorted({*found.foods} - {*named})}
        other = Field(
            "one food ...", "", "Which food, and how many servings a person a week?",
            partial(_ceiling, p), "beets 1",
        )  # fmt: skip
        return [meals, *(_most(p, name, most) for name, most in named.items()), other]

    show_form(host, "At most so many servings a person a week. 0: nobody eats it.", fields, done)


def _most(p: Pantry, name: str, most: float) -> Field:
    return Field(
        name, f"{most:.3g}", f"{begun(name)}: servings a person a week, or usual.",
        lambda typed: appetite.set_ceiling(p, name, typed), "3", f"{most:.3g}",
    )  # fmt: skip


def _ceiling(p: Pantry, typed: str) -> Done:
    food, _, servings = typed.rpartition(" ")
    if not food:
        raise BadInput("Write the food and a number: beets 1.")
    return appetite.set_ceiling(p, food, servings)


def _whole(typed: str) -> int:
    if not (typed.isascii() and typed.isdigit() and len(typed) < 4):
        raise BadInput(f"{typed[:20]!r} is no number: write 7.")
    return int(typed)


def own_dishes(host: Host, done: Callable[[], None]) -> None:
    """Dishes and what they take."""
    p = host.pantry

    def fields() -> Sequence[Field]:
        known = [
            Field(
                one.name, _takes(one),
                f"{one.name}: write it anew, or drop to plan it no more.",
                partial(_dish, p, one.name), "bean soup = 4 runner beans",
                f"{one.name} = {_takes(one)}",
            )
            for one in dishes.dishes(p)
        ]  # fmt: skip
        new = Field(
            "a new dish ...", "", "Its name, and the servings of each food it takes.",
            partial(dishes.keep, p), "bean soup = 4 runner beans, 4 chicken stock",
        )  # fmt: skip
        return [*known, new]

    show_form(host, "Your dishes.", fields, done)


def _takes(dish: Dish) -> str:
    """ "4 runner beans, 4 chicken stock"."""
    return ", ".join(f"{servings:g} {food}" for food, servings in dish.takes)


def _dish(p: Pantry, name: str, typed: str) -> Done:
    return dishes.drop(p, name) if typed.strip().lower() == "drop" else dishes.keep(p, typed)


def stand_ins(host: Host, done: Callable[[], None]) -> None:
    """Which food stands in for another when its crop fails."""
    p = host.pantry

    def fields() -> Sequence[Field]:
        known = [
            Field(
                food, ", ".join(others), f"What may stand in for {food}? Or: nothing.",
                partial(_stand_in, p, food), "plums and pears", " and ".join(others),
            )
            for food, others in sorted(substitute.substitutes(p).items())
        ]  # fmt: skip
        new = Field(
            "for another food ...", "", "Which food, and what may stand in for it?",
            lambda typed: _said_stand_in(p, typed), "peaches with plums and pears",
        )  # fmt: skip
        return [*known, new]

    show_form(host, "What stands in where a crop fails.", fields, done)


def _stand_in(p: Pantry, food: str, typed: str) -> Done:
    return _said_stand_in(p, f"{food} with {typed}")


def _said_stand_in(p: Pantry, typed: str) -> Done:
    words = typed.split()
    if "with" not in words:
        raise BadInput("Write which food, with, and what stands in: peaches with plums and pears.")
    return substitute.set_substitutes(p, *substitute.read_line(p, words))


def own_words(host: Host, done: Callable[[], None]) -> None:
    """Foods and rules that the tables do not have."""
    p = host.pantry

    def fields() -> Sequence[Field]:
        known = list(own.listing(p))
        return [
            Field(
                "a food the tables do not have ...", "",
                "Its name, its group, and acid, low-acid or acidified.",
                lambda typed: _food(p, typed), "yacon, vegetable, low-acid",
            ),
            Field(
                "how long something lasts with you ...", "",
                "Method, food, climate, how long, quality or safety; then why, if you like.",
                lambda typed: _rule(p, typed), "dried, apples, pantry, 6 months, quality",
            ),
            *(
                Field(one, "", "What was added stays; z takes the last of it back.", _stays)
                for one in known
            ),
        ]  # fmt: skip

    show_form(
        host, "Foods and rules of your own. A rule is never looser than published.", fields, done
    )


def _stays(_typed: str) -> Done:
    raise BadInput("What was added stays; z takes the last of it back.")


def _parts(typed: str, least: int, example: str) -> list[str]:
    parts = [part.strip() for part in typed.split(",")]
    if len(parts) < least or not all(parts[:least]):
        raise BadInput(f"Write {least} things with commas between them: {example}.")
    return parts


def _food(p: Pantry, typed: str) -> Done:
    name, group, acidity, *also = _parts(typed, 3, "yacon, vegetable, low-acid")
    return own.add_food(p, name, group, acidity, also)


def _rule(p: Pantry, typed: str) -> Done:
    parts = _parts(typed, 4, "dried, apples, pantry, 6 months, quality")
    method, food, climate, lasts = parts[:4]
    kind = parts[4] if len(parts) > 4 else "quality"
    why = ", ".join(parts[5:])
    return own.add_rule(p, method, food, climate=climate, keeps=lasts, kind=kind, why=why)
