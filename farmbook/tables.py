"""Results as pandas frames: one for each section and list, with units, names and labels."""

from __future__ import annotations

import math

import pandas as pd

from farmbook.expr.axis import Axis
from farmbook.expr.nodes import Line
from farmbook.expr.walk import ordered_axes
from farmbook.figures import plain_unit, recorded
from farmbook.results import Computed

__all__ = ["frames"]


def frames(computed: Computed) -> dict[str, pd.DataFrame]:
    """Frames by name: `cabinet` for a section's single values, `recipe.ingredient` for those with a value for each ingredient.

    A frame of single values has one row a line: columns value, unit, label. A frame of a list has one row a member (or pair of
    members) and one column a line, by the line's short name; `frame.attrs["units"]` and `frame.attrs["labels"]` say what each
    column is. Spare rows are left out. Values are in the scenario's display units, shares of 1; NaN where there is no
    such figure; texts have no unit.
    """
    groups: dict[tuple[str, tuple[Axis, ...]], list[Line]] = {}
    for line in computed.values:
        groups.setdefault((line.name.partition(".")[0], ordered_axes(line.axes)), []).append(line)
    return {
        ".".join([section, *(axis.name for axis in axes)]): _frame(computed, lines, axes)
        for (section, axes), lines in groups.items()
    }


def _frame(computed: Computed, lines: list[Line], axes: tuple[Axis, ...]) -> pd.DataFrame:
    units = {_short(line): plain_unit(computed, line) for line in lines}
    labels = {_short(line): line.label for line in lines}
    if not axes:
        values = [_value(computed, line, ()) for line in lines]
        frame = pd.DataFrame(
            {"value": values, "unit": list(units.values()), "label": list(labels.values())}, index=list(units)
        )
        frame.index.name = "line"
        return frame
    keys = [_members(computed, axis) for axis in axes]
    index = pd.MultiIndex.from_product(keys, names=[axis.name for axis in axes])
    places = pd.MultiIndex.from_product([range(len(each)) for each in keys])
    frame = pd.DataFrame(
        {_short(line): [_value(computed, line, tuple(place)) for place in places] for line in lines}, index=index
    )
    frame.attrs["units"], frame.attrs["labels"] = units, labels
    return frame


def _short(line: Line) -> str:
    return line.name.partition(".")[2]


def _members(computed: Computed, axis: Axis) -> list[str]:
    return list(computed.scenario.rows[axis]) if axis.named else list(axis.members)


def _value(computed: Computed, line: Line, index: tuple[int, ...]) -> float | str:
    return recorded(line, computed.values[line][(0, *index)], none=math.nan)
