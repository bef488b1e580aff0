"""What the book says of itself: do the sums stand, how much is assumed, which cells hold no number."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from functools import reduce
from operator import add
from typing import Any, Final

from farmbook.expr.functions import all_of, ratio
from farmbook.expr.nodes import CountChanged, CountUsed, CountWord, Expr, FirstLabel, Label, Line, RawInput, wrap
from farmbook.expr.sentences import either, figure, say
from farmbook.expr.walk import ordered_axes
from farmbook.model.place.farm_plan import Farm
from farmbook.model.report_tables import ReportTables
from farmbook.sections.declare import LineOf, NumberInput, check, line, uses
from farmbook.sections.model import Model
from farmbook.sections.section import ABOVE, BELOW, IMPOSSIBLE, NOT_A_NUMBER, NOT_AN_OPTION, Bound, Section

__all__ = ["Report"]


FARM_TABLES: Final = frozenset({"customer", "calendar_month", "item", "bill"})
"""Tables of what is sold, of the weather, of what is owned and paid."""
PLAN_TABLES: Final = frozenset({"loan", "loan_continued", "step_up", "earlier", "wetness"})
"""Tables of the plan: loans, changes, weeks."""
BANK_TABLES: Final = frozenset({"security", "household_debt", "owner", "guarantor"})
RECORD_TABLES: Final = frozenset({"permit", "past_year", "past_month"})
"""Tables that only a lender is shown: what is offered, and who stands behind it; what is allowed, and what was done before."""

WIDEST_TABLE: Final = 8
"""Inputs side by side that a printed side has room for; a list that runs down and has more takes a second table."""


def _parted(key: str, bounds: list[Bound]) -> Iterator[tuple[str, list[Bound]]]:
    """The tables in which these inputs stand, in halves where one is too wide."""
    axes = bounds[0].cell.axes
    half = (len(bounds) + 1) // (1 + 1)
    if len(axes) == 1 and axes[0].direction == "down" and len(bounds) > WIDEST_TABLE:
        yield key, bounds[:half]
        yield f"{key}_continued", bounds[half:]
    else:
        yield key, bounds


class Report(Section):
    """The book's own account of itself; after every section that asks for anything, so that it sees them all."""

    title = "The book itself"

    model: Model
    tables = uses(ReportTables)

    def __init__(self, model: Model) -> None:
        super().__init__(model)
        self._counts: dict[tuple[str, str], Line] = {}
        for key, bounds in self._tables().items():
            self._add_table(key, bounds)

    def _add_table(self, key: str, bounds: list[Bound]) -> None:
        words = key.replace("_", " ")
        for what, label, method in (
            ("assumed", "Cells assumed by the book", _assumed(bounds)),
            ("no_number", "Cells that hold no number", _flagged(bounds, NOT_A_NUMBER)),
            ("changed", "Cells changed since the book was made", _changed(bounds)),
        ):
            self._counts[what, key] = self._add(f"{what}_in_{key}", f"{label}, table of {words}", method)

    def changed_in(self, lists: int, of: frozenset[str] = frozenset()) -> Expr:
        """Cells changed in all tables over so many lists: in some of them, or in those of growing."""
        tables, others = self._tables(), FARM_TABLES | PLAN_TABLES | BANK_TABLES | RECORD_TABLES
        return _added(
            [
                found
                for (what, key), found in self._counts.items()
                if what == "changed" and _lists(tables[key]) == lists and (key in of if of else key not in others)
            ]
        )

    def _add(self, name: str, label: str, method: Callable[[Any], Expr]) -> Line:
        """A line that no declaration in the class body makes."""
        declared = LineOf(method, label, "count")
        declared.__set_name__(type(self), name)
        made = self._lines[declared] = self._make(declared)
        return made

    def _tables(self) -> dict[str, list[Bound]]:
        """The number inputs of each table, by what the table is called in names."""
        groups: dict[str, list[Bound]] = {}
        for bound in self.model.inputs.values():
            if isinstance(bound.declared, NumberInput) and bound.cell.axes:
                axes = ordered_axes(bound.cell.axes)
                key = axes[0].name if len(axes) == 1 else bound.cell.name.replace(".", "_")
                groups.setdefault(key, []).append(bound)
        return {called: part for key, found in groups.items() for called, part in _parted(key, found)}

    def singles(self) -> list[Bound]:
        """Single inputs that carry a basis, in reading order."""
        return [bound for bound in self.model.inputs.values() if bound.basis is not None and not bound.cell.axes]

    def number_flags(self) -> tuple[Line, ...]:
        """The flags of the single number inputs."""
        return tuple(
            bound.flag for bound in self.singles() if isinstance(bound.declared, NumberInput) and bound.flag is not None
        )

    def table_flags(self) -> tuple[Line, ...]:
        """The flags of the numbers in tables."""
        bounds = (bound for found in self._tables().values() for bound in found)
        return tuple(bound.flag for bound in bounds if bound.flag is not None)

    def number_labels(self) -> tuple[str, ...]:
        """Their labels."""
        return tuple(bound.declared.label for bound in self.singles() if bound.flag in self.number_flags())

    def _now_and_built(self) -> tuple[tuple[RawInput, ...], tuple[RawInput, ...]]:
        """The cells of all single inputs and what stood in them when the book was made."""
        bounds = [bound for bound in self.model.inputs.values() if not bound.cell.axes]
        return tuple(bound.cell for bound in bounds), tuple(bound.built for bound in bounds if bound.built is not None)

    def counted(self, word: str) -> Expr:
        """How many single inputs say this word for their basis."""
        bases: tuple[RawInput, ...] = tuple(bound.basis for bound in self.singles() if bound.basis is not None)
        return CountWord(bases, word)

    def checks_of(self, kind: str) -> tuple[Line, ...]:
        """All checks of a kind."""
        return tuple(found for found in self.model.checks if found.kind == kind)

    @line("Farm, as it stands on every page", unit="1")
    def farm_title(self) -> Expr:
        """Repeated at the head of each sheet."""
        return Label(self.model.section(Farm).raw(Farm.name), "(farm not named)")

    @line("Where the farm is", unit="1")
    def farm_place(self) -> Expr:
        """From the inputs sheet."""
        return Label(self.model.section(Farm).raw(Farm.place), "(place not given)")

    @line("Who prepared the plan", unit="1")
    def prepared_by(self) -> Expr:
        """Prepared by the owner or for the owner; nobody has audited it."""
        return Label(self.model.section(Farm).raw(Farm.prepared_by), "(not said)")

    @line("Date the plan was made", unit="1")
    def plan_date(self) -> Expr:
        """Prices and wages are as of this date."""
        return Label(self.model.section(Farm).raw(Farm.plan_date), "(not dated)")

    @line("Error checks that fail", unit="count")
    def errors_failing(self) -> Expr:
        """While one fails, no figure in the book can be relied on."""
        return CountWord(self.checks_of("error"), 0)

    @line("Alerts that fire", unit="count")
    def alerts_failing(self) -> Expr:
        """The sums are right, but something about the farm needs a look."""
        return CountWord(self.checks_of("alert"), 0)

    def first_failing(self, kind: str) -> Expr:
        """The label of the first check of a kind that fails."""
        found = self.checks_of(kind)
        return FirstLabel(found, tuple(check.label for check in found), 0, "none")

    @line("The first error check that fails", unit="1")
    def first_error(self) -> Expr:
        """What should hold and does not; put it right first."""
        return self.first_failing("error")

    @line("The first alert that fires", unit="1")
    def first_alert(self) -> Expr:
        """What should hold and does not."""
        return self.first_failing("alert")

    @line("Does the book add up?", unit="1")
    def verdict(self) -> Expr:
        """Shown at the head of every sheet."""
        wrong = self.errors_failing > 0
        return say(
            either(wrong, "THE BOOK DOES NOT ADD UP: ", "The book adds up"),
            either(wrong, self.where_to_look, ""),
            self.also_told,
        )

    @line("What else stands at the head of every sheet", unit="1")
    def also_told(self) -> Expr:
        """Alerts, and whether the plan is the one that was handed in."""
        return say(
            either(self.alerts_alone, ", with alerts (see Checks)", ""),
            either(self.changed > 0, self.changed_told, ""),
            ".",
        )

    @line("Inputs changed since the book was made, all together", unit="count")
    def changed(self) -> Expr:
        """Single ones and those of tables; names of rows are not counted."""
        in_tables = self.changed_in_lists + self.changed_over_two_lists + self.changed_for_bank
        return self.changed_singles + in_tables

    @line("How many inputs were changed, at the head of every sheet", unit="1")
    def changed_told(self) -> Expr:
        """Where at least one was: a side that goes round by itself says whether it is the plan that was handed in."""
        return say("; inputs changed: ", figure(self.changed, 0, named=False))

    @line("Alerts fire and no error", unit="flag")
    def alerts_alone(self) -> Expr:
        """1 where the sums stand and the farm needs a look."""
        return all_of(self.errors_failing <= 0, self.alerts_failing > 0)

    @line("Where to look first if the book does not add up", unit="1")
    def where_to_look(self) -> Expr:
        """The input that cannot be, or holds no number, by its label; else the sheet that lists what fails."""
        return say(either(self.impossible_singles > 0, self.first_impossible, self.where_to_look_next))

    @line("Where to look where every single input can be", unit="1")
    def where_to_look_next(self) -> Expr:
        """An input without a number; else one of the tables; else the sheet that lists what fails."""
        return say(either(self.cells_without_number > 0, self.first_without_number, self.tables.first_unsound))

    @line("Single inputs that hold no number", unit="count")
    def cells_without_number(self) -> Expr:
        """A cleared cell, or a word where a number belongs, counts as zero in every sum."""
        return CountWord(self.number_flags(), NOT_A_NUMBER)

    @line("The first single input that holds no number", unit="1")
    def first_without_number(self) -> Expr:
        """By its label on the inputs sheet."""
        return FirstLabel(
            self.number_flags(), self.number_labels(), NOT_A_NUMBER, "none: every single input holds a number"
        )

    @line("Cells of tables that hold no number", unit="count")
    def table_cells_without_number(self) -> Expr:
        """Such a cell counts as zero in every sum. Counted in rows in use only."""
        return CountWord(self.table_flags(), NOT_A_NUMBER)

    @line("Single inputs with a number that cannot be", unit="count")
    def impossible_singles(self) -> Expr:
        """Below or above every limit that the scenario file would take: a pay below zero, a price past belief."""
        return CountWord(self.number_flags(), IMPOSSIBLE)

    @line("The first single input with a number that cannot be", unit="1")
    def first_impossible(self) -> Expr:
        """By its label on the inputs sheet."""
        return FirstLabel(self.number_flags(), self.number_labels(), IMPOSSIBLE, "none: every single input can be")

    @line("Cells of tables with a number that cannot be", unit="count")
    def impossible_in_tables(self) -> Expr:
        """Counted in rows in use only."""
        return CountWord(self.table_flags(), IMPOSSIBLE)

    @line("Single inputs outside their usual range", unit="count")
    def unusual_singles(self) -> Expr:
        """They may be right: look at each once more."""
        return CountWord(self.number_flags(), BELOW) + CountWord(self.number_flags(), ABOVE)

    @line("Cells of tables outside their usual range", unit="count")
    def unusual_in_tables(self) -> Expr:
        """Counted in rows in use only."""
        return CountWord(self.table_flags(), BELOW) + CountWord(self.table_flags(), ABOVE)

    @line("Single inputs changed since the book was made", unit="count")
    def changed_singles(self) -> Expr:
        """Each cell is held against what stood in it then, in the column beside it."""
        return CountChanged(*self._now_and_built())

    @line("Single inputs changed, but still said to be assumed", unit="count")
    def changed_still_assumed(self) -> Expr:
        """Say how you know them: a figure of your own is no longer the book's."""
        bounds = [bound for bound in self.singles() if bound.basis is not None]
        now, built = (tuple(found) for found in zip(*((bound.cell, bound.built) for bound in bounds), strict=True))
        return CountChanged(now, built, tuple(bound.basis for bound in bounds if bound.basis is not None), "assumed")

    @line("Cells changed since the book was made, lists", unit="count")
    def changed_in_lists(self) -> Expr:
        """Names of rows are not counted."""
        return self.changed_in(1) + self.changed_in_farm

    @line("Cells changed since the book was made, customers, weather, bills and things owned", unit="count")
    def changed_in_farm(self) -> Expr:
        """Names of rows are not counted."""
        return self.changed_in(1, FARM_TABLES) + self.changed_in_plan

    @line("Cells changed since the book was made, loans, changes of the plan and weeks", unit="count")
    def changed_in_plan(self) -> Expr:
        """Names of rows are not counted."""
        return self.changed_in(1, PLAN_TABLES)

    @line("Cells changed since the book was made, tables for the bank", unit="count")
    def changed_for_bank(self) -> Expr:
        """Names of rows are not counted. None where no loan is asked for."""
        return self.changed_in(1, BANK_TABLES) + self.changed_in_record

    @line("Cells changed since the book was made, permits and past years", unit="count")
    def changed_in_record(self) -> Expr:
        """Names of rows are not counted. None where no loan is asked for."""
        return self.changed_in(1, RECORD_TABLES)

    @line("Cells changed since the book was made, tables over two lists", unit="count")
    def changed_over_two_lists(self) -> Expr:
        """Parts of recipes, and what each flush of each recipe gives."""
        return self.changed_in(2)

    @check(
        "Every single input holds a number",
        kind="error",
        says="An input cell is empty or holds words; it counts as zero. The sheet Start names the first one.",
    )
    def every_number(self) -> Expr:
        """Optional figures of your own may stay empty."""
        return 1 - (self.cells_without_number > 0)

    @check(
        "Every table cell in use holds a number",
        kind="error",
        says="A cell of a table is empty or holds words; it counts as zero. Look for the flag under the table on the sheet Tables.",
    )
    def every_table_number(self) -> Expr:
        """Spare rows do not count; optional figures may stay empty."""
        return 1 - (self.table_cells_without_number > 0)

    @check(
        "No number is past what can be",
        kind="error",
        says="A number is past every limit: below zero, say, or a price past belief. Look for the sign ▲ on Inputs and Tables.",
    )
    def every_number_possible(self) -> Expr:
        """The limits are those that the scenario file is held to; they stand in the screen margin beside each cell."""
        return self.impossible_singles + self.impossible_in_tables <= 0

    @check(
        "Every word picked is in its list",
        kind="error",
        says="A choice on the sheet Inputs is not one of the words in its list, so nothing is chosen. Look for the flag beside it.",
    )
    def every_word(self) -> Expr:
        """Words are compared without regard to capitals."""
        flags = tuple(bound.flag for bound in self.singles() if bound.cell.kind == "choice" and bound.flag is not None)
        return 1 - (CountWord(flags, NOT_AN_OPTION) > 0)

    @line("Single inputs measured", unit="count")
    def measured_singles(self) -> Expr:
        """Your own figures, weighed or clocked."""
        return self.counted("measured")

    @line("Single inputs quoted", unit="count")
    def quoted_singles(self) -> Expr:
        """From a supplier, a customer or a bill."""
        return self.counted("quoted")

    @line("Single inputs published", unit="count")
    def published_singles(self) -> Expr:
        """From a named publication."""
        return self.counted("published")

    @line("Single inputs of common practice", unit="count")
    def common_singles(self) -> Expr:
        """What growers commonly do, with no source."""
        return self.counted("common practice")

    @line("Single inputs guessed", unit="count")
    def guessed_singles(self) -> Expr:
        """Your own guess."""
        return self.counted("guess")

    @line("Single inputs assumed by the book", unit="count")
    def assumed_singles(self) -> Expr:
        """Filled in by the book because the scenario did not give them. A value you change should change its basis too."""
        return self.counted("assumed")

    @line("Single inputs not your own", unit="count")
    def not_own_singles(self) -> Expr:
        """Published, common practice, guessed or assumed."""
        return self.published_singles + self.common_singles + self.guessed_singles + self.assumed_singles

    @line("Single inputs your own", unit="count")
    def own_singles(self) -> Expr:
        """Measured, or quoted to you."""
        return self.measured_singles + self.quoted_singles

    @line("Single inputs that say how they are known", unit="count")
    def all_singles(self) -> Expr:
        """Optional ones that are empty say nothing."""
        return self.own_singles + self.not_own_singles

    @line("Measured or quoted by this farm, of all single inputs", unit="share")
    def own_share(self) -> Expr:
        """The larger, the further the results can be trusted."""
        return ratio(self.own_singles, self.all_singles)

    @line("Not measured or quoted by this farm, of all single inputs", unit="share")
    def not_own_share(self) -> Expr:
        """Published, common practice, guessed or assumed: replace the ones that stand first on the sheet Inputs first."""
        return ratio(self.not_own_singles, self.all_singles)

    @line("Share of single inputs assumed", unit="share")
    def assumed_share(self) -> Expr:
        """While much is assumed, read every result as a first idea."""
        return ratio(self.assumed_singles, self.all_singles)


def _assumed(bounds: list[Bound]) -> Callable[[Any], Expr]:
    def method(section: Section) -> Expr:
        """Rows in use only; spare rows are left out."""
        bases = tuple(bound.basis for bound in bounds if bound.basis is not None)
        presents = tuple(section.model.axes[axis].present for axis in ordered_axes(bounds[0].cell.axes) if axis.named)
        return CountUsed(bases, "assumed", presents)

    return method


def _lists(bounds: list[Bound]) -> int:
    """How many lists a table runs over."""
    return len(bounds[0].cell.axes)


def _flagged(bounds: list[Bound], word: str) -> Callable[[Any], Expr]:
    def method(_: Section) -> Expr:
        """Spare rows are flagged as such and do not count."""
        return CountWord(tuple(bound.flag for bound in bounds if bound.flag is not None), word)

    return method


def _changed(bounds: list[Bound]) -> Callable[[Any], Expr]:
    def method(_: Section) -> Expr:
        """Spare rows count too."""
        return CountChanged(
            tuple(bound.cell for bound in bounds), tuple(bound.built for bound in bounds if bound.built is not None)
        )

    return method


def _added(terms: Sequence[Expr]) -> Expr:
    """The sum of some terms; zero of none."""
    return reduce(add, terms) if terms else wrap(0)
