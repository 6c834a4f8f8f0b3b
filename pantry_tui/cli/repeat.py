"""A batch once more."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from pantry_tui.cli.call import Call, key_values
from pantry_tui.cli.fields import flag, number, option, repeated, word
from pantry_tui.cli.verb import Verb

if TYPE_CHECKING:
    from pantry_tui.services.batchwork.repeat import Again
    from pantry_tui.services.rows import PutUp

Told = tuple["Again", "PutUp"]


class Repeat(Verb):
    code: str = word("the batch that is put up once more")
    crop: str | None = option("--crop", "20lb", "how much of the crop there is")
    count: int | None = number("--count", "N", "how many; else by the crop, else as many again")
    place: str | None = option("--place", "PLACE", "where it stands; else where the old one does")
    change: str | None = option("--change", "WORDS", 'what is done otherwise: "less salt"')
    process: tuple[str, ...] = repeated("--process", "KEY=VALUE", "salt=2% minutes=20 ...")
    dry_run: bool = flag("--dry-run", "only say what it would be; book nothing")

    def run(self, call: Call) -> int:
        from pantry_tui.services.batchwork import putup, repeat

        with call.pantry() as p:
            plan = repeat.again(
                p,
                self.code,
                crop=self.crop,
                count=self.count,
                place=self.place,
                change=self.change,
                said=key_values(self.process),
            )
            made = putup.preview(p, plan.reading) if self.dry_run else repeat.put_up(p, plan)
        return call.answer((plan, made), _data, _lines)


def _data(told: Told) -> dict[str, Any]:
    from pantry_tui.services.output import jsonable

    plan, made = told
    return {
        "of": plan.of,
        "code": made.code,
        "containers": list(made.containers),
        "count": plan.reading.count,
        "lead": list(plan.lead),
        "scaled": list(plan.scaled),
        "process": list(plan.process),
        "left_out": list(plan.was),
        "read_as": jsonable.reading(plan.reading),
        "cautions": list(made.cautions),
    }


def _lines(told: Told) -> list[str]:
    from pantry_tui.core.text import clean

    plan, made = told
    lines = [f"said of {plan.of}: {one}" for one in plan.lead]
    what = f"{plan.reading.count} {plan.reading.size} {plan.reading.food}".replace("  ", " ")
    lines.append(f"{made.code or 'would be'}: {what}, {plan.reading.method}, {plan.reading.note}")
    lines += [f"scaled: {one}" for one in plan.scaled]
    lines += [f"process today: {one}" for one in plan.process]
    lines += [f"not copied: {one}" for one in plan.was]
    return [clean(one) for one in (*lines, *(f"care: {one}" for one in made.cautions))]
