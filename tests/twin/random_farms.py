"""Farms drawn at random, across and somewhat beyond the usual range of every input, spare rows among them."""

from __future__ import annotations

from typing import Any

import numpy as np

from farmbook.expr.axis import Axis
from farmbook.expr.walk import ordered_axes
from farmbook.interpret.numbers import Array
from farmbook.model import bank
from farmbook.model.axes import (
    BILL,
    CUSTOMER,
    FLUSH,
    GUARANTOR,
    HOUSEHOLD_DEBT,
    INGREDIENT,
    ITEM,
    LOAN,
    OWNER,
    PERMIT,
    RECIPE,
    SECURITY,
    STEP_UP,
)
from farmbook.model.borrowing.loan_list import LoanList
from farmbook.model.cost.harvest import Harvest
from farmbook.model.crop.crop import Crop
from farmbook.model.mix.recipe import Recipe
from farmbook.model.mix.recipe_beside import RecipeBeside
from farmbook.results import whole_farm
from farmbook.sections.declare import Choice, Input, NumberInput, TextInput
from tests.twin.farms import Farm, axis_sizes, farm_of

__all__ = ["random_farm"]

INGREDIENT_NAMES = ("Oak sawdust", "soy hulls", "Wheat bran", "gypsum", "straw")
RECIPE_NAMES = ("plain", "Rich", "trial", "winter")
OTHER_NAMES = {
    CUSTOMER: ("Market", "inns", "Shop", "trader"),
    ITEM: ("van", "Cooler", "racks"),
    LOAN: ("Van", "bank", "family"),
    STEP_UP: ("Second load", "helper", "more shelves"),
    BILL: ("Rent", "insurance", "van"),
}
BANK_NAMES = {
    OWNER: ("Ada", "Ben", "Cleo"),
    GUARANTOR: ("Dora", "Emil"),
    SECURITY: ("Steamer", "van", "cooler"),
    HOUSEHOLD_DEBT: ("House", "car"),
    PERMIT: ("Zoning", "boiler", "water"),
}
HEADINGS = ("rent", "Insurance", "FREIGHT", "utilities", "repairs", "", "gifts")

LOANS_OF_LENDERS = (LoanList.rate, LoanList.interval, LoanList.term, LoanList.interest_only, LoanList.drawn_in)

LOWEST_RATE = 0.001
Random = np.random.Generator


def random_farm(seed: int) -> Farm:
    """One farm; the same for the same seed."""
    rng = np.random.default_rng(seed)
    names = {INGREDIENT: named_rows(rng, INGREDIENT_NAMES), RECIPE: named_rows(rng, RECIPE_NAMES)}
    names |= {axis: named_rows(rng, wanted) for axis, wanted in OTHER_NAMES.items()}
    lender = np.random.default_rng([seed, len(BANK_NAMES)])
    names |= {axis: named_rows(lender, wanted) for axis, wanted in BANK_NAMES.items()}
    given: dict[Input, Any] = {}
    for declared in whole_farm().inputs:
        if declared.owner.__module__.startswith(f"{bank.__name__}."):
            given |= of_the_bank(lender, declared, names)
        elif isinstance(declared, NumberInput):
            given[declared] = random_numbers(rng, declared, names)
        elif isinstance(declared, Choice):
            given[declared] = random_case(rng, str(rng.choice(declared.labels)))
        elif isinstance(declared, TextInput) and not declared.names:
            given[declared] = random_name(rng, declared, names)
    given[Crop.loss_between_flushes] = mostly_nothing_first(rng, given[Crop.loss_between_flushes])
    given[Harvest.added_days] = mostly_nothing_first(rng, given[Harvest.added_days])
    given[Crop.flushes_kept] = float(rng.choice([1, 2, 3, 4, 2.5], p=[0.22, 0.25, 0.25, 0.25, 0.03]))
    given[Recipe.parts] = some_left_out(rng, given[Recipe.parts])
    given |= {declared: usual_loan(rng, declared, given[declared]) for declared in LOANS_OF_LENDERS}
    return farm_of(given, names)


def of_the_bank(rng: Random, declared: Input, names: dict[Axis, tuple[str, ...]]) -> dict[Input, Any]:
    """What only a lender is shown, drawn apart, so that the farm behind it stays what it is."""
    if isinstance(declared, NumberInput):
        return {declared: random_numbers(rng, declared, names)}
    if isinstance(declared, TextInput) and declared.picks is not None:
        return {declared: random_name(rng, declared, names)}
    if isinstance(declared, TextInput) and declared.axes == (BILL,):
        return {declared: [str(rng.choice(HEADINGS)) for _ in names[BILL]]} if not declared.names else {}
    return {}


def named_rows(rng: Random, wanted: tuple[str, ...]) -> tuple[str, ...]:
    """Names in their order, some rows spare, now and then the same name twice."""
    rows = [name if rng.random() < 0.8 else "" for name in wanted]
    if rng.random() < 0.08:
        rows[-1] = rows[0].upper()
    return (*rows, "")


def random_case(rng: Random, word: str) -> str:
    """The word as it is, or in capitals here and there."""
    return str(rng.choice([word, word.upper(), word.capitalize()], p=[0.7, 0.15, 0.15]))


def random_name(rng: Random, declared: TextInput, names: dict[Axis, tuple[str, ...]]) -> str:
    """A name out of the list that the input picks from, or nothing, or a name that is not there."""
    axis = declared.picks or (RECIPE if declared is RecipeBeside.other_recipe else INGREDIENT)
    return random_case(rng, str(rng.choice([*names[axis], "no such name"])))


def random_numbers(rng: Random, declared: NumberInput, names: dict[Axis, tuple[str, ...]]) -> Array:
    """Numbers within the hard limits; a few at a limit, at zero or blank, and half of the optional ones blank."""
    axes = ordered_axes(declared.axes)
    sizes = axis_sizes(names)
    shape = tuple(sizes[axis] for axis in axes)
    low, high = declared.usual
    beyond = 0.25 * (high - low)
    drawn = rng.uniform(low - beyond, high + beyond, shape)
    edge = rng.choice([declared.hard[0], min(declared.hard[1], high + 4 * beyond)], size=shape)
    drawn = np.where(rng.random(shape) < 0.02, edge, drawn)
    drawn = np.clip(drawn, *declared.hard)
    # A cleared temperature is 0 of the scale shown, so books in degC and in degF differ there.
    blank = 0.5 if declared.optional else 0.0 if declared.unit == "degC" else 0.01
    return np.where(rng.random(shape) < blank, np.nan, drawn)


def mostly_nothing_first(rng: Random, rows: Array) -> Array:
    """A row of flushes that starts with 0, as it should, nine times of ten."""
    first = rows[FLUSH.members.index("first")] if rng.random() < 0.1 else 0.0
    return np.concatenate([[first], rows[1:]])


def some_left_out(rng: Random, parts: Array) -> Array:
    """Recipes that do without some ingredients; now and then one that has no part at all."""
    kept = rng.random(parts.shape) < 0.7
    kept[:, rng.random(parts.shape[1]) < 0.05] = False
    return np.where(kept, parts, 0.0)


def usual_loan(rng: Random, declared: NumberInput, drawn: Array) -> Array:
    """Terms as lenders have them, nine loans of ten; no rate so low that a check refuses it."""
    if declared is LoanList.rate:
        return np.where(drawn < LOWEST_RATE, 0.0, drawn)
    if declared is LoanList.interval:
        usual = rng.choice([1.0, 3.0, 6.0, 12.0], size=drawn.shape)
    elif declared is LoanList.drawn_in:
        usual = np.where(rng.random(drawn.shape) < 0.5, 0.0, np.round(drawn))
    else:
        usual = np.round(drawn / 12) * 12
    return np.where(rng.random(drawn.shape) < 0.9, usual, drawn)
