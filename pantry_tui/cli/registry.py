"""Every verb by its name, with where it lives: nothing of it is loaded to find it.

The longest name that the first words make is the verb: `household away` before `household`.
Old names are still understood and shown nowhere.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from pantry_tui.cli.verb import Verb


class Entry:
    """One verb: its name, "module:Class", what it does in a few words, its old names."""

    __slots__ = ("about", "name", "old", "where")

    def __init__(self, name: str, where: str, about: str, *old: str) -> None:
        self.name, self.where, self.about, self.old = name, where, about, old

    def load(self) -> type[Verb]:
        """Its class; only now is its module imported."""
        from importlib import import_module

        module, _, kind = self.where.partition(":")
        found: type[Verb] = getattr(import_module(f"pantry_tui.cli.{module}"), kind)
        return found


#: What runs when no verb is typed.
APP = Entry("", "stores:App", "The app on your store")

#: By subject, in the order in which help lists them.
SUBJECTS: tuple[tuple[str, tuple[Entry, ...]], ...] = (
    (
        "Look",
        (
            Entry("due", "looking:Due", "Everything, what must go first, then by date"),
            Entry("shelves", "looking:Shelves", "Stock by place"),
            Entry("find", "looking:Find", "Search food, method, place, code and note"),
            Entry("show", "looking:Show", "One batch: containers, dates, why, sources, history"),
            Entry("jobs", "tending:Jobs", "The small jobs that are due: seals, skimming, sorting"),
            Entry("log", "looking:Log", "What happened, oldest first, with the id of each line"),
            Entry("recall", "signs:Recall", "Where all of a batch is or went, and to whom"),
        ),
    ),
    (
        "Put up and take",
        (
            Entry("putup", "putup:PutUp", "Put up a batch, from a line or from flags"),
            Entry("use", "stock:Use", "Eat the oldest, or an amount of a bulk one"),
            Entry("open", "stock:Open", "Open the oldest sealed one"),
            Entry("thaw", "stock:Thaw", "Thaw the oldest frozen one"),
            Entry("ready", "stock:Ready", "It is ready: done fermenting, curing, drying", "finish"),
            Entry("tend", "tending:Tend", "A small job was done"),
            Entry("record", "record:Record", "How it was put up, field by field; write into it"),
            Entry("jars", "jars:Jars", "Empty jars by size, lids, and who has some of yours"),
            Entry("jars count", "jars:Count", "So many of a size stand empty, or so many new lids"),
            Entry("jars lend", "jars:Lend", "Empty jars went to somebody"),
            Entry("jars back", "jars:Back", "They came back"),
            Entry("repeat", "repeat:Repeat", "A batch once more; its process is looked up"),
            Entry("timer", "timer:Timers", "The processes that are timed"),
            Entry("timer start", "timer:Start", "Time a process; again after a drop of pressure"),
            Entry("timer drop", "timer:Drop", "The pressure fell: the time counts anew"),
            Entry("timer done", "timer:Finish", "It is over: minutes and psi go into the record"),
            Entry("timer cancel", "timer:Cancel", "Time it no more; nothing is recorded"),
            Entry("repack", "stock:Repack", "Into other vessels, or into another thing"),
            Entry("move", "stock:Move", "Move to another place"),
            Entry("give", "stock:Give", "Give away"),
            Entry("missing", "stock:Missing", "Not there, nobody knows why", "lose"),
            Entry("discard", "stock:Discard", "Throw away, with the reason"),
            Entry("reserve", "stock:Reserve", "Set some apart, for a gift or for somebody"),
            Entry("rate", "books:Rate", "What was said of a batch at table", "taste"),
            Entry("correct", "stock:Correct", "Put the record of a batch right"),
            Entry("undo", "stock:Undo", "Take back the newest act, or the one named"),
            Entry("redo", "stock:Redo", "Do again what was taken back"),
        ),
    ),
    (
        "Signs of spoilage",
        (
            Entry("sign", "signs:Sign", "Something seen on a jar: the verdict and what to do"),
            Entry("signs", "signs:Signs", "The signs known, by method"),
        ),
    ),
    (
        "Places",
        (
            Entry("place add", "places:Add", "Add a place"),
            Entry("place change", "places:Change", "Change a place from today on"),
            Entry("place merge", "places:Merge", "Two places become one"),
            Entry("place remove", "places:Remove", "A place is no more; its stock goes elsewhere"),
            Entry("place list", "places:Listing", "The places and how much they hold"),
            Entry("reading", "places:Reading", "A place's temperature, read off"),
            Entry("outage", "places:Outage", "A power cut: every item of a fridge or freezer"),
            Entry("count", "places:Count", "A stock check: counts in, differences out", "round"),
        ),
    ),
    (
        "Plan",
        (
            Entry("week", "week:Week", "What to eat this week"),
            Entry("cook", "cooking:Cook", "Your dishes that stand, or lack one thing"),
            Entry("outlook", "outlook:Outlook", "Will it last, what is lost, how much to put up"),
            Entry("year", "books:Year", "The year of each food: made, gone, left, eaten"),
            Entry("losses", "books:Losses", "What was discarded and why, what would save most"),
        ),
    ),
    (
        "Household",
        (
            Entry("household", "household:Household", "Altitude, people and units; change them"),
            Entry("household away", "household:Away", "Nobody is at table", "table away"),
            Entry(
                "household guests", "household:Guests", "So many come beside you", "table guests"
            ),
            Entry("household usual", "household:Usual", "As many as usual again", "table usual"),
            Entry(
                "household days", "household:Days", "The days otherwise than usual", "table list"
            ),
            Entry("household appetite", "household:Eats", "What you eat in a week", "appetite"),
            Entry("household dish add", "household:AddDish", "A dish of your own", "dish add"),
            Entry("household dish drop", "household:DropDish", "Plan it no more", "dish drop"),
            Entry("household dish list", "household:Dishes", "Your dishes", "dish list"),
            Entry(
                "household substitute",
                "household:Substitute",
                "What stands in for a food when its crop fails",
                "substitute",
            ),
            Entry(
                "household substitute list",
                "household:Substitutes",
                "What stands in for what",
                "substitute list",
            ),
        ),
    ),
    (
        "Look up",
        (
            Entry("shelf-life", "lookup:ShelfLife", "Published limits, with sources", "keeps"),
            Entry(
                "methods", "methods:Methods", "The ways to keep a glut, and why others are refused"
            ),
            Entry("process", "lookup:Process", "The tested canning process, or a refusal"),
            Entry("add-food", "lookup:AddFood", "A food the tables do not have", "own food"),
            Entry("add-rule", "lookup:AddRule", "How long it lasts with you", "own rule"),
            Entry("added", "lookup:Added", "The foods and rules that you added", "own list"),
        ),
    ),
    (
        "Reckon",
        (
            Entry("calc brine", "calc:Brine", "Salt for a brine, by water or by total weight"),
            Entry("calc drysalt", "calc:DrySalt", "Salt for vegetables that make their own brine"),
            Entry(
                "calc vinegar", "calc:Vinegar", "Acidity of vinegar with water, what it may serve"
            ),
            Entry("calc syrup", "calc:Syrup", "Sugar for a syrup"),
            Entry("calc drying", "calc:Drying", "What it weighs when it is dry"),
            Entry("calc conditioning", "calc:Conditioning", "Days of shaking before it is stored"),
            Entry("calc blanching", "calc:Blanching", "Minutes of blanching, with the altitude"),
            Entry("calc yield", "calc:Yield", "Jars out of a crop, or the crop for so many jars"),
            Entry("calc headspace", "calc:Headspace", "Room above the food"),
            Entry("calc packs", "calc:Packs", "Freezer packs for the family"),
            Entry("calc infusion", "calc:Infusion", "Strength of a spirit on fruit"),
            Entry("calc cure", "calc:Cure", "Cure salt for ground meat, as its label prints it"),
            Entry("calc smoking", "calc:Smoking", "What is published of smoking it"),
            Entry("calc boil", "calc:Boil", "Boiling point; steam by gauge pressure"),
        ),
    ),
    (
        "Print",
        (
            Entry("sheet", "output:Sheet", "On paper: due, opened, week, outage, count or a place"),
            Entry("labels", "output:Labels", "Labels for lids and gifts, of any size"),
            Entry("calendar", "output:Calendar", "All dates ahead as a calendar file (RFC 5545)"),
        ),
    ),
    (
        "The store and the app",
        (
            Entry("init", "stores:Init", "Make a new store; never overwrites"),
            Entry("export", "transfer:Export", "A table for a spreadsheet, or the whole log"),
            Entry("import", "transfer:Import", "Bring your own list or an exported log in"),
            Entry("backup", "safekeeping:Backup", "A copy of the store, looked over"),
            Entry("restore", "safekeeping:Restore", "Bring a backup back; keeps what it replaces"),
            Entry("verify", "safekeeping:Verify", "Is every event what was written? Salvage, too"),
            Entry("demo", "stores:Demo", "The app on a throw-away demo store"),
            Entry("serve", "serve:Serve", "The app in a browser, for a phone at the shelf"),
            Entry("help", "guides:Help", "Short guides: a power cut, a suspect jar, a stock check"),
            Entry("keys", "output:Keys", "Every key of the app, by command id"),
        ),
    ),
)


def every() -> Iterator[Entry]:
    """All verbs, in the order of the help."""
    return (entry for _, entries in SUBJECTS for entry in entries)


def find(words: Sequence[str]) -> tuple[Entry | None, int]:
    """The verb that `words` begin with and how many of them name it; None for none."""
    by_name = {name: entry for entry in every() for name in (entry.name, *entry.old)}
    for length in (3, 2, 1):
        entry = by_name.get(" ".join(words[:length])) if len(words) >= length else None
        if entry is not None:
            return entry, length
    return None, 0


def under(words: str) -> list[Entry]:
    """The verbs whose names go on from `words`: "place" -> place add, place change ..."""
    return [entry for entry in every() if entry.name.startswith(f"{words} ")]
