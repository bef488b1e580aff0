"""Sections that share their declarations: own words, own cells, own lists, and nothing left in common by mistake."""

from __future__ import annotations

from typing import ClassVar, Final

import pytest

from farmbook.expr.axis import Axis
from farmbook.expr.functions import named
from farmbook.expr.nodes import Constant, Expr
from farmbook.sections.alike import Alike
from farmbook.sections.declare import NumberInput, check, line, number
from farmbook.sections.model import Model
from farmbook.units import unit
from tests.model.helpers import evaluate

LIMIT: Final = Constant(3, "limit_of_test", label="Limit", unit=unit("kg"), source="arithmetic")
SHELF: Final = Axis("shelf", "shelf", "down", 95, members=("low", "high"))


class Crate(Alike):
    """What two crates have alike."""

    empty: NumberInput
    tag: ClassVar[str] = "plain"

    full = number("Full weight of the {}", unit="kg", usual=(1, 5), default=2, how="Scale.")

    @line("Inside the {}", unit="kg")
    def inside(self) -> Expr:
        """Full less empty."""
        return self.full - self.empty

    @line("Twice what is inside the {}", unit="kg")
    def twice(self) -> Expr:
        """Reads a line that a subclass may put in the place of this one."""
        return self.inside + self.inside

    @check("The {} can be lifted", kind="alert", says="The {} is too heavy.")
    def light(self) -> Expr:
        """By one person."""
        return self.full < named(LIMIT)


class RedCrate(Crate, words="red crate"):
    """One of them."""

    empty = number("Red crate, empty", unit="kg", usual=(0, 1), default=0.5, how="Scale.")


class BlueCrate(Crate, words="blue crate"):
    """The other, with a line of its own in place of a shared one."""

    empty = number("Blue crate, empty", unit="kg", usual=(0, 1), default=0.25, how="Scale.")

    @line("Inside the blue crate, wet", unit="kg")
    def inside(self) -> Expr:
        """Heavier by as much again as the crate."""
        return self.full + self.empty


class Shelf(Alike):
    """A line that has a value for each shelf in one section."""

    @line("Load of the {}", unit="kg")
    def load(self) -> Expr:
        """The limit."""
        return named(LIMIT)


class Rack(Shelf, words="rack", axes=(SHELF,)):
    """With shelves."""


def test_each_section_has_its_own_inputs_and_lines() -> None:
    found = evaluate((RedCrate, BlueCrate), "metric", {RedCrate.full: 4, BlueCrate.full: 1})
    assert float(found["red_crate.inside"]) == 3.5
    assert float(found["red_crate.twice"]) == 7
    assert float(found["blue_crate.inside"]) == 1.25
    assert float(found["blue_crate.twice"]) == 2.5
    assert (float(found["red_crate.light"]), float(found["blue_crate.light"])) == (0, 1)


def test_words_stand_in_labels_and_in_what_checks_say() -> None:
    labels = [each.label for each in Model((RedCrate, BlueCrate)).lines]
    assert len(set(labels)) == len(labels)
    assert not [label for label in labels if "{" in label]
    assert {"Inside the red crate", "Twice what is inside the blue crate", "Inside the blue crate, wet"} <= set(labels)
    assert RedCrate.light.says == "The red crate is too heavy."


def test_names_are_those_of_the_section_and_not_of_the_common_one() -> None:
    assert RedCrate.full.dotted == "red_crate.full"
    assert BlueCrate.twice.dotted == "blue_crate.twice"
    assert Crate.full.label == "Full weight of the {}"


def test_what_only_gathers_declarations_is_no_section_itself() -> None:
    assert Crate.declared == ()
    assert [each.name for each in BlueCrate.declared].count("inside") == 1


def test_lists_are_those_of_the_section() -> None:
    assert evaluate((Rack,), "metric", {})["rack.load"] == pytest.approx([3, 3])
