"""The sheets of the small farm in time."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Final

from farmbook.layout.template import Block, Template

__all__ = ["TITLE", "sheets"]

TITLE: Final = "title.heading"
SINGLE: Final = (
    "title.name", "timing.lead", "timing.spawn_run", "timing.first_pick", "weeks.filled_a_week", "weeks.weeks_planned",
    "weeks.spawn_per_bag", "cash.price", "cash.price_drop", "cash.opening_cash", "cash.opening_credit",
    "cash.credit_limit",
    "cash.least", "cash.earned", "cash.charged",
)  # fmt: skip
TABLES: Final = (
    ("timing.added", "weeks.loss", "weeks.fresh"),
    ("weeks.filled_before",),
    ("months.days",),
    ("task.name", "task.hours", "task.rate"),
)
SINGLE_WORKED: Final = (
    TITLE, "timing.lead_steps", "timing.lead_whole", "timing.lead_part", "weeks.rows", "weeks.earlier_weeks",
    "weeks.longest",
    "weeks.filled_in_all", "weeks.started_in_all", "weeks.at_any_flush_in_all", "cash.last_cash", "timing.slower", "cash.price_kept",
)  # fmt: skip
BY_FLUSH: Final = (
    "timing.added_used", "weeks.loss_used", "weeks.fresh_used", "timing.added_so_far", "timing.flush_steps",
    "timing.flush_whole",
    "timing.flush_part", "weeks.alive",
)  # fmt: skip
BY_WEEK: Final = (
    (
        "weeks.row",
        "weeks.week",
        "weeks.in_plan",
        "weeks.brought_in",
        "weeks.filled",
        "weeks.lead_row",
        "weeks.started",
        "weeks.spawn",
    ),
    (
        "weeks.at_any_flush",
        "weeks.picked",
        "weeks.picked_so_far",
        "weeks.filled_so_far",
        "weeks.last_flush",
        "weeks.left_so_far",
        "weeks.in_process",
    ),
)
BY_FLUSH_AND_WEEK: Final = (
    "weeks.flush_row",
    "weeks.at_flush",
    "weeks.leaving",
    "weeks.picked_at_flush",
    "weeks.flush_so_far",
)
BY_MONTH: Final = (
    "months.days_used", "months.days_so_far", "months.end", "months.end_whole", "months.end_part",
    "months.picked_to_end",
    "months.picked", "tasks.cost_in_all", "cash.sales", "cash.interest", "cash.net", "cash.missing", "cash.drawn",
    "cash.credit",
    "cash.closing", "cash.interest_so_far",
)  # fmt: skip


def sheets(cases: Iterable[str] = ()) -> Sequence[Template]:
    """One sheet for each subject, and one for each case."""
    return (
        _sheet(
            "Start",
            "start",
            Block("list", "Results", SINGLE_WORKED),
            Block("stamp", "Stamp"),
            Block("legend", "Looks"),
        ),
        _sheet("Inputs", "inputs", Block("inputs", "Single", inputs=SINGLE)),
        _sheet("Tables", "inputs", *(Block("input_table", "Table", inputs=each) for each in TABLES)),
        _sheet(
            "Weeks",
            "worked",
            Block(
                "table",
                "Weeks before the start",
                ("weeks.filled_before_used", "weeks.earlier_row", "weeks.earlier_week"),
                axis="earlier",
            ),
            Block("table", "Flushes", BY_FLUSH, axis="flush"),
            *(Block("table", "Week by week", each, axis="week") for each in BY_WEEK),
        ),
        _sheet("Flushes", "worked", Block("matrix", lines=BY_FLUSH_AND_WEEK)),
        _sheet(
            "Months",
            "worked",
            Block("table", "Tasks", ("task.present", "task.hours_used", "task.rate_used"), axis="task"),
            Block("matrix", lines=("tasks.cost", "months.flush_to_end")),
            Block("across", "Month by month", BY_MONTH, axis="month"),
        ),
        *(_sheet(f"Case{case.capitalize()}", "worked", Block("case", "The case", of=case)) for case in cases),
        _sheet("Constants", "reference", Block("constants", "Constants"), Block("sources", "Sources")),
    )


def _sheet(name: str, kind: str, *blocks: Block) -> Template:
    return Template(f"{name.lower()}.toml", name, name, "What is on this sheet?", kind, blocks)
