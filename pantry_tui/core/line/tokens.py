"""The one tokenizer of a put-up line. Linear in its length."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from enum import Enum, auto
from fractions import Fraction

from pantry_tui.core.amounts import VULGAR

#: More words than this are no line but a list, which is pasted line by line.
MOST = 80


class Kind(Enum):
    """What a token is."""

    WORD = auto()
    NUMBER = auto()
    DATE = auto()  # figures with points, strokes or dashes between them
    FLAG = auto()  # key=value
    SIGN = auto()


@dataclass(frozen=True, slots=True)
class Token:
    """A word in lower case, a number, a date in figures, a `key=value` or a sign.

    `said` is what was typed; `part` counts the commas and the like in front of it; `joined` says
    that it stands without a space behind the one in front.
    """

    kind: Kind
    text: str
    said: str
    part: int
    start: int
    joined: bool = False
    number: Fraction | None = None

    def __str__(self) -> str:
        return self.text


_TOKEN = re.compile(
    r"""
    (?P<flag>(?<![a-z-])[a-z][a-z-]{0,30}=(?:"[^"]*"|(?:[^\s,;"]|(?<=\d),(?=\d))*))
  | (?P<date>(?<![\d.,/-])
      (?:\d{4}-\d{1,2}(?:-\d{1,2})?
        |\d{1,2}(?P<sep>[/.-])\d{1,2}(?P=sep)\d{2,4}
        |\d{1,2}/\d{4}
        |\d{1,2}\.\d{1,2}\.(?![\d.]))
      (?![\d/-]))
  | (?P<number>\d+[ ]\d+/\d+(?![\d/])|\d+-\d+/\d+(?![\d/])|\d+/\d+(?![\d/])
      |\d+[.,]\d+|(?<![^\Wx])(?<![.,])\.\d+|\d*[ ]?[½]|\d+)
  | (?P<word>[^\W\d_½]+(?:['’][^\W\d_½]+)*)
  | (?P<sign>[^\s\w]|_)
    """.replace("½", "".join(VULGAR)),
    re.IGNORECASE | re.VERBOSE,
)
#: What begins another part of the line. A dash does only between spaces.
_PARTS = frozenset(",;:()[]\n|")
_DASHES = frozenset("-–—")
#: Words that are written with a point behind them.
_CLIPPED = frozenset({"gal", "qt", "pt", "oz", "lb", "lbs", "fl", "tbsp", "tsp", "doz"})


def tokens(line: str) -> list[Token]:
    """The tokens of a line. A hyphen within a word parts it: "half-pint" is "half pint"."""
    found: list[Token] = []
    part = end = 0
    for match in _TOKEN.finditer(line):
        kind, said = match.lastgroup or "", match[0]
        joined = match.start() == end and bool(found)
        if "\n" in line[end : match.start()]:
            part += 1
        end = match.end()
        if kind == "sign":
            spaced = (
                line[match.start() - 1 : match.start()].isspace() and line[end : end + 1] == " "
            )
            if said in _PARTS or (said in _DASHES and spaced):
                part += 1
                continue
            if said in _DASHES and not line[end : end + 1].isdecimal():
                continue
            if said in _DASHES and joined:
                continue
            if said == "." and joined and found[-1].text in _CLIPPED:
                continue  # "5 gal. crock"
            found.append(Token(Kind.SIGN, said, said, part, match.start(), joined))
        elif kind == "flag":
            found.append(Token(Kind.FLAG, said, said, part, match.start(), joined))
        elif kind == "word":
            text = said.lower().replace("’", "'")
            found.append(Token(Kind.WORD, text, said, part, match.start(), joined))
        elif kind == "number":
            number = _number(said)
            found.append(Token(Kind.NUMBER, said, said, part, match.start(), joined, number))
        else:
            found.append(Token(Kind.DATE, said, said, part, match.start(), joined))
    return found


def _number(said: str) -> Fraction | None:
    """("1 1/2", "1½", "1-1/2", "1,5", "2.25") -> exact; None where it is none (3/0)."""
    plain = said.strip()
    if plain[-1] in VULGAR:
        return Fraction(plain[:-1].strip() or 0) + Fraction(VULGAR[plain[-1]])
    if "/" in plain:
        whole, _, rest = plain.replace("-", " ").rpartition(" ")
        above, below = rest.split("/")
        if int(below) == 0 or len(plain) > 14:
            return None
        return Fraction(int(whole or 0)) + Fraction(int(above), int(below))
    return Fraction(plain.replace(",", ".")) if len(plain) <= 12 else None


@dataclass
class Line:
    """The tokens of a line, and which of them are still free."""

    tokens: Sequence[Token]
    free: list[bool] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.free = self.free or [True] * len(self.tokens)

    def claim(self, start: int, stop: int) -> None:
        """They are understood."""
        for i in range(start, stop):
            self.free[i] = False

    def word(self, i: int) -> str:
        """The text of a free token, "" where there is none."""
        return self.tokens[i].text if 0 <= i < len(self.tokens) and self.free[i] else ""

    def at(self, i: int) -> Token | None:
        """A free token."""
        return self.tokens[i] if 0 <= i < len(self.tokens) and self.free[i] else None

    def number(self, i: int) -> Fraction | None:
        """The number that a free token writes in figures."""
        token = self.at(i)
        return token.number if token is not None else None

    def says(self, i: int, *words: str) -> int:
        """How many tokens from `i` on are these words in turn; 0 where they are not."""
        if all(self.word(i + n) == word for n, word in enumerate(words)):
            return len(words)
        return 0

    def phrase(self, i: int, phrases: dict[str, str]) -> tuple[int, str]:
        """The longest of the phrases that begins at `i`: where it stops, and what it means."""
        for size in range(4, 0, -1):
            if i + size > len(self.tokens) or not all(self.free[i : i + size]):
                continue
            said = " ".join(token.text for token in self.tokens[i : i + size])
            if said in phrases:
                return i + size, phrases[said]
        return i, ""

    def runs(self) -> Iterator[tuple[int, int]]:
        """Every stretch of free words within one part."""
        start: int | None = None
        for i, token in enumerate(self.tokens):
            ok = self.free[i] and token.kind is Kind.WORD
            if start is not None and (not ok or token.part != self.tokens[start].part):
                yield start, i
                start = None
            if ok and start is None:
                start = i
        if start is not None:
            yield start, len(self.tokens)
