"""The JSON Schema of scenario files, for editors: title, units, usual range, default and options of every key."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from fractions import Fraction
from typing import Any, Final

from farmbook.scenario.fields import BASIS_KEY, Field, Table, has_basis, tables_of
from farmbook.scenario.header import TOP_KEYS
from farmbook.scenario.limits import usual_of
from farmbook.scenario.values import LONGEST_TEXT
from farmbook.scenario.words import amount, usual_words
from farmbook.sections.declare import BASES, Choice, Input, NumberInput, TextInput
from farmbook.sections.section import Section
from farmbook.units import SYSTEMS, displayed

__all__ = ["json_schema"]

_TABLE_BASIS: Final = "How the numbers of this table are known that do not say it themselves."


def json_schema(sections: Iterable[type[Section]]) -> dict[str, Any]:
    """The schema of a whole file: a definition for each table, and one for each row of a named axis."""
    tables = tables_of(sections)
    keys = {key: {"title": key.capitalize(), "description": top.says, **top.schema} for key, top in TOP_KEYS.items()}
    keys |= {key: {"title": _title(table), "$ref": _reference(_name(table))} for key, table in tables.items()}
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "farmbook scenario",
        **_closed(keys),
        "anyOf": [{"required": ["units", "currency"]}, {"required": ["extends"]}],
        "$defs": {name: about for table in tables.values() for name, about in _definitions(table).items()},
    }


def _title(table: Table) -> str:
    return table.title or (table.axis.label.capitalize() if table.axis else "")


def _definitions(table: Table) -> dict[str, Any]:
    """A table's own definition and that of its rows, by name."""
    name = _name(table)
    own = _holding(name, table.fields)
    if table.axis is None:
        return {name: own}
    row = f"{name}Row"
    return {name: {**own, "additionalProperties": {"$ref": _reference(row)}}, row: _holding(row, table.row_fields)}


def _name(table: Table) -> str:
    return table.key.replace("_", " ").title().replace(" ", "")


def _reference(name: str) -> str:
    return f"#/$defs/{name}"


def _holding(title: str, fields: Mapping[str, Field]) -> dict[str, Any]:
    basis = {"title": "Basis", "description": _TABLE_BASIS, "type": "string", "enum": list(BASES)}
    return {"title": title, **_closed({BASIS_KEY: basis, **{key: _field(field) for key, field in fields.items()}})}


def _closed(properties: dict[str, Any]) -> dict[str, Any]:
    """A table of these keys and no others."""
    return {"type": "object", "properties": properties, "additionalProperties": False}


def _field(field: Field) -> dict[str, Any]:
    """The schema of one field, with the lists and tables of its inner axes."""
    found = _leaf(field.declared)
    for axis in reversed(field.inner):
        if axis.named:
            found = {"type": "object", "additionalProperties": found}
        else:
            count = len(axis.members)
            listed = {"type": "array", "items": found, "minItems": count, "maxItems": count}
            found = {"anyOf": [listed, _closed(dict.fromkeys(axis.members, found))]}
    about: dict[str, Any] = {"title": field.declared.label, "description": _description(field.declared)}
    default = _default(field)
    return {**about, **found} if default is None else {**about, **found, "default": default}


def _leaf(declared: Input) -> dict[str, Any]:
    extras: dict[str, Any] = {"note": {"type": "string", "maxLength": LONGEST_TEXT}}
    if has_basis(declared):
        extras["basis"] = {"enum": list(BASES)}
    if isinstance(declared, NumberInput) and declared.measure.date:
        return _with_cell([{"type": "string", "format": "date"}], extras)
    if isinstance(declared, NumberInput):
        return _with_cell([{"type": "number", **_bounds(declared)}, {"type": "string"}], extras)
    if isinstance(declared, Choice):
        keys = [option.key for option in declared.options if option.key != option.label]
        return _with_cell([{"enum": [*declared.labels, *keys]}], extras)
    return _with_cell([{"type": "string", "minLength": 1, "maxLength": LONGEST_TEXT}], extras)


def _with_cell(plain: list[dict[str, Any]], extras: dict[str, Any]) -> dict[str, Any]:
    cell = _closed({"value": {"anyOf": plain}, **extras})
    return {"anyOf": [*plain, {**cell, "required": ["value"]}]}


def _same_everywhere(declared: NumberInput) -> bool:
    """Whether a plain number means the same in a metric and in a US file."""
    own = declared.measure
    return displayed(own, "us").size == own.size and not own.point


def _bounds(declared: NumberInput) -> dict[str, float]:
    if not _same_everywhere(declared):
        return {}
    low, high = declared.hard
    return {key: limit for key, limit in (("minimum", low), ("maximum", high)) if math.isfinite(limit)}


def _description(declared: Input) -> str:
    sentences = [declared.how]
    if isinstance(declared, NumberInput):
        sentences.append(_ranges(declared))
        if declared.optional:
            sentences.append("May be left out.")
        elif declared.default is None:
            sentences.append("Must be given.")
    return " ".join(filter(None, [*sentences, declared.note]))


def _ranges(declared: NumberInput) -> str:
    words = {system: usual_words(declared, usual_of(declared, system), system, "") for system in SYSTEMS}
    if words["metric"] == words["us"]:
        return f"Usually {words['metric']}."
    return f"Usually {words['metric']} in a metric file, {words['us']} in a US file."


def _default(field: Field) -> Any:
    """The default as a value that means the same in every file: a text with its unit where the systems differ."""
    declared = field.declared
    if isinstance(declared, TextInput):
        return declared.default or None
    if not isinstance(declared, NumberInput) or declared.default is None or any(axis.named for axis in field.inner):
        return None
    if isinstance(declared.default, tuple):
        members = zip(field.inner[0].members, declared.default, strict=True)
        shown = {key: _shown(declared, value) for key, value in members if value is not None}
        return shown if None in declared.default else list(shown.values())
    found: Any = _shown(declared, declared.default)
    for axis in reversed(field.inner):
        found = [found] * len(axis.members)
    return found


def _shown(declared: NumberInput, value: float) -> float | str:
    if declared.measure.date:
        return amount(value, declared.measure, "")
    return value if _same_everywhere(declared) else f"{_plain(value)} {declared.measure.shown()}"


def _plain(value: float) -> str:
    return str(int(value)) if Fraction(value).denominator == 1 else repr(value)
