"""What stands in a formula: its references, functions and numbers, read with openpyxl's tokenizer."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache

from openpyxl.formula import Tokenizer
from openpyxl.formula.tokenizer import Token
from openpyxl.utils import column_index_from_string

__all__ = [
    "NAME", "Area", "FormulaNumber", "area_of", "areas", "bare_powers", "functions", "nested_if", "numbers",
    "references", "relative", "tokens", "white_space", "wordless_length",
]  # fmt: skip

NAME = re.compile(r"[a-z]+(_[a-z0-9]+)+")
_CELL = re.compile(r"(\$?)([A-Z]{1,3})(\$?)([0-9]{1,7})")
_AREA = re.compile(rf"(?:(?:'((?:[^']|'')+)'|([A-Za-z0-9_.]+))!)?({_CELL.pattern})(?::({_CELL.pattern}))?")


@dataclass(frozen=True)
class Area:
    """A block of cells on a sheet, corners included, counted from 1."""

    sheet: str
    first_row: int
    first_column: int
    last_row: int
    last_column: int

    @property
    def single(self) -> bool:
        """Whether it is one cell."""
        return (self.first_row, self.first_column) == (self.last_row, self.last_column)

    def places(self) -> Iterator[tuple[str, int, int]]:
        """Sheet, row and column of every cell, row by row."""
        for row in range(self.first_row, self.last_row + 1):
            for column in range(self.first_column, self.last_column + 1):
                yield self.sheet, row, column


@dataclass(frozen=True)
class FormulaNumber:
    """A number typed into a formula, the function and argument (from 1) it stands in, whether beside a power sign."""

    text: str
    function: str
    argument: int
    in_power: bool


@cache
def tokens(formula: str) -> tuple[Token, ...]:
    """The tokens of a formula, white space left out; `formula` starts with `=`."""
    return tuple(token for token in Tokenizer(formula).items if token.type != Token.WSPACE)


def references(formula: str) -> list[str]:
    """Every name, cell or range that a formula refers to, as often as it does."""
    return [token.value for token in tokens(formula) if token.type == Token.OPERAND and token.subtype == Token.RANGE]


def functions(formula: str) -> list[str]:
    """Every function that a formula calls, as often as it does."""
    return [name(token) for token in tokens(formula) if opens(token)]


def opens(token: Token) -> bool:
    """Whether a token opens the arguments of a function."""
    return bool(token.type == Token.FUNC and token.subtype == Token.OPEN)


def name(token: Token) -> str:
    """The function that a token opens."""
    return str(token.value).rstrip("(").upper()


def numbers(formula: str) -> Iterator[FormulaNumber]:
    """Every number typed into a formula, with where it stands."""
    every = tokens(formula)
    calls: list[list[str | int]] = [["", 1]]
    for position, token in enumerate(every):
        if token.type in (Token.FUNC, Token.PAREN):
            if token.subtype == Token.OPEN:
                calls.append([name(token), 1] if token.type == Token.FUNC else ["(", 1])
            else:
                calls.pop()
        elif token.type == Token.SEP:
            calls[-1][1] = int(calls[-1][1]) + 1
        elif token.type == Token.OPERAND and token.subtype in (Token.NUMBER, Token.LOGICAL, Token.ERROR):
            function, argument = calls[-1]
            yield FormulaNumber(token.value, str(function), int(argument), _beside_power(every, position))


def _beside_power(every: tuple[Token, ...], position: int) -> bool:
    """Whether the nearest operator, brackets and signs left aside, is a power."""
    before = [token for token in every[:position] if token.type not in (Token.PAREN, Token.OP_PRE)]
    after = [token for token in every[position + 1 :] if token.type != Token.PAREN]
    return any(side and side[place].value == "^" for side, place in ((before, -1), (after, 0)))


def white_space(formula: str) -> bool:
    """Whether white space stands between the tokens of a formula."""
    return any(token.type == Token.WSPACE for token in Tokenizer(formula).items)


def bare_powers(formula: str) -> bool:
    """Whether a sign or a power stands before a power without brackets: -2^2 and 2^3^2 are read in two ways."""
    every = tokens(formula)
    powers = [place for place, token in enumerate(every) if token.type == Token.OP_IN and token.value == "^"]
    before = [every[start - 1] for start in (_base_of(every, place) for place in powers) if start]
    return any(token.type == Token.OP_PRE or token.value == "^" for token in before)


def _base_of(every: tuple[Token, ...], power: int) -> int:
    """Where the base of a power starts: one operand, or brackets with all that is in them."""
    depth = 0
    for place in range(power - 1, -1, -1):
        token = every[place]
        if token.type in (Token.FUNC, Token.PAREN):
            depth += 1 if token.subtype == Token.CLOSE else -1
        if depth == 0:
            return place
    return 0


def nested_if(formula: str) -> bool:
    """Whether one IF stands inside another."""
    inside: list[str] = []
    for token in tokens(formula):
        if opens(token):
            if name(token) == "IF" and "IF" in inside:
                return True
            inside.append(name(token))
        elif token.type == Token.FUNC:
            inside.pop()
    return False


def wordless_length(formula: str) -> int:
    """Characters of a formula apart from the texts in it."""
    texts = [token.value for token in tokens(formula) if token.type == Token.OPERAND and token.subtype == Token.TEXT]
    return len(formula) - sum(len(text) for text in texts)


def relative(formula: str, row: int, column: int) -> str:
    """A formula in R1C1 terms, as seen from its own cell: two cells that were filled alike read alike."""
    parts = []
    for token in tokens(formula):
        moves = token.type == Token.OPERAND and token.subtype == Token.RANGE and _AREA.fullmatch(token.value)
        parts.append(_CELL.sub(lambda found: _seen(found, row, column), token.value) if moves else token.value)
    return "".join(parts)


def _seen(found: re.Match[str], row: int, column: int) -> str:
    column_fixed, letters, row_fixed, digits = found.groups()
    across, down = column_index_from_string(letters), int(digits)
    return ("R" + (str(down) if row_fixed else f"[{down - row}]")) + (
        "C" + (str(across) if column_fixed else f"[{across - column}]")
    )


def areas(formula: str, sheet: str, names: dict[str, Area]) -> Iterator[Area | str]:
    """What a formula on a sheet refers to; the text itself where it is neither a known name nor a block of cells."""
    for text in references(formula):
        yield names.get(text.lower()) or area_of(text, sheet) or text


def area_of(text: str, sheet: str) -> Area | None:
    """A block of cells written as an address, on `sheet` unless it names another; None for anything else."""
    found = _AREA.fullmatch(text)
    if found is None:
        return None
    quoted, plain, first, last = found[1], found[2], found[3], found[8] or found[3]
    (top, left), (bottom, right) = _place(first), _place(last)
    return Area((quoted or "").replace("''", "'") or plain or sheet, top, left, bottom, right)


def _place(cell: str) -> tuple[int, int]:
    found = _CELL.fullmatch(cell)
    assert found is not None
    return int(found[4]), int(column_index_from_string(found[2]))
