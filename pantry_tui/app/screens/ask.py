"""Two small questions: choose one by its key, or type one line."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import TYPE_CHECKING, cast

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import Vertical
from textual.content import Content
from textual.events import Key
from textual.geometry import Size
from textual.screen import ModalScreen
from textual.widgets import Input, OptionList, Static
from textual.widgets.option_list import Option

from pantry_tui.app.format import clip
from pantry_tui.app.inkeys import in_keys
from pantry_tui.app.widgets.inunits import in_units, in_words
from pantry_tui.app.widgets.keyline import NO_BREAK
from pantry_tui.app.widgets.typing import Typing
from pantry_tui.core.text import clean
from pantry_tui.errors import PantryError
from pantry_tui.services.rows import Done

if TYPE_CHECKING:
    from pantry_tui.app.host import Host
    from pantry_tui.app.screens.listing import ListScreen

#: The first ten options have a digit; what is further down is found by its letters.
KEYS = "1234567890"
#: So many options need no letters to find one.
FEW = 4
LINE_KEYS = "[b]Enter[/b] does it   [@click=screen.dismiss(None)][b]Esc[/b] leaves it[/]"
#: What Enter says in a question that nothing may be taken in by Enter alone.
SURE = "Enter alone takes none of these: press {}, or go to one with the arrows first."
#: Characters that stand under a line that was refused.
WHY = 400
#: And of a question with the answer to the one before; typed names are cut before it is.
TITLE = 400
#: Below this a list leaves more room to what stands under it.
TIGHT = Size(60, 22)


class Choose(ModalScreen[str | None]):
    """One of `options`: by its digit, arrow keys or mouse, or narrowed by letters and chosen by
    Enter; None when left by Esc. No letter chooses, so that a word typed here books nothing.

    Where it may be for several, `+` `-` `*` say for how many of the `most`: `number`; with
    `counts` digits say it too, and choose nothing. With `sure` nothing is taken by Enter alone and
    letters narrow nothing: a digit is meant, or an arrow key first. A `note` stands under the
    options. `same` gives other words for a word that is typed to narrow them, `texts` the words of
    an option where they are more than its own; the one that `stays` is left where nothing fits.
    Of those that fit the ones of least `rank` stand first. A digit behind a blank that goes on
    with an option's name is part of it ("shelf 2"); with `spelled` any behind a letter is.
    """

    CSS_PATH = "ask.tcss"
    BINDINGS = [Binding("escape", "back", "back")]

    def __init__(
        self,
        title: str,
        options: Sequence[str],
        most: int = 1,
        note: str = "",
        *,
        counts: bool = False,
        sure: bool = False,
        same: Callable[[str], Sequence[str]] = lambda word: (word,),
        texts: Mapping[str, str] | None = None,
        stays: str = "",
        rank: Callable[[str], int] = lambda _option: 0,
        spelled: bool = False,
    ) -> None:
        super().__init__()
        self._title, self._options, self._note = title, list(options), note
        self.number, self._most, self._counts, self._sure = 1, most, counts, sure
        self._shown, self._same, self._texts = list(options), same, texts or {}
        self._found, self._digits, self._stays, self._rank = "", "", stays, rank
        self._taken_by_none, self._spelled = False, spelled
        self.typed = ""  # the letters as they were typed

    def compose(self) -> ComposeResult:
        with Vertical(id="box"):
            yield Static(Content(clip(in_words(self, self._title), TITLE)), id="title")
            yield Static(id="number")
            yield OptionList(markup=False)
            if self._note:
                yield Static(Content(in_words(self, self._note)), id="note")
            yield Static(Content.from_markup(self._keys()), id="how")

    def _keys(self) -> str:
        """The keys of the question, as they are now; the words are ours."""
        ways = ["[b]↑ ↓ Enter[/b] takes one"] if self._shown else []
        if not self._counts and self._shown and not (self._spelled and self._found):
            ways = [f"[b]{digits_of(len(self._shown))}[/b] takes one", "[b]↑ ↓ Enter[/b] too"]
        if not self._sure and len(self._options) > FEW:
            ways.append("[b]letters[/b] narrow")
        # A key and what it does stay on one line.
        back = "[b]Esc[/b] shows all" if self._found else "[b]Esc[/b] leaves"
        whole = [one.replace(" ", NO_BREAK) for one in [*ways, back]]
        return "   ".join([*whole[:-1], f"[@click=screen.back]{whole[-1]}[/]"])

    def on_mount(self) -> None:
        tall = len(self._title) > 2 * self.app.size.width
        self.set_class(bool(self._note) or tall, "-noted")
        self._show()

    def on_resize(self) -> None:
        """The note stays on a small screen: the list gives way."""
        size = self.app.size
        self.set_class(size.height < TIGHT.height or size.width < TIGHT.width, "-tight")

    def on_key(self, event: Key) -> None:
        """A digit chooses or counts, letters narrow the options, Backspace shows all."""
        typed = event.character or ""
        self._taken_by_none = event.key == "enter" and self._sure and self._none_is_lit()
        if self._taken_by_none:
            pass  # Enter alone takes nothing here, and says so
        elif event.key in ("backspace", "ctrl+u"):
            self._found = self._digits = self.typed = ""
        elif typed == "?":
            self._help()
        elif not typed.isprintable() or not typed or (typed == " " and not self._found):
            return
        elif self._most > 1 and typed in "+-*":
            self._many({"+": self.number + 1, "-": self.number - 1, "*": self._most}[typed])
        elif typed in KEYS and self._is_spelled(typed):
            self._found += typed
            self.typed += typed
        elif typed in KEYS and self._counts:
            self._digits = (self._digits + typed)[-4:]
            self._many(int(self._digits))
        elif typed in KEYS:
            event.stop()
            self._pick(KEYS.index(typed))
            return
        elif not self._sure:
            self._found += typed.casefold()  # also what nothing fits: then nothing is taken
            self.typed += typed
        event.stop()
        self._show()

    def _is_spelled(self, digit: str) -> bool:
        """Whether a digit goes on with the name that is typed."""
        if self._sure or not self._found:
            return False
        named = self._found.endswith(" ") and any(
            self._holds(one, self._found + digit) for one in self._options
        )
        return self._spelled or named

    def _none_is_lit(self) -> bool:
        """Whether no option is under the cursor, so that Enter takes none."""
        return bool(self._shown) and self.query_one(OptionList).highlighted is None

    def _help(self) -> None:
        """The keys of the question, each in a sentence."""
        find = len(self._options) > FEW and not self._sure
        ways = {
            "Digits take one: it stands in front of each of the first ten.": not self._counts,
            "Up and Down go to one, Enter takes it.": True,
            "Letters narrow the list to what has them; Backspace or Ctrl+U shows all.": find,
            "Digits say how many.": self._counts,
            "+ and - say more or fewer, * all of them.": self._most > 1,
            "Esc leaves, and nothing is done.": True,
        }
        lines = ["Keys of this question", *(way for way, is_so in ways.items() if is_so)]
        cast("Host", self.app).show_page("\n\n".join(lines))

    @property
    def unfound(self) -> str:
        """The letters that were typed, where no option has them."""
        fits = any(self._fits(one, self._found) for one in self._options)
        return "" if fits else self._found.strip()

    def _pick(self, at: int) -> None:
        if at < len(self._shown):
            self.dismiss(self._shown[at])

    def _many(self, number: int) -> None:
        if not 1 <= number <= self._most:
            self._digits = ""
        self.number = max(1, min(self._most, number))

    def _fits(self, option: str, found: str) -> bool:
        """Whether each word begins a word of the option, it or one that means the same."""
        return self._holds(self._texts.get(option, option), found)

    def _holds(self, text: str, found: str) -> bool:
        words = f" {' '.join(text.casefold().split())}"
        return all(
            any(f" {other}" in words for other in self._same(word)) for word in found.split()
        )

    def _show(self) -> None:
        fitting = [one for one in self._options if self._fits(one, self._found)]
        if not fitting and self._stays:
            fitting = [self._stays]
        # What begins with the letters is meant first, then what has them in its own words.
        self._shown = sorted(
            fitting,
            key=lambda one: (
                self._rank(one) if self._found else 0,
                not one.casefold().startswith(self._found),
                not self._holds(one, self._found),
            ),
        )
        spelled = self._spelled and self._found
        keys = [""] * len(self._shown) if self._counts or spelled else KEYS
        shown = self.query_one(OptionList)
        shown.clear_options()
        shown.add_options(
            Option(Content(f"{keys[at] if at < len(keys) else '':1}  {self._words(one)}"))
            for at, one in enumerate(self._shown)
        )
        shown.highlighted = None if self._sure or not self._shown else 0
        how = self.query_one("#number", Static)
        how.display = bool(self._how())
        how.update(Content(self._how()))
        self.query_one("#how", Static).update(Content.from_markup(self._keys()))

    def _words(self, option: str) -> str:
        return clip(in_units(self, option), max(20, min(self.app.size.width - 10, 100)))

    def _how(self) -> str:
        """For how many, and which letters were typed."""
        digits = "digits, " if self._counts else ""
        many = f"{self.number} of {self._most}   {digits}+ - * say how many"
        takes = "Enter takes the first" if self._shown else "nothing here has that"
        if self._shown == [self._stays] and not self._fits(self._stays, self._found):
            takes = "nothing else here has that"
        found = f"{self._found}: {takes}" if self._found else ""
        none = SURE.format(digits_of(len(self._shown))) if self._taken_by_none else ""
        return "   ".join(filter(None, (many if self._most > 1 else "", found, none)))

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        self._pick(event.option_index)

    def action_back(self) -> None:
        """Show all options again, else leave without an answer."""
        if self._found:
            self._found = self.typed = ""
            self._show()
        else:
            self.dismiss(None)


def digits_of(options: int) -> str:
    """The digits that choose among so many: "1", "1-3", and with a tenth "1-9, 0"."""
    if options >= len(KEYS):
        return "1-9, 0"
    return f"1-{options}" if options > 1 else "1"


class TypeLine(ModalScreen[str | None]):
    """One typed line; None when left by Esc or empty.

    `accept` does what the line asks for. When it raises PantryError the sentence is shown and the
    line stays, to be mended: nothing typed is lost.
    """

    CSS_PATH = "ask.tcss"
    BINDINGS = [Binding("escape", "dismiss(None)", "back")]
    how = LINE_KEYS  # the keys of the question; the words are ours

    def __init__(
        self,
        title: str,
        example: str,
        value: str = "",
        *,
        empty: bool = False,
        accept: Callable[[str], object] = str,
    ) -> None:
        super().__init__()
        self._may_be_empty, self._accept = empty, accept
        self._title, self._example, self._value = title, example, value

    def compose(self) -> ComposeResult:
        with Vertical(id="box"):
            yield Static(Content(clip(in_words(self, self._title), TITLE)), id="title")
            yield self.make_input()
            yield Static(id="wrong")
            yield Static(Content.from_markup(self.how), id="how")

    def make_input(self) -> Input:
        """What the line is typed into."""
        return Typing(self._value, placeholder=in_units(self, self._example))

    def on_input_submitted(self, event: Input.Submitted) -> None:
        typed = event.value.strip()
        if not typed and not self._may_be_empty:
            # What stands in grey is an example: Enter on it does nothing, and says so.
            example = in_units(self, self._example)
            self._refuse(f"nothing is typed. Write, for example, {example}.")
            return
        try:
            self._accept(typed)
        except PantryError as error:
            own = getattr(self.app, "shown_keys", None)
            self._refuse(in_keys(in_units(self, error.message, typed), own))
        else:
            self.dismiss(typed)

    def _refuse(self, why: str) -> None:
        """Under the line; what is longer than there is room has a page, and then the line again."""
        wrong = self.query_one("#wrong", Static)
        said = clean(f"Not done: {why}")
        wrong.update(Content(clip(said, WHY)))
        wrong.display = True
        if len(said) > WHY:
            cast("Host", self.app).show_page(said)


def ask_line(
    screen: ListScreen,
    title: str,
    example: str,
    do: Callable[[str], Done],
    *,
    value: str = "",
    empty: bool = False,
) -> None:
    """Ask for a line and do what it says; a line that cannot be done stays to be mended. `value`
    stands there already, and Enter takes it."""
    done: list[Done] = []

    def accept(typed: str) -> None:
        done.append(screen.host.doing(lambda: do(typed)))

    def answered(_typed: str) -> None:
        screen.host.report(done[-1])
        screen.settle_list()

    screen.app.push_screen(
        TypeLine(title, example, value, empty=empty, accept=accept), given(answered)
    )


def given(then: Callable[[str], None]) -> Callable[[str | None], None]:
    """Calls `then` unless the question was left without an answer."""

    def answered(value: str | None) -> None:
        if value is not None:
            then(value)

    return answered
