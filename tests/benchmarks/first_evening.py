"""The first evening: what stands on the shelves of a house, typed into an empty store.

    python -m tests.benchmarks.first_evening

prints the keys of each of forty batches beside the letters of its food's name. A place and a colon
come first, then a line for each batch; `>` is Tab, which takes what is offered, and the Enter that
books a line counts too. What is typed of the day counts by itself: it is as long as it is.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from pathlib import Path
from tempfile import TemporaryDirectory

from pantry_tui.services.batchwork import putup, recalled
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.rows import PutUpReading
from pantry_tui.services.stock import places

TODAY = date(2026, 11, 25)
#: So many keys more than the letters of the food's name, and than what is typed of the day.
MOST = 12
TAB = ">"
HOUSE = {
    "larder": "pantry", "basement": "room", "cellar": "cellar", "freezer": "freezer",
    "fridge": "fridge",
}  # fmt: skip
#: place: keys | food | how many | method | what of the keys is the day | the day
TYPED = """
larder: 12 plum jam 2024 | plum jam | 12 | jam | 2024 | 2024-01-01
larder: 7 strawberry jam 2025? | strawberry jam | 7 | jam | 2025? | 2025-01-01
larder: 5 pt raspberry jam | raspberry jam | 5 | jam | |
larder: 9 blackcurrant jelly jan 2026 | blackcurrant jelly | 9 | jam | jan 2026 | 2026-01-01
larder: 4 apple jelly | apple jelly | 4 | jam | |
larder: 3 jars apricot jam 2023? | apricot jam | 3 | jam | 2023? | 2023-01-01
larder: 2 dried thyme | thyme | 2 | dried | |
larder: 3 dried apples 2025 | apples | 3 | dried | 2025 | 2025-01-01
larder: 2 dried mushrooms | dried mushrooms | 2 | dried | |
larder: 4 pt salsa wb july 2026 | salsa | 4 | BW | july 2026 | 2026-07-01
larder: 8 pt applesauce wb | applesauce | 8 | BW | |
larder: 6 pt bread-and-butter pickles, vin> | bread-and-butter pickles | 6 | vinegar pickle | |
larder: 2 bottles sloe gin 2024 | sloe gin | 2 | alcohol infusion | 2024 | 2024-01-01
basement: 12 pt runner beans pc 2025 | runner beans | 12 | pressure canned | 2025 | 2025-01-01
basement: 8 pt carrots> | carrots | 8 | pressure canned | |
basement: 9 pt sweet corn> 2025? | sweet corn | 9 | pressure canned | 2025? | 2025-01-01
basement: 7 pt beets> | beets | 7 | pressure canned | |
basement: 5 qt chicken stock> | chicken stock | 5 | pressure canned | |
basement: 14 qt crushed tomatoes wb 2024 | crushed tomatoes | 14 | BW | 2024 | 2024-01-01
basement: 8 qt peaches> 2024? | peaches | 8 | BW | 2024? | 2024-01-01
basement: 6 qt pears> | pears | 6 | BW | |
basement: 3 qt cherries> | cherries | 3 | BW | |
basement: 10 pt tomato sauce> aug 2025 | tomato sauce | 10 | BW | aug 2025 | 2025-08-01
basement: 9 qt dill pickles, vin> | dill pickles | 9 | vinegar pickle | |
basement: 8 pt pickled beets> | pickled beets | 8 | vinegar pickle | |
cellar: 2x50lb potatoes sept | potatoes | 2 | cellar-stored | sept | 2026-09-01
cellar: 30 lb carrots oct | carrots | 1 | cellar-stored | oct | 2026-10-01
cellar: 6 winter squash oct | winter squash | 6 | cellar-stored | oct | 2026-10-01
cellar: 8 cabbages | cabbages | 8 | cellar-stored | |
cellar: 20 lb onions | onions | 1 | cellar-stored | |
freezer: 9x1lb ground beef | ground beef | 9 | frozen | |
freezer: 3 chickens 2026 | chickens | 3 | frozen | 2026 | 2026-01-01
freezer: 8 qt bags peas july | peas | 8 | frozen | july | 2026-07-01
freezer: 6 bags strawberries june | strawberries | 6 | frozen | june | 2026-06-01
freezer: 4 tubs vegetable soup | vegetable soup | 4 | frozen | |
freezer: 5 packs salmon | salmon | 5 | frozen | |
freezer: 7 pt chicken stock | chicken stock | 7 | frozen | |
fridge: a dozen eggs 20 nov | eggs | 12 | fresh | 20 nov | 2026-11-20
fridge: 2 qt sauerkraut | sauerkraut | 2 | lactic ferment | |
fridge: 1 qt kimchi oct | kimchi | 1 | lactic ferment | oct | 2026-10-01
"""


@dataclass(frozen=True)
class Typed:
    """One batch as it is typed, and what it should be read as."""

    place: str
    keys: str
    food: str
    count: int
    method: str
    day: str
    made: date | None

    @property
    def more(self) -> int:
        """Keys beyond the letters of the food and what is typed of the day, Enter among them."""
        letters = len(self.food) + len(self.day) + bool(self.day)  # and the space before the day
        return len(self.keys) + 1 - letters


def batches() -> list[Typed]:
    """The evening, in order."""
    found = []
    for text in TYPED.strip().splitlines():
        typed, food, count, method, day, made = (part.strip() for part in text.split("|"))
        place, _, keys = typed.partition(": ")
        when = date.fromisoformat(made) if made else None
        how = method.replace("BW", "boiling-water canned")
        found.append(Typed(place, keys, food, int(count), how, day, when))
    return found


def play(p: Pantry) -> list[tuple[Typed, PutUpReading]]:
    """Types and books all of it: each batch beside what it was read as."""
    done: list[tuple[Typed, PutUpReading]] = []
    before: PutUpReading | None = None
    at = ""
    for one in batches():
        if one.place != at:
            places.add(p, one.place, HOUSE[one.place])
            at, before = one.place, None
        place = p.find_place(at).id
        line = ""
        for key in one.keys:
            line += recalled.offered(p, line, place, before) if key == TAB else key
        before = recalled.there(p, line, place)
        done.append((one, before))
        putup.put_up(p, before)
    return done


def main() -> None:
    with TemporaryDirectory() as folder:
        create(Path(folder) / "store.db")
        with open_pantry(Path(folder) / "store.db", TODAY) as p:
            done = play(p)
    for one, _ in done:
        print(f"{one.food:<26} {len(one.food):>3} letters {one.more:>3} more   {one.keys}")
    keys = sum(len(one.keys) + 1 for one, _ in done)
    house = sum(len(place) + 2 for place in HOUSE)
    worst = max(one.more for one, _ in done)
    print(f"{len(done)} batches: {keys} keys, and {house} for the places; at most {worst} more")


if __name__ == "__main__":
    main()
