"""Where each input of a model stands in a scenario file: in its section's table, or in the rows of a named axis."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Final

from farmbook.errors import ModelFault
from farmbook.expr.axis import Axis
from farmbook.expr.walk import ordered_axes
from farmbook.scenario.header import TOP_KEYS
from farmbook.scenario.words import Path
from farmbook.sections.declare import NAME_KEY, Choice, Input, TextInput
from farmbook.sections.section import Section

__all__ = ["BASIS_KEY", "NAME_KEY", "Field", "Table", "has_basis", "knows", "tables_of"]

BASIS_KEY: Final = "basis"
"""The key that gives a whole table or row its basis."""


def has_basis(declared: Input) -> bool:
    """Whether the book asks how an input is known: numbers, options and members picked, but not free texts."""
    return not isinstance(declared, TextInput) or isinstance(declared, Choice) or declared.picks is not None


@dataclass(frozen=True)
class Field:
    """One input in the file.

    `row_axis` is the named axis in whose rows it stands; `inner` are the axes of its own list or table.
    """

    declared: Input
    key: str
    table: str
    row_axis: Axis | None
    inner: tuple[Axis, ...]

    def path(self, keys: dict[Axis, str]) -> Path:
        """Where the value of these members stands in the file."""
        row = (keys[self.row_axis],) if self.row_axis else ()
        return (self.table, *row, self.key, *(keys[axis] for axis in self.inner))

    def spot(self, path: Path) -> Path:
        """The members' keys, in the order of the array's axes, of the value that stands at this path."""
        axes = (self.row_axis, *self.inner) if self.row_axis else self.inner
        inside = path[1:2] + path[3:] if self.row_axis else path[2:]
        keys = dict(zip(axes, inside, strict=True))
        return tuple(keys[axis] for axis in ordered_axes(self.declared.axes))


@dataclass
class Table:
    """One table of the file: fields of a section, rows of a named axis, or both where the two have one name."""

    key: str
    title: str = ""
    axis: Axis | None = None
    fields: dict[str, Field] = field(default_factory=dict)
    row_fields: dict[str, Field] = field(default_factory=dict)

    @property
    def holding(self) -> str:
        """What stands in it, in words."""
        if self.axis is None:
            return f"its values below the heading [{self.key}]"
        return f"a row for each {self.axis.label}, as in [{self.key}.first_{self.axis.label}]"


def tables_of(sections: Iterable[type[Section]]) -> dict[str, Table]:
    """The tables of a scenario file, in reading order.

    Raises ModelFault where two inputs would stand in one place, or a named axis has no names.
    """
    tables: dict[str, Table] = {}
    for section in sections:
        for declared in section.declared:
            if isinstance(declared, Input):
                _place(tables, section, declared)
    for table in tables.values():
        if table.axis is not None and NAME_KEY not in table.row_fields:
            raise ModelFault(f"no section declares the names of the axis `{table.axis.name}`")
        if table.key in TOP_KEYS:
            raise ModelFault(f"the table `{table.key}` has the name of a key at the top of the file")
    return tables


def knows(tables: Mapping[str, Table], path: Path) -> bool:
    """Whether one of these tables has this key, or is it."""
    table = tables.get(path[0])
    if table is None or len(path) == 1:
        return table is not None
    return path[-1] in table.fields or path[-1] in table.row_fields


def _place(tables: dict[str, Table], section: type[Section], declared: Input) -> None:
    row_axis, key = declared.row_axis, declared.key
    inner = tuple(axis for axis in declared.axes if axis != row_axis)
    table = tables.setdefault(declared.table, Table(declared.table))
    if row_axis is None:
        table.title = table.title or section.title
        _add(table.fields, Field(declared, key, table.key, None, inner))
    else:
        table.axis = row_axis
        _add(table.row_fields, Field(declared, key, table.key, row_axis, inner))


def _add(fields: dict[str, Field], new: Field) -> None:
    if new.key == BASIS_KEY:
        raise ModelFault(f"an input may not be called `{BASIS_KEY}`", where=new.declared.dotted)
    if new.key in fields:
        both = f"{fields[new.key].declared.dotted} and {new.declared.dotted}"
        raise ModelFault(f"two inputs would both be `{new.key}` in the table [{new.table}]", where=both)
    fields[new.key] = new
