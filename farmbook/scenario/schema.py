"""The shape of a scenario file as pydantic models, made from the declarations of the sections."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from typing import Annotated, Any, ClassVar, Final, cast

from pydantic import (
    AfterValidator,
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Field,
    ValidationInfo,
    WithJsonSchema,
    create_model,
)
from pydantic_core import PydanticCustomError

from farmbook.expr.axis import Axis
from farmbook.scenario import fields as f
from farmbook.scenario.json_words import field_schema
from farmbook.scenario.values import Value, as_cell, read_basis, read_number, read_option, read_text, read_word
from farmbook.scenario.words import UnfitError
from farmbook.sections.declare import BASES, Input, NumberInput, TextInput
from farmbook.sections.section import Section
from farmbook.units import SYSTEMS

__all__ = ["OWN_WORDS", "Header", "file_model", "json_schema"]

OWN_WORDS: Final = "farmbook"
"""Type of the errors that carry our own message."""
PAPERS: Final = ("letter", "a4")
_TABLE_BASIS: Final = "How the numbers of this table are known that do not say it themselves."


def _told(read: Callable[..., Any], *arguments: Any) -> Any:
    """Call a reader and hand its complaint to pydantic in our own words."""
    try:
        return read(*arguments)
    except UnfitError as complaint:
        raise PydanticCustomError(OWN_WORDS, "{wanted}", {"wanted": complaint.wanted}) from None


def _currency(given: object) -> str:
    text = read_text(given)
    if len(text) != 3 or not text.isascii() or not text.isalpha() or not text.isupper():
        raise UnfitError('three capital letters are wanted, such as "USD"')
    return text


Basis = Annotated[
    str,
    BeforeValidator(lambda given: _told(read_basis, given)),
    WithJsonSchema({"type": "string", "enum": list(BASES)}),
]
Units = Annotated[
    str,
    BeforeValidator(lambda given: _told(read_word, given, SYSTEMS)),
    WithJsonSchema({"type": "string", "enum": list(SYSTEMS)}),
]
Paper = Annotated[
    str,
    BeforeValidator(lambda given: _told(read_word, given, PAPERS)),
    WithJsonSchema({"type": "string", "enum": list(PAPERS)}),
]
Text = Annotated[str, BeforeValidator(lambda given: _told(read_text, given)), WithJsonSchema({"type": "string"})]
Currency = Annotated[
    str,
    BeforeValidator(lambda given: _told(_currency, given)),
    WithJsonSchema({"type": "string", "pattern": "^[A-Z]{3}$"}),
]


class Header(BaseModel):
    """What stands at the top of a file, before any table."""

    model_config = ConfigDict(extra="ignore")

    units: Units = Field(default_factory=str, description="What plain numbers in this file mean.")
    currency: Currency = Field(default_factory=str, description="The only currency of the file.")
    paper: Paper = Field(default_factory=str, description="Paper to print on; left out, it follows the units.")
    extends: Text = Field(
        default_factory=str, description="A scenario file beside this one, whose values this one changes."
    )


class _File(Header):
    model_config = ConfigDict(
        extra="forbid", json_schema_extra={"anyOf": [{"required": ["units", "currency"]}, {"required": ["extends"]}]}
    )


class _TextCell(BaseModel):
    model_config = ConfigDict(extra="forbid")
    basis: ClassVar[str] = ""

    value: Any
    note: Text = Field(default_factory=str)


class _Cell(BaseModel):
    model_config = ConfigDict(extra="forbid")

    value: Any
    basis: Basis = Field(default_factory=str)
    note: Text = Field(default_factory=str)


class _Closed(BaseModel):
    model_config = ConfigDict(extra="forbid")

    basis: Basis = Field(default_factory=str, description=_TABLE_BASIS)


class _Open(BaseModel):
    model_config = ConfigDict(extra="allow")

    basis: Basis = Field(default_factory=str, description=_TABLE_BASIS)


def _cell_type(declared: Input) -> Any:
    """One value: its structure judged by pydantic, its number and unit or its text by our own readers."""
    known = f.has_basis(declared)

    def finish(cell: _Cell | _TextCell, info: ValidationInfo) -> Value:
        if isinstance(declared, NumberInput):
            number = _told(read_number, declared, cell.value, info.context)
            return Value(number, "", cell.basis, cell.note, cell.value)
        text = _told(read_option, cast(TextInput, declared), cell.value)
        return Value(Fraction(0), text, cell.basis, cell.note, cell.value)

    wrap = BeforeValidator(lambda given: _told(lambda: as_cell(given, basis=known)))
    return Annotated[_Cell if known else _TextCell, wrap, AfterValidator(finish)]


def _members_type(axis: Axis, leaf: Any) -> Any:
    """A value for each member of a fixed axis: a list of all of them, or a table of some."""
    members = dict.fromkeys(axis.members, leaf)
    return Annotated[
        _model(f"Each{axis.name.capitalize()}", members), BeforeValidator(lambda given: _told(_by_member, axis, given))
    ]


def _by_member(axis: Axis, given: object) -> object:
    if isinstance(given, Mapping):
        return given
    count = len(axis.members)
    shown = ", ".join(axis.members[:6])
    if not isinstance(given, list):
        raise UnfitError(f"a list of {count} values is wanted, or a table with a value for each {axis.label} ({shown})")
    if len(given) != count:
        raise UnfitError(f"{count} values are wanted, one for each {axis.label} ({shown}); the list has {len(given)}")
    return dict(zip(axis.members, given, strict=True))


def _keyed_type(axis: Axis, leaf: Any) -> Any:
    return Annotated[
        dict[str, leaf],
        BeforeValidator(lambda given: _told(_table, given, f"a value for each {axis.label}, by its key")),
    ]


def _table(given: object, holding: str) -> object:
    if not isinstance(given, Mapping):
        raise UnfitError(f"a table is wanted here, with {holding}")
    return given


def _field_type(field: f.Field) -> Any:
    found = _cell_type(field.declared)
    for axis in reversed(field.inner):
        found = _keyed_type(axis, found) if axis.named else _members_type(axis, found)
    return Annotated[found, _Described(field)]


@dataclass(frozen=True)
class _Described:
    """What the JSON Schema says of a field, put in words only when a schema is asked for."""

    field: f.Field

    def __get_pydantic_json_schema__(self, *_: object) -> dict[str, Any]:
        return field_schema(self.field)


def _nothing() -> None:
    """What stands for a key that is left out."""


def _model(name: str, members: Mapping[str, Any], base: type[BaseModel] | None = None) -> type[BaseModel]:
    """A model whose keys may be any words: the attributes have names of their own."""
    attributes = {
        f"field_{place}": (kind, Field(default_factory=_nothing, alias=key))
        for place, (key, kind) in enumerate(members.items())
    }
    if base is None:
        return create_model(name, __config__=ConfigDict(extra="forbid"), **cast(Any, attributes))
    return create_model(name, __base__=base, **cast(Any, attributes))


def _table_model(table: f.Table) -> type[BaseModel]:
    title = table.key.replace("_", " ").title().replace(" ", "")
    own = {key: _field_type(field) for key, field in table.fields.items()}
    if table.axis is None:
        return _model(title, own, _Closed)
    row: Any = _model(f"{title}Row", {key: _field_type(field) for key, field in table.row_fields.items()}, _Closed)
    rows = type(
        f"{title}Rows", (_Open,), {"__annotations__": {"__pydantic_extra__": dict[str, row]}, "__module__": __name__}
    )
    return _model(title, own, rows)


def file_model(sections: Iterable[type[Section]]) -> type[BaseModel]:
    """The model of a whole file: one model for each section, one for each row of a named axis."""
    return _file_model(tuple(sections))


@lru_cache(maxsize=8)
def _file_model(sections: tuple[type[Section], ...]) -> type[BaseModel]:
    tables = f.tables_of(sections)
    members = {key: _with_table(_table_model(table), table) for key, table in tables.items()}
    return _model("Scenario", members, _File)


def _with_table(model: type[BaseModel], table: f.Table) -> Any:
    label = table.axis.label if table.axis else ""
    rows = f"a row for each {label}, as in [{table.key}.first_{label}]"
    holding = rows if label else f"its values below the heading [{table.key}]"
    return Annotated[
        model,
        BeforeValidator(lambda given: _told(_table, given, holding)),
        Field(title=table.title or label.capitalize()),
    ]


def json_schema(sections: Iterable[type[Section]]) -> dict[str, Any]:
    """The JSON Schema of scenario files, for editors: title, units, usual range, default and options of every key."""
    found = file_model(sections).model_json_schema()
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", **found, "title": "farmbook scenario"}
