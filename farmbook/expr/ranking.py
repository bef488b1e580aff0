"""Orders: which of some lines is the largest, and what comes before a row in an order of preference.

Both go by whole keys of which no two are alike, each a line of its own: spreadsheet programs rank equal numbers alike, and
then no line stands in second place.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from farmbook.expr.axis import Axis
from farmbook.expr.functions import as_line, where, whole_near
from farmbook.expr.nodes import Before, Constant, Expr, Line, Nth, wrap
from farmbook.units import unit

__all__ = ["BELOW_ALL", "before", "nth_label", "nth_value", "preference_key", "ranking_key"]

BELOW_ALL: Final = Constant(
    -1e14, "below_all_ranks", label="Below all that are ranked", unit=unit("1"), source="arithmetic"
)
"""It less a position has fifteen digits, the most that every program tells apart."""


def ranking_key(amount: Expr, position: Expr | float, count: Expr | float, present: Expr | None = None) -> Expr:
    """What lines are ranked by, the largest amount first: a whole number that no other line has.

    `amount` is a plain number, told apart by whole ones (money in cents), times `count` less than 10^14 either way; to have
    the smallest first, negate it. `position` tells this line from the others that are ranked, 1 to `count`: of equal amounts
    the first leads. Without a `present` that is not zero it comes after all that are there.
    """
    size = whole_near(amount) * count
    return (size if present is None else where(present, size, wrap(BELOW_ALL))) - position


def nth_value(
    keys: Sequence[Expr], place: Expr | float, many: Expr | float, values: Sequence[Expr], otherwise: str = ""
) -> Expr:
    """The value that belongs to the key in this place, 1 for the largest; where `place` is above `many`, 0, or of lines that
    give texts (such as the names of a list) `otherwise`.

    Keys and values are single lines in the same order, or one line each over a list that runs down. `many` is how many
    count, at most all of them.
    """
    return Nth(_as_lines(keys), wrap(place), wrap(many), _as_lines(values), otherwise=otherwise)


def nth_label(
    keys: Sequence[Expr], place: Expr | float, many: Expr | float, lines: Sequence[Expr], otherwise: str
) -> Expr:
    """The label of the single line that belongs to the key in this place, as `nth_value`."""
    return Nth(_as_lines(keys), wrap(place), wrap(many), _as_lines(lines), labels=True, otherwise=otherwise)


def preference_key(order: Expr, position: Expr | float, count: Expr | float) -> Expr:
    """What rows are taken in turn by, the lowest order first and of equal ones the first row: a whole number that no other
    row has. `position` numbers the rows, 1 to `count`."""
    return whole_near(order) * count + position


def before(amount: Expr, key: Expr, axis: Axis) -> Expr:
    """What the rows whose key is lower have of a line together.

    A row then gets `maximum(minimum(cap, supply - before(cap, key, axis)), 0)`, as a line of its own.
    """
    return Before(as_line(amount, "rows before it"), as_line(key, "rows before it"), axis)


def _as_lines(lines: Sequence[Expr]) -> tuple[Line, ...]:
    return tuple(as_line(each, "a place in an order") for each in lines)
