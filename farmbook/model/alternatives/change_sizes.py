"""How large the changes are whose worth the book works out, and those of a change of the grower's own."""

from __future__ import annotations

from farmbook.sections.declare import NumberInput, number
from farmbook.sections.section import Section
from farmbook.sources import COMMON_PRACTICE

__all__ = ["ChangeSizes", "OwnChange"]


def _share(label: str, default: float, how: str) -> NumberInput:
    return number(
        label,
        unit="share",
        usual=(-0.3, 0.3),
        hard=(-1, 5),
        default=default,
        how=how,
        source=COMMON_PRACTICE,
        tried=True,
    )


class ChangeSizes(Section):
    """One change at a time, all else as it is. Each size is yours to set; those of the book are only there to compare."""

    title = "Sizes of the changes"
    table = "change"

    price = _share(
        "Change: prices, share more", 0.05, "What you could ask for without losing anybody; below zero for less."
    )
    weight = number(
        "Change: picked from a bag filled, more",
        unit="kg_picked/bag_filled",
        usual=(-0.25, 0.25),
        hard=(-20, 20),
        default=0.05,
        how="All flushes together move by the same share.",
        source=COMMON_PRACTICE,
        tried=True,
    )
    losses = _share("Change: bags lost, share more", -0.2, "Each loss you typed; -20% means a fifth fewer bags lost.")
    bags = _share("Change: bags filled a week, share more", 0.1, "If there is room for them.")
    pay = _share("Change: pay, share more", -0.05, "By the hour and by the piece; what your own hours are worth stays.")
    energy = _share("Change: energy prices, share more", -0.1, "Power, gas and propane alike.")
    spawn = _share("Change: price of spawn, share more", -0.1, "Of spawn bought.")
    unsold = _share("Change: unsold, share more", -0.25, "-25% means that a quarter less comes home.")
    weeks = number(
        "Change: weeks worked a year, more",
        unit="week/year",
        usual=(-8, 4),
        hard=(-52, 52),
        default=1,
        how="Of 52 in a year.",
        source=COMMON_PRACTICE,
        tried=True,
    )


class OwnChange(Section):
    """Several at once, as they come together in a good or a bad year. All 0 until you type."""

    title = "A change of your own"

    price = _share("Your own change: prices, share more", 0, "All customers.")
    weight = number(
        "Your own change: picked from a bag filled, more",
        unit="kg_picked/bag_filled",
        usual=(-0.25, 0.25),
        hard=(-20, 20),
        default=0,
        how="All flushes together move by the same share.",
        source=COMMON_PRACTICE,
        tried=True,
    )
    losses = _share("Your own change: bags lost, share more", 0, "Each loss you typed.")
    bags = _share("Your own change: bags filled a week, share more", 0, "If there is room for them.")
    pay = _share("Your own change: pay, share more", 0, "By the hour and by the piece.")
    energy = _share("Your own change: energy prices, share more", 0, "Power, gas and propane alike.")
    spawn = _share("Your own change: price of spawn, share more", 0, "Of spawn bought.")
    unsold = _share("Your own change: unsold, share more", 0, "Of what is taken to customers.")
    weeks = number(
        "Your own change: weeks worked a year, more",
        unit="week/year",
        usual=(-8, 4),
        hard=(-52, 52),
        default=0,
        how="Of 52 in a year.",
        source=COMMON_PRACTICE,
        tried=True,
    )
