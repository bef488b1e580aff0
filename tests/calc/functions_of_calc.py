"""Every public calculation, found by its module's `__all__`."""

from __future__ import annotations

import importlib
import pkgutil
from collections.abc import Callable
from typing import Any, Final

import farmbook.calc
from farmbook.expr.nodes import Constant

MODULES: Final = tuple(
    importlib.import_module(f"farmbook.calc.{found.name}") for found in pkgutil.iter_modules(farmbook.calc.__path__)
)

_PUBLIC: Final = tuple(getattr(module, name) for module in MODULES for name in module.__all__)

CALCULATIONS: Final[tuple[Callable[..., Any], ...]] = tuple(value for value in _PUBLIC if callable(value))

CONSTANTS: Final[tuple[Constant, ...]] = tuple(
    constant
    for value in _PUBLIC
    if not callable(value)
    for constant in ((value,) if isinstance(value, Constant) else value)
)


def label(calculation: Callable[..., Any]) -> str:
    """`steam.air_pressure`, for the names of test cases."""
    return f"{calculation.__module__.rpartition('.')[2]}.{calculation.__name__}"
