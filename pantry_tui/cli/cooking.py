"""What may be cooked of one's own dishes."""

from __future__ import annotations

from pantry_tui.cli.call import Call
from pantry_tui.cli.fields import maybe_words
from pantry_tui.cli.verb import Verb
from pantry_tui.services.output import jsonable


class Cook(Verb):
    foods: str = maybe_words("only dishes that take these: runner beans, chicken stock", "FOOD")

    def run(self, call: Call) -> int:
        from pantry_tui.cli.printing.week import cooked
        from pantry_tui.services.plan import cooking

        with call.pantry() as p:
            found = cooking.cook(p, self.foods)
        return call.answer(found, jsonable.plain, cooked)
