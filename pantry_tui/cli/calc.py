"""Batch arithmetic: each sum a verb of its own, typed as a line or by flags."""

from __future__ import annotations

from typing import ClassVar

from pantry_tui.cli.call import Call
from pantry_tui.cli.fields import flag, maybe_words, option
from pantry_tui.cli.verb import Verb
from pantry_tui.errors import BadInput


class Sum(Verb):
    """What all sums share. `kind` names the service's sum; `says` how the value of each flag
    stands in the typed line."""

    kind: ClassVar[str] = ""
    says: ClassVar[dict[str, str]] = {}

    typed: str = maybe_words("the sum in your own words, in any order")
    batch: str | None = option("--for", "CODE", "write it into the record of that batch")

    def run(self, call: Call) -> int:
        from pantry_tui.cli.printing.calc import answer
        from pantry_tui.reference.tables import load_tables
        from pantry_tui.services.batchwork.calc import reckon, record

        line = self._line()
        if self.batch is None:
            found = reckon(load_tables(), self.kind, line, *_household(call))
        else:
            with call.pantry() as p:
                found = reckon(p.tables, self.kind, line, p.altitude_ft, p.people, p.units)
                record(p, self.batch, found)
        return call.answer(found, lambda one: one.as_data(), answer)

    def _line(self) -> str:
        """The line, with what the flags say behind it. Raises BadInput where both are empty."""
        parts = [self.typed]
        for name, form in self.says.items():
            value = getattr(self, name)
            if value:
                parts.append(form.format("" if value is True else _bare(value, form)))
        line = ", ".join(part for part in parts if part.strip())
        if not line:
            from pantry_tui.services.batchwork.calc import KINDS

            raise BadInput(
                f"Say what to reckon: pantry-tui calc {self.kind} {KINDS[self.kind][2]}."
            )
        return line


def _household(call: Call) -> tuple[int | None, int | None, str]:
    """Its altitude, how many eat, and its units, where there is a store."""
    if not call.path.exists():
        return None, None, ""
    with call.pantry() as p:
        return p.altitude_ft, p.people, p.units


def _bare(value: str, form: str) -> str:
    """Without the sign that the line puts behind it anyhow: 3% -> 3, 11psi -> 11."""
    return value.strip().removesuffix(form.rpartition(" ")[2]).strip()


class Brine(Sum):
    kind: ClassVar[str] = "brine"
    says: ClassVar[dict[str, str]] = {
        "water": "{} water", "vegetables": "{} vegetables", "percent": "{} %", "by": "by {}",
    }  # fmt: skip
    water: str | None = option("--water", "AMOUNT", "how much water")
    vegetables: str | None = option("--vegetables", "WEIGHT", "what stands in it")
    percent: str | None = option("--percent", "3", "how strong", old=("--salt", "--strength"))
    by: str | None = option("--by", "WORD", "water, total, or everything", old=("--basis", "--of"))


class DrySalt(Sum):
    kind: ClassVar[str] = "drysalt"
    says: ClassVar[dict[str, str]] = {"weight": "{}", "percent": "{} %"}
    weight: str | None = option("--weight", "WEIGHT", "of the vegetables", old=("--vegetables",))
    percent: str | None = option("--percent", "2.25", "how much salt", old=("--salt",))


class Vinegar(Sum):
    kind: ClassVar[str] = "vinegar"
    says: ClassVar[dict[str, str]] = {
        "acidity": "{} %", "to": "{} %", "vinegar": "{} vinegar", "water": "{} water",
    }  # fmt: skip
    acidity: str | None = option("--acidity", "5", "what the label says", old=("--percent",))
    vinegar: str | None = option("--vinegar", "AMOUNT", "how much of it")
    water: str | None = option("--water", "AMOUNT", "how much water with it")
    to: str | None = option("--to", "5", "the acidity to reach", old=("--target",))


class Syrup(Sum):
    kind: ClassVar[str] = "syrup"
    says: ClassVar[dict[str, str]] = {"percent": "{} %", "water": "{} water", "jars": "{} jars"}
    percent: str | None = option("--percent", "30", "sugar by weight", old=("--strength",))
    water: str | None = option("--water", "AMOUNT", "how much water")
    jars: str | None = option("--jars", '"7 quart"', "for so many jars, as printed")


class Drying(Sum):
    kind: ClassVar[str] = "drying"
    says: ClassVar[dict[str, str]] = {"weight": "{}", "moisture": "{} %", "to": "{} %"}
    weight: str | None = option("--weight", "WEIGHT", "fresh, as it lies on the trays")
    moisture: str | None = option("--from", "88", "water in it, per cent", old=("--moisture",))
    to: str | None = option("--to", "10", "water in the end, per cent", old=("--target",))


class Conditioning(Sum):
    kind: ClassVar[str] = "conditioning"


class Blanching(Sum):
    kind: ClassVar[str] = "blanching"
    says: ClassVar[dict[str, str]] = {"altitude": "{}", "steam": "steam{}", "drying": "drying{}"}
    altitude: str | None = option("--altitude", "5500ft", "else your store's")
    steam: bool = flag("--steam", "in steam and not in water")
    drying: bool = flag("--drying", "before drying and not before freezing")


class Yield(Sum):
    kind: ClassVar[str] = "yield"
    says: ClassVar[dict[str, str]] = {"method": "{}", "jar": "{} jars"}
    jar: str | None = option("--jar", "SIZE", "half-pint, pint or quart")
    method: str | None = option("--method", "METHOD", "canned, frozen, dried ...")


class Headspace(Sum):
    kind: ClassVar[str] = "headspace"
    says: ClassVar[dict[str, str]] = {"jar": "{}", "method": "{}"}
    jar: str | None = option("--jar", "SIZE", "pint, quart ...")
    method: str | None = option("--method", "METHOD", "else every one", old=("--canner",))


class Packs(Sum):
    kind: ClassVar[str] = "packs"
    says: ClassVar[dict[str, str]] = {"people": "{} people"}
    people: str | None = option("--people", "N", "at table; else your household")


class Infusion(Sum):
    kind: ClassVar[str] = "infusion"
    says: ClassVar[dict[str, str]] = {"spirit": "{}", "strength": "{} %", "fruit": "{}"}
    spirit: str | None = option("--spirit", "VOLUME", "how much spirit")
    strength: str | None = option("--strength", "40", "its alcohol, per cent", old=("--abv",))
    fruit: str | None = option("--fruit", "WEIGHT", "what it stands on", old=("--plant",))


class Cure(Sum):
    kind: ClassVar[str] = "cure"


class Smoking(Sum):
    kind: ClassVar[str] = "smoking"


class Boil(Sum):
    kind: ClassVar[str] = "boil"
    says: ClassVar[dict[str, str]] = {"altitude": "{}", "psi": "{} psi", "temp": "{}"}
    altitude: str | None = option("--altitude", "1800ft", "else your store's, else the sea")
    psi: str | None = option("--psi", "11", "on the gauge", old=("--pressure",))
    temp: str | None = option("--temp", "240F", "how hot the steam is to be")
