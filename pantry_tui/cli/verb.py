"""What a verb is: its arguments as typed fields, and `run`."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, ClassVar, dataclass_transform

from pantry_tui.cli import fields
from pantry_tui.cli.fields import Field

if TYPE_CHECKING:
    from pantry_tui.cli.call import Call


@dataclass_transform(
    kw_only_default=True,
    frozen_default=True,
    field_specifiers=(
        fields.word,
        fields.maybe,
        fields.maybe_whole,
        fields.words,
        fields.maybe_words,
        fields.each,
        fields.flag,
        fields.option,
        fields.number,
        fields.needed,
        fields.repeated,
        fields.several,
    ),
)
class Verb:
    """One verb as it was typed, frozen. A dataclass in all but the price of making one."""

    arguments: ClassVar[Mapping[str, Field]] = {}

    def __init_subclass__(cls) -> None:
        own = {name: one for name, one in vars(cls).items() if isinstance(one, Field)}
        cls.arguments = {**own, **cls.arguments}

    def __init__(self, **values: object) -> None:
        self.__dict__.update(values)

    def __setattr__(self, name: str, value: object) -> None:
        raise AttributeError(f"{type(self).__name__} is frozen")

    def run(self, call: Call) -> int:
        """Do it and print the answer. Returns the exit code; raises PantryError."""
        raise NotImplementedError


class Act(Verb):
    """A verb that books something: it may be told when that happened."""

    at: str | None = fields.option("--at", "WHEN", "when it happened: DATE, or DATE HH:MM")
