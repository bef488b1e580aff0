"""What goes into the engine and what comes out of it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np
import numpy.typing as npt

from farmbook.expr.nodes import Line
from farmbook.expr.texts import fold

__all__ = ["Array", "Cells", "Values", "as_array", "fold_all"]

Array = npt.NDArray[Any]


@dataclass(frozen=True)
class Cells:
    """What stands in one input's cells: numbers (NaN where there is none) and texts, each of shape (draws, *axes)."""

    numbers: Array
    texts: Array


def fold_all(texts: Array) -> Array:
    """Each text as it is compared, whole, however long folding makes it."""
    found = np.empty(texts.shape, dtype=object)
    found.reshape(-1)[:] = list(map(fold, texts.reshape(-1).tolist()))
    return found


def as_array(value: float | str | Array) -> Array:
    """A value as an array with a leading axis of draws."""
    if isinstance(value, np.ndarray):
        return value
    return np.array([value], dtype=object if isinstance(value, str) else float)


class Values(Mapping[Line, Array]):
    """The value of every line worked out, shape (draws or 1, *axes)."""

    def __init__(self, slots: list[Any], places: Mapping[Line, int], opening_places: Mapping[Line, int]) -> None:
        self.slots = slots
        self._places, self._opening_places = places, opening_places

    def __getitem__(self, line: Line) -> Array:
        return as_array(self.slots[self._places[line]])

    def __iter__(self) -> Iterator[Line]:
        return iter(self._places)

    def __len__(self) -> int:
        return len(self._places)

    @property
    def openings(self) -> dict[Line, Array]:
        """The value before the first step of each line that has one."""
        return {line: as_array(self.slots[place]) for line, place in self._opening_places.items()}
