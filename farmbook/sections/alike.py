"""Sections that are alike: declared once, and made for each of them with its own words in the labels."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import ClassVar

from farmbook.expr.axis import Axis
from farmbook.sections.declare import Check, Declared, Input, LineOf
from farmbook.sections.section import Section

__all__ = ["Alike"]


class Alike(Section):
    """Declarations that several sections share.

    A subclass that gives `words` is one of these sections: what it inherits is declared again for it, with the words in
    place of `{}` in the label, over `axes` if it gives any, and a line in the unit that `units` gives for its name.
    A subclass without words only gathers declarations.
    """

    words: ClassVar[str] = ""

    def __init_subclass__(
        cls, *, words: str = "", axes: tuple[Axis, ...] = (), units: Mapping[str, str] | None = None
    ) -> None:
        super().__init_subclass__()
        cls.words = words
        latest = {each.name: each for each in cls.declared}
        cls.declared = tuple(_own(cls, each, axes, units or {}) for each in latest.values()) if words else ()


def _own(section: type[Alike], declared: Declared, axes: tuple[Axis, ...], units: Mapping[str, str]) -> Declared:
    """A section's own copy of what it inherits; what it declares itself stays."""
    if declared.owner is section or not isinstance(declared, Input | LineOf):
        return declared
    label = declared.label.replace("{}", section.words)
    own: Declared
    if isinstance(declared, Check):
        own = replace(declared, label=label, says=declared.says.replace("{}", section.words))
    elif isinstance(declared, LineOf):
        own = replace(declared, label=label, axes=axes or declared.axes, unit=units.get(declared.name, declared.unit))
    else:
        own = replace(declared, label=label)
    setattr(section, declared.name, own)
    own.__set_name__(section, declared.name)
    return own
