"""A stall whose day is told in sentences: money, weight, hours, shares, a choice of two, a name, a figure that may be none."""

from __future__ import annotations

from typing import Final

from farmbook.expr.functions import ratio
from farmbook.expr.nodes import Expr, Label
from farmbook.expr.sentences import either, figure, say
from farmbook.layout.template import Block, Template
from farmbook.sections.declare import NumberInput, line, number, text
from farmbook.sections.section import Section

__all__ = ["TITLE", "Stall", "sheets"]

TITLE: Final = "stall.heading"


def _typed(label: str, unit: str, default: float) -> NumberInput:
    return number(label, unit=unit, usual=(-900, 900), default=default, how="Count.")


class Stall(Section):
    """A day at a market."""

    name = text("Stall", default="(no name)", how="Its name.")
    left = _typed("Money left over", "money", 12.344)
    sold = _typed("Sold", "kg_wet", 31.26)
    hours = _typed("Time at the stall", "h", 6.25)
    unsold = _typed("Share brought home", "share", 0.124)

    @line("Title", unit="1")
    def heading(self) -> Expr:
        """Repeated on every sheet."""
        return Label(self.model.section(Stall).raw(Stall.name), "(no name)")

    @line("Left of an hour", unit="money/h", zero_is_none=True)
    def an_hour(self) -> Expr:
        """None on a day off."""
        return ratio(self.left, self.hours, 0)

    @line("Money to the cent", unit="1")
    def money(self) -> Expr:
        """With its sign before the dollars."""
        return say("The day left ", figure(self.left, 2), ".")

    @line("Money about", unit="1")
    def about(self) -> Expr:
        """To whole hundreds."""
        return say("About ", figure(self.left, -2, named=False))

    @line("The day", unit="1")
    def day(self) -> Expr:
        """Of every kind of part."""
        return say(
            self.heading,
            " sold ",
            figure(self.sold, 1),
            " in ",
            figure(self.hours, 0),
            ", brought home ",
            figure(self.unsold, 0),
            " and ",
            either(self.left < 0, "lost money", "made money"),
            ", an hour ",
            figure(self.an_hour, 2),
            ".",
        )


def sheets() -> tuple[Template, ...]:
    """What is typed, and what is told of it."""
    inputs = tuple(f"stall.{name}" for name in ("name", "left", "sold", "hours", "unsold"))
    told = tuple(f"stall.{name}" for name in ("heading", "an_hour", "money", "about", "day"))
    return (
        _sheet("Told", "worked", Block("list", "Told", told)),
        _sheet("Typed", "inputs", Block("inputs", "Single", inputs=inputs)),
        _sheet("Constants", "reference", Block("constants", "Constants")),
    )


def _sheet(name: str, kind: str, *blocks: Block) -> Template:
    return Template(f"{name}.toml", name, name, "What?", kind, blocks)
