"""How many published values the calculations are held to, by source: `python -m tests.calc.counted`.

A value is one number that a named work prints, read there or in a copy. What was worked out with a library, is recalled, or
follows from printed figures by arithmetic is counted apart. A number that one work prints twice, or that two rows are held
to, counts once.
"""

from __future__ import annotations

import sys
from collections import Counter
from collections.abc import Callable
from decimal import Decimal
from typing import Any, Final, NamedTuple

from tests.calc.published import HowKnown, Published, read_quantity
from tests.calc.test_loan_tables import ROUNDED, UNROUNDED, Table
from tests.calc.test_published import ROWS
from tests.calc.test_rows_prove_something import calculations_of

PUBLISHED: Final[tuple[HowKnown, ...]] = ("seen", "copy")


class Value(NamedTuple):
    """A number in print, and where."""

    work: str
    number: Decimal


def work_of(source: str) -> str:
    """Without the remark that it was seen; a work with an address goes by that, however it is called."""
    return source.partition(" (seen")[0].rpartition("; ")[2]


def of_row(case: Published) -> Value:
    """Its number, whatever the unit."""
    return Value(work_of(case.source), abs(read_quantity(case.printed)[0]).normalize())


def of_table(table: Table) -> list[Value]:
    """Each number of a loan's table that is compared."""
    return [Value(work_of(table.source), Decimal(f"{number:.2f}").normalize()) for number in table.compared()]


def published_rows() -> list[Published]:
    """Rows of what was read in print or in a copy."""
    return [case for case in ROWS if case.how_known in PUBLISHED]


def published_values() -> set[Value]:
    """Each once."""
    tables = [value for table in (*UNROUNDED, *ROUNDED) for value in of_table(table)]
    return {*(of_row(case) for case in published_rows()), *tables}


def by_work() -> Counter[str]:
    """How many of the published values each work prints."""
    return Counter(value.work for value in published_values())


def called() -> dict[str, str]:
    """Each work as its longest source names it."""
    sources = {case.source for case in published_rows()} | {table.source for table in (*UNROUNDED, *ROUNDED)}
    return {work_of(source): source for source in sorted(sources, key=len)}


def apart() -> Counter[HowKnown]:
    """Rows that are held, and are no published values."""
    return Counter(case.how_known for case in ROWS if case.how_known not in PUBLISHED)


def reached() -> set[Callable[..., Any]]:
    """The calculations that rows of published values run through."""
    return {calculation for case in published_rows() for calculation in calculations_of(case)}


if __name__ == "__main__":
    told = [f"{count:4}  {called()[work]}" for work, count in by_work().most_common()]
    sys.stdout.write("\n".join([*told, f"{by_work().total():4}  in all; counted apart: {dict(apart())}", ""]))
