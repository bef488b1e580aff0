"""What a JSON Schema says of one input: title, units, usual range, default, options."""

from __future__ import annotations

import math
from fractions import Fraction
from typing import Any

from farmbook.model.declare import BASES, Choice, Input, NumberInput, TextInput
from farmbook.scenario.fields import Field
from farmbook.scenario.limits import usual_of
from farmbook.scenario.values import LONGEST_TEXT
from farmbook.scenario.words import usual_words
from farmbook.units import SYSTEMS, displayed, unit

__all__ = ["field_schema"]


def field_schema(field: Field) -> dict[str, Any]:
    """The schema of one field, with the lists and tables of its inner axes."""
    found = _leaf(field.declared)
    for axis in reversed(field.inner):
        if axis.named:
            found = {"type": "object", "additionalProperties": found}
        else:
            count = len(axis.members)
            listed = {"type": "array", "items": found, "minItems": count, "maxItems": count}
            keyed = {
                "type": "object",
                "properties": dict.fromkeys(axis.members, found),
                "additionalProperties": False,
            }
            found = {"anyOf": [listed, keyed]}
    about: dict[str, Any] = {"title": field.declared.label, "description": _description(field.declared)}
    default = _default(field.declared)
    return {**found, **about} if default is None else {**found, **about, "default": default}


def _leaf(declared: Input) -> dict[str, Any]:
    note = {"type": "string", "maxLength": LONGEST_TEXT}
    if isinstance(declared, NumberInput):
        return _with_cell(
            [{"type": "number", **_bounds(declared)}, {"type": "string"}],
            {"basis": {"enum": list(BASES)}, "note": note},
        )
    text: dict[str, Any] = {"type": "string", "minLength": 1, "maxLength": LONGEST_TEXT}
    if isinstance(declared, Choice):
        text = {"enum": list(declared.options)}
    return _with_cell([text], {"note": note})


def _with_cell(plain: list[dict[str, Any]], extras: dict[str, Any]) -> dict[str, Any]:
    cell = {"type": "object", "properties": {"value": {"anyOf": plain}, **extras}}
    return {"anyOf": [*plain, {**cell, "required": ["value"], "additionalProperties": False}]}


def _same_everywhere(declared: NumberInput) -> bool:
    """Whether a plain number means the same in a metric and in a US file."""
    own = unit(declared.unit)
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


def _default(declared: Input) -> Any:
    """The default as a value that means the same in every file: a text with its unit where the systems differ."""
    if isinstance(declared, TextInput):
        return declared.default or None
    if not isinstance(declared, NumberInput) or declared.default is None:
        return None
    values = declared.default if isinstance(declared.default, tuple) else (declared.default,)
    shown = [
        value if _same_everywhere(declared) else f"{_plain(value)} {unit(declared.unit).shown()}" for value in values
    ]
    return shown if isinstance(declared.default, tuple) else shown[0]


def _plain(value: float) -> str:
    return str(int(value)) if Fraction(value).denominator == 1 else repr(value)
