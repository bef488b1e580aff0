"""What one check must say."""

from __future__ import annotations

from dataclasses import dataclass, field

from tests.checks.farms import Typed

__all__ = ["Checked"]


@dataclass(frozen=True)
class Checked:
    """What one check must say. `fails` has both sides of a range; `slips` are lines that only a changed formula moves, in
    farms in which `slips_where` is typed besides."""

    fails: tuple[Typed, ...] = ()
    holds: tuple[Typed, ...] = ()
    slips: tuple[str, ...] = ()
    slips_where: Typed = field(default_factory=dict)
