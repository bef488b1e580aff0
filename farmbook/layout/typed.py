"""Every cell that a person may type into, as data, and the names by which a finished workbook can be read back."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from types import MappingProxyType

from farmbook.errors import ModelFault
from farmbook.layout.book import Area, Index, Note, Sheet, Spot, Typed
from farmbook.layout.page import Plan
from farmbook.sections.declare import Input
from farmbook.sections.model import Model

__all__ = ["areas_of", "name_of", "typed_cells"]

Key = tuple[str, str, Index]


def name_of(what: str, declared: Input) -> str:
    """The workbook name of the "value", "basis" or "note" cells of an input; as in a scenario file."""
    own = declared.dotted.replace(".", "_")
    return own if what == "value" else f"{own}_{what}"


def typed_cells(model: Model, sheets: Sequence[Sheet]) -> Mapping[Key, Spot]:
    """Where each value, basis and note is typed."""
    found: dict[Key, Spot] = {}
    for sheet in sheets:
        for key, row, column in _typed_on(model, sheet):
            found[key] = (sheet.name, row, column)
    return MappingProxyType(found)


def _typed_on(model: Model, sheet: Sheet) -> Iterator[tuple[Key, int, int]]:
    owners = {bound.cell: ("value", bound.cell.name) for bound in model.inputs.values()}
    owners |= {one.basis: ("basis", one.cell.name) for one in model.inputs.values() if one.basis is not None}
    for cell in sheet.cells:
        content = cell.content
        if isinstance(content, Note):
            yield ("note", content.source.name, content.index), cell.row, cell.column
        elif isinstance(content, Typed) and content.source in owners:
            yield (*owners[content.source], content.index), cell.row, cell.column


def areas_of(plan: Plan, typed: Mapping[Key, Spot]) -> Mapping[str, Area]:
    """The names of the blocks of cells that no name of a single cell covers yet; raises ModelFault where they are no block."""
    spots: dict[tuple[str, str], list[Spot]] = {}
    for (what, name, _), spot in typed.items():
        spots.setdefault((what, name), []).append(spot)
    declared = {bound.cell.name: declared for declared, bound in plan.model.inputs.items()}
    found: dict[str, Area] = {}
    for (what, name), stand in spots.items():
        called = name_of(what, declared[name])
        if called in found or (called in plan.names and plan.names[called] != stand[0]):
            raise ModelFault(f"two things would be called `{called}`")
        if called not in plan.names:
            found[called] = _area(called, stand)
    return MappingProxyType(found)


def _area(called: str, spots: Sequence[Spot]) -> Area:
    sheets, rows, columns = (set(each) for each in zip(*spots, strict=True))
    first, last = (min(rows), min(columns)), (max(rows), max(columns))
    size = (last[0] - first[0] + 1) * (last[1] - first[1] + 1)
    if len(sheets) != 1 or len(set(spots)) != size:
        raise ModelFault(f"the cells of `{called}` do not stand in one block")
    return (sheets.pop(), *first, *last)
