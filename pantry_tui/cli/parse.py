"""From words to a verb: flags by their whole names, the other words by their order."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TypeVar

from pantry_tui.cli.fields import Field
from pantry_tui.cli.verb import Verb
from pantry_tui.core.text import clean
from pantry_tui.errors import BadInput

V = TypeVar("V", bound=Verb)


def parse(kind: type[V], name: str, typed: Sequence[str]) -> V:
    """The verb `kind`, called `name`, with what was typed behind it. Raises BadInput."""
    flags, plain = _taken(kind.arguments, name, typed)
    found = {**flags, **_placed(kind.arguments, name, plain)}
    for field_name, field in kind.arguments.items():
        if field.needed and not any(word.strip() for word in found.get(field_name, ())):
            raise BadInput(f"`{name}` needs {shown(field_name, field)}; {see(name)}.")
    return kind(
        **{
            field_name: field.value(found.get(field_name, ()))
            for field_name, field in kind.arguments.items()
        }
    )


def shown(name: str, field: Field) -> str:
    """ "CODE", "--place PLACE", "--dry-run"."""
    meta = field.meta or name.rstrip("_").upper()
    if not field.flags:
        return meta
    return field.flags[0] if field.bare else f"{field.flags[0]} {meta}"


def see(name: str) -> str:
    """Where to read on."""
    return f"see `pantry-tui {name} --help`"


def _taken(
    fields: Mapping[str, Field], name: str, typed: Sequence[str]
) -> tuple[dict[str, list[str]], list[str]]:
    """What each flag was given, and the words that belong to none."""
    by_flag = {flag: (key, field) for key, field in fields.items() for flag in field.flags}
    found: dict[str, list[str]] = {}
    plain: list[str] = []
    waiting = list(reversed(typed))
    while waiting:
        said = waiting.pop()
        if said == "--":
            plain += reversed(waiting)
            break
        if not said.startswith("--"):
            plain.append(said)
            continue
        flag, equals, value = said.partition("=")
        if flag not in by_flag:
            raise BadInput(_unknown(flag, name, by_flag))
        key, field = by_flag[flag]
        if key in found and not field.many:
            raise BadInput(f"{flag} is given twice: say it once.")
        given = found.setdefault(key, [])
        if field.bare:
            if equals:
                raise BadInput(f"{flag} takes no value: write {flag} alone.")
            given.append("yes")
        elif equals:
            given.append(value)
        else:
            given += _values(waiting, flag, field, shown(key, field))
    return found, plain


def _values(waiting: list[str], flag: str, field: Field, example: str) -> list[str]:
    """The next word, or all up to the next flag."""
    values: list[str] = []
    while waiting and not waiting[-1].startswith("--") and (field.greedy or not values):
        values.append(waiting.pop())
    if not values:
        raise BadInput(f"{flag} needs a value: write {example}.")
    return values


def _placed(
    fields: Mapping[str, Field], name: str, plain: Sequence[str]
) -> dict[str, Sequence[str]]:
    """The other words by their order; one field of many words takes what the others leave."""
    placed = [(key, field) for key, field in fields.items() if not field.flags]
    found: dict[str, Sequence[str]] = {}
    left = list(plain)
    while placed and not placed[0][1].many:
        found[placed.pop(0)[0]], left = left[:1], left[1:]
    while len(placed) > 1:
        key, _ = placed.pop()
        found[key], left = left[-1:], left[:-1]
    if placed:
        found[placed[0][0]] = left
    elif left:
        raise BadInput(f"{clean(left[0])[:40]!r} is one word too many for `{name}`; {see(name)}.")
    return found


def _unknown(flag: str, name: str, known: Mapping[str, tuple[str, Field]]) -> str:
    flags = {field.flags[0]: None for _, field in known.values()}
    near = near_words(flag, flags)
    hint = f"near it: {', '.join(near)}" if near else see(name)
    return f"{clean(flag)[:40]!r} is no flag of `{name}`; {hint}."


def near_words(typed: str, known: Mapping[str, object]) -> list[str]:
    """What may have been meant; never taken for it."""
    from difflib import get_close_matches  # only where something was mistyped

    return get_close_matches(typed, known, 3)
