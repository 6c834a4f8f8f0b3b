"""The put-up record of a batch, asked for in order."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from pantry_tui.cli.call import Call, key_values
from pantry_tui.cli.fields import each, word
from pantry_tui.cli.verb import Verb

if TYPE_CHECKING:
    from pantry_tui.services.batchwork.sheet import Asked


class Record(Verb):
    code: str = word("7C")
    said: tuple[str, ...] = each("what is to be written: minutes=20 psi=11 ...", "KEY=VALUE")

    def run(self, call: Call) -> int:
        from pantry_tui.services.batchwork import sheet
        from pantry_tui.services.output import jsonable

        if self.said:
            return call.done(lambda p: sheet.write(p, self.code, key_values(self.said)))
        with call.pantry() as p:
            found = sheet.fields(p, self.code)
        return call.answer(found, jsonable.plain, _lines)


def _lines(fields: Sequence[Asked]) -> list[str]:
    from pantry_tui.core.text import clean

    if not fields:
        return ["This method asks for no record."]
    lines = []
    for one in fields:
        said = clean(one.said) or "not said"
        lines.append(f"{one.key}: {said} (published: {clean(one.published)})")
        lines += [f"  wrong: {clean(why)}" for why in one.wrong]
    return lines
