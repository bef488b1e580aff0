"""How badly things go in each case: the sizes of all that is tried."""

from __future__ import annotations

from farmbook.sections.declare import NumberInput, number
from farmbook.sections.section import Section
from farmbook.sources import COMMON_PRACTICE

__all__ = ["StressSizes"]


def _size(
    label: str, default: float, how: str, *, unit: str = "share", most: float = 1, usual: float = 0.3
) -> NumberInput:
    return number(
        label,
        unit=unit,
        usual=(0, usual),
        hard=(0, most),
        default=default,
        how=how,
        source=COMMON_PRACTICE,
        tried=True,
    )


class StressSizes(Section):
    """Lenders name sizes of their own: type theirs. With 0 a case is the plan itself."""

    title = "If things go badly: sizes"
    table = "stress"

    price = _size("Badly: prices lower by", 0.1, "Of every customer.")
    weight = _size("Badly: weight picked lower by", 0.1, "The worst quarter in your log, against its mean.")
    points = _size(
        "Badly: points more of bags lost in the spawn run", 0.05, "5% on top of a loss of 3% makes 8%.", usual=0.2
    )
    loads = _size(
        "Badly: whole loads lost a quarter",
        1,
        "A load that was not cooked through, or a bench that was not clean.",
        unit="run",
        most=1000,
        usual=4,
    )
    rate = _size(
        "Badly: points more of interest", 0.01, "On loans that float, and on the credit line.", usual=0.03, most=0.5
    )
    energy = _size("Badly: energy dearer by", 0.25, "Power, gas and propane alike.", usual=0.5, most=5)
    materials = _size("Badly: mix and bags dearer by", 0.15, "Spawn stays.", most=5)
    wages = _size("Badly: hired work dearer by", 0.1, "By the hour and by the piece.", most=5)
    moved = _size(
        "Badly: best customer gone, share of its weight that is sold elsewhere",
        0.5,
        "At the lowest price of all customers.",
        usual=1,
    )
    days = _size("Badly: days later that customers pay", 30, "All of them.", unit="day", most=365, usual=60)
    building = _size("Badly: what is still to be bought dearer by", 0.2, "Things, steamer, lab.", most=5)
    late = _size(
        "Badly: weeks that openings and changes of the plan are late",
        13,
        "Three months are 13 weeks. What is bought, and loans, stay in their months.",
        unit="count",
        most=200,
        usual=26,
    )
    stopped_from = _size(
        "Badly: first week of the plan in which the plant stands still",
        10,
        "The week in which the steamer fails, say.",
        unit="count",
        most=400,
        usual=156,
    )
    stopped_for = _size(
        "Badly: weeks in which the plant stands still",
        3,
        "Until the first load is steamed again. Bags in process go on; hands are paid.",
        unit="count",
        most=52,
        usual=12,
    )
    bad_price = _size("Bad year, all at once: prices lower by", 0.1, "Of every customer.")
    bad_weight = _size("Bad year, all at once: weight picked lower by", 0.1, "All flushes.")
    bad_points = _size(
        "Bad year, all at once: points more of bags lost in the spawn run", 0.05, "On top of yours.", usual=0.2
    )
    bad_rate = _size("Bad year, all at once: points more of interest", 0.01, "As above.", usual=0.03, most=0.5)
    covenant = number(
        "Coverage that a lender wants",
        unit="1",
        usual=(1.1, 1.5),
        hard=(0, 10),
        default=1.25,
        how="Money that can go to loans for each 1.00 due, the household paid.",
        source=COMMON_PRACTICE,
        tried=True,
    )
