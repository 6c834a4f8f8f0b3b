"""Putting up a batch."""

from __future__ import annotations

from pantry_tui.cli.call import Call, Question, key_values
from pantry_tui.cli.fields import flag, maybe_words, number, option, repeated
from pantry_tui.cli.printing import putup as show
from pantry_tui.cli.verb import Act
from pantry_tui.core.dataclass import replace
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.batchwork import putup
from pantry_tui.services.batchwork.absurd import absurd_count
from pantry_tui.services.output import jsonable
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import Ask, PutUpReading
from pantry_tui.services.rows import PutUp as Made
from pantry_tui.services.stock.seen import At

#: Flags that the service takes by the same names.
_TEXTS = (
    "food", "method", "size", "container", "place", "made", "note", "group", "acidity"
)  # fmt: skip

#: Bytes of a file of lines.
_MOST_LINES = 10_000_000


class PutUp(Act):
    line: str = maybe_words('"7 pint jars runner beans, pressure canned, shelf 2, yesterday"')
    food: str | None = option("--food", "FOOD", "instead of a line: what it is")
    method: str | None = option("--method", "METHOD", 'how it is kept, like "pressure canned"')
    count: int | None = number("--count", "N", "how many; else 1")
    size: str | None = option("--size", "SIZE", "of one, like pint")
    container: str | None = option("--container", "WORD", "jars, bags ...")
    place: str | None = option("--place", "PLACE", "where it stands")
    made: str | None = option("--made", "DATE", "or unknown; else today")
    note: str | None = option("--note", "TEXT", "whatever should be remembered")
    group: str | None = option("--group", "GROUP", "of a food that is not in the tables")
    acidity: str | None = option("--acidity", "WORD", "of such a food: acid, low-acid, acidified")
    process: tuple[str, ...] = repeated("--process", "KEY=VALUE", "minutes=20, psi=11 ...")
    lines: str | None = option("--lines", "FILE", "a line for each batch, all booked or none")
    more: bool = flag("--more", "so many at once, though it is a lot")
    dry_run: bool = flag("--dry-run", "only say what was understood; book nothing")

    def run(self, call: Call) -> int:
        with call.pantry() as p:
            if self.lines is not None:
                return self._many(call, p, self.lines)
            reading = self._reading(p)
            self._ask_if_absurd(p, reading)
            try:
                made = call.book(p, self.at, self._made, reading)
            except BadInput as error:
                if self.dry_run and not call.as_json:
                    call.answer(reading, jsonable.reading, show.reading)
                raise Question(error.message, _asked(reading)) from error
            except Refused:
                if self.dry_run:
                    call.answer(reading, _not_booked, show.reading)
                raise
        return self._answer(call, made)

    def _ask_if_absurd(self, p: Pantry, reading: PutUpReading) -> None:
        """Raises Question for a count that is most likely a slip."""
        if self.more or self.dry_run or reading.problems or reading.unread:
            return
        if asked := absurd_count(p, reading):
            told = f"{asked} Mend the number, or say --more if so."
            ask = Ask("count", str(reading.count))
            raise Question(told, _asked(replace(reading, asks=(*reading.asks, ask))))

    def _made(self, p: Pantry, reading: PutUpReading, *, at: At | None = None) -> Made:
        """Booked, or only looked at."""
        if self.dry_run:
            return putup.preview(p, reading, at=at)
        return putup.put_up(p, reading, at=at)

    def _many(self, call: Call, p: Pantry, file: str) -> int:
        """Every line of a file; a line that cannot be booked is named, and then none is."""
        from pantry_tui.services.batchwork.many import put_up_lines, read_lines

        if self.line.strip():
            raise BadInput("Give either a line or --lines FILE, not both.")
        if self.at is not None:
            raise BadInput("Each line of the file names its own day: leave --at out.")
        text = _text_of(file)
        found = (read_lines if self.dry_run else put_up_lines)(p, text)
        bad = [one for one in found if one.why]
        if not bad:
            return call.answer(found, jsonable.put_up_lines, show.put_up_lines)
        if not call.as_json:
            call.answer(found, jsonable.put_up_lines, show.put_up_lines)
        named = ", ".join(str(one.number) for one in bad[:8])
        s = "" if len(bad) == 1 else "s"
        told = f"Nothing was booked: mend line{s} {named} ({bad[0].why})"
        raise Question(told, jsonable.put_up_lines(found))

    def _answer(self, call: Call, made: Made) -> int:
        return call.answer(made, jsonable.putup, show.putup)

    def _reading(self, p: Pantry) -> PutUpReading:
        """What the line says, or the flags. Raises BadInput."""
        typed = {name: getattr(self, name) for name in _TEXTS}
        flags = {name: text for name, text in typed.items() if text}
        line = self.line.strip()
        if line:
            if flags or self.count is not None or self.process:
                raise BadInput(
                    "Give either a line or flags, not both; the line takes key=value words."
                )
            return putup.read(p, line)
        if not flags:
            raise BadInput(
                "Say what was put up: "
                'pantry-tui putup "7 jars peaches, boiling-water canned, larder".'
            )
        return putup.from_flags(
            p,
            count=1 if self.count is None else self.count,
            process=key_values(self.process),
            **flags,
        )


def _text_of(file: str) -> str:
    """Raises BadInput for a file that cannot be read."""
    from pathlib import Path

    from pantry_tui.store.files import refuse_unreadable

    refuse_unreadable(Path(file), _MOST_LINES)
    try:
        return Path(file).read_text(encoding="utf-8-sig")
    except UnicodeDecodeError:
        return Path(file).read_text(encoding="cp1252", errors="replace")
    except OSError as error:
        raise BadInput(f"{file} cannot be read: give the file that holds the lines.") from error


def _asked(reading: PutUpReading) -> dict[str, object]:
    """What a script is asked, and as what its line was read."""
    return {
        "asks": jsonable.plain(reading.asks),
        "read_as": jsonable.reading(reading),
        "unread": list(reading.unread),
    }


def _not_booked(reading: PutUpReading) -> dict[str, object]:
    return {"code": "", "containers": [], "read_as": jsonable.reading(reading)}
