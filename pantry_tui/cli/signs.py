"""Signs of spoilage, and where all of a batch is."""

from __future__ import annotations

from pantry_tui.cli.call import Call
from pantry_tui.cli.fields import maybe_words, word, words
from pantry_tui.cli.printing import signs as show
from pantry_tui.cli.verb import Act, Verb
from pantry_tui.services.lookup import signs
from pantry_tui.services.lookup.recall import recall
from pantry_tui.services.output import jsonable


class Sign(Act):
    code: str = word("7C, or 7C/3 for that very jar")
    sign: str = words('what you see, or "looks sound"')

    def run(self, call: Call) -> int:
        with call.pantry() as p:
            said = call.book(p, self.at, signs.mark, self.code, self.sign)
        return call.answer(said, jsonable.plain, show.sign)


class Signs(Verb):
    method: str = maybe_words("one method only")

    def run(self, call: Call) -> int:
        return call.answer(signs.listing(self.method or None), jsonable.plain, show.signs)


class Recall(Verb):
    code: str = word("a lid code")

    def run(self, call: Call) -> int:
        with call.pantry() as p:
            rows = recall(p, self.code)
        return call.answer(rows, jsonable.plain, show.recall)
