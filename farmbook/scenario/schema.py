"""The shape of a scenario file as pydantic models, made from the declarations of the sections."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from functools import lru_cache
from typing import Annotated, Any, Final, cast

from pydantic import AfterValidator, BaseModel, BeforeValidator, ConfigDict, Field, ValidationInfo, WithJsonSchema, create_model
from pydantic_core import PydanticCustomError

from farmbook.expr.axis import Axis
from farmbook.model.declare import BASES, Input, NumberInput, TextInput
from farmbook.model.section import Section
from farmbook.scenario import fields as f
from farmbook.scenario.json_words import field_schema
from farmbook.scenario.values import Context, Value, as_cell, read_basis, read_number, read_option, read_text, read_word
from farmbook.scenario.words import Unreadable
from farmbook.units import SYSTEMS

__all__ = ["OWN_WORDS", "Header", "file_model", "json_schema"]

OWN_WORDS: Final = "farmbook"
"""Type of the errors that carry our own message."""
PAPERS: Final = ("letter", "a4")

Reader = Callable[[Any, Context], Any]


def _told(read: Callable[..., Any], *arguments: Any) -> Any:
    """Call a reader and hand its complaint to pydantic in our own words."""
    try:
        return read(*arguments)
    except Unreadable as complaint:
        raise PydanticCustomError(OWN_WORDS, "{wanted}", {"wanted": complaint.wanted}) from None


def _currency(given: object) -> str:
    text = read_text(given)
    if len(text) != 3 or not text.isascii() or not text.isalpha() or not text.isupper():
        raise Unreadable('three capital letters are wanted, such as "USD"')
    return text


Basis = Annotated[
    str, BeforeValidator(lambda given: _told(read_basis, given)), WithJsonSchema({"type": "string", "enum": list(BASES)})
]
Text = Annotated[str, BeforeValidator(lambda given: _told(read_text, given)), WithJsonSchema({"type": "string"})]


def _word(options: tuple[str, ...]) -> Any:
    reader = BeforeValidator(lambda given: _told(read_word, given, options))
    return Annotated[str, reader, WithJsonSchema({"type": "string", "enum": list(options)})]


class Header(BaseModel):
    """What stands at the top of a file, before any table."""

    model_config = ConfigDict(extra="ignore")

    units: Annotated[_word(SYSTEMS), Field(description="What plain numbers in this file mean: metric or US customary.")] = ""
    currency: Annotated[
        str,
        BeforeValidator(lambda given: _told(_currency, given)),
        WithJsonSchema({"type": "string", "pattern": "^[A-Z]{3}$", "description": "The only currency of the file."}),
    ] = ""
    paper: Annotated[_word(PAPERS), Field(description="Paper to print on; left out, it follows the units.")] = ""
    extends: Annotated[Text, Field(description="Another scenario file, beside this one, whose values this one changes.")] = ""


class _File(Header):
    model_config = ConfigDict(
        extra="forbid", json_schema_extra={"anyOf": [{"required": ["units", "currency"]}, {"required": ["extends"]}]}
    )


class _Cell(BaseModel):
    model_config = ConfigDict(extra="forbid")

    value: Any
    basis: Basis = ""
    note: Text = ""


class _TextCell(BaseModel):
    model_config = ConfigDict(extra="forbid")

    value: Any
    note: Text = ""


class _Closed(BaseModel):
    model_config = ConfigDict(extra="forbid")

    basis: Annotated[Basis, Field(description="How all plain numbers of this table are known.")] = ""


class _Open(BaseModel):
    model_config = ConfigDict(extra="allow")

    basis: Annotated[Basis, Field(description="How all plain numbers of this table itself are known.")] = ""


def _cell_type(declared: Input) -> Any:
    """One value: its structure judged by pydantic, its number and unit or its text by our own readers."""
    numeric = isinstance(declared, NumberInput)

    def finish(cell: _Cell | _TextCell, info: ValidationInfo) -> Value:
        if isinstance(declared, NumberInput):
            number = _told(read_number, declared, cell.value, info.context)
            return Value(number, "", cast(_Cell, cell).basis, cell.note, cell.value)
        return Value(None, _told(read_option, cast(TextInput, declared), cell.value), "", cell.note, cell.value)

    wrap = BeforeValidator(lambda given: _told(lambda: as_cell(given, basis=numeric)))
    return Annotated[_Cell if numeric else _TextCell, wrap, AfterValidator(finish)]


def _members_type(axis: Axis, leaf: Any) -> Any:
    """A value for each member of a fixed axis: a list of all of them, or a table of some."""
    members = {member: (leaf, None) for member in axis.members}
    return Annotated[_model(f"Each{axis.name.capitalize()}", members), BeforeValidator(lambda given: _told(_by_member, axis, given))]


def _by_member(axis: Axis, given: object) -> object:
    if isinstance(given, Mapping):
        return given
    count = len(axis.members)
    shown = ", ".join(axis.members[:6])
    if not isinstance(given, list):
        raise Unreadable(f"a list of {count} values is wanted, or a table with a value for each {axis.label} ({shown})")
    if len(given) != count:
        raise Unreadable(f"{count} values are wanted, one for each {axis.label} ({shown}); the list has {len(given)}")
    return dict(zip(axis.members, given, strict=True))


def _keyed_type(axis: Axis, leaf: Any) -> Any:
    return Annotated[dict[str, leaf], BeforeValidator(lambda given: _told(_table, given, f"a value for each {axis.label}, by its key"))]


def _table(given: object, holding: str) -> object:
    if not isinstance(given, Mapping):
        raise Unreadable(f"a table is wanted here, with {holding}")
    return given


def _field_type(field: f.Field) -> Any:
    found = _cell_type(field.declared)
    for axis in reversed(field.inner):
        found = _keyed_type(axis, found) if axis.named else _members_type(axis, found)
    return Annotated[found, WithJsonSchema(field_schema(field))]


def _model(name: str, members: Mapping[str, tuple[Any, Any]], base: type[BaseModel] | None = None) -> type[BaseModel]:
    """A model whose keys may be any words: the attributes have names of their own."""
    attributes = {f"field_{place}": (kind, Field(default, alias=key)) for place, (key, (kind, default)) in enumerate(members.items())}
    if base is None:
        return create_model(name, __config__=ConfigDict(extra="forbid"), **cast(Any, attributes))
    return create_model(name, __base__=base, **cast(Any, attributes))


def _table_model(table: f.Table) -> type[BaseModel]:
    title = table.key.replace("_", " ").title().replace(" ", "")
    own = {key: (_field_type(field), None) for key, field in table.fields.items()}
    if table.axis is None:
        return _model(title, own, _Closed)
    row = _model(f"{title}Row", {key: (_field_type(field), None) for key, field in table.row_fields.items()}, _Closed)
    rows = type(f"{title}Rows", (_Open,), {"__annotations__": {"__pydantic_extra__": dict[str, row]}, "__module__": __name__})
    return _model(title, own, rows)


def file_model(sections: Iterable[type[Section]]) -> type[BaseModel]:
    """The model of a whole file: one model for each section, one for each row of a named axis."""
    return _file_model(tuple(sections))


@lru_cache(maxsize=8)
def _file_model(sections: tuple[type[Section], ...]) -> type[BaseModel]:
    tables = f.tables_of(sections)
    members = {key: (_with_table(_table_model(table), table), None) for key, table in tables.items()}
    return _model("Scenario", members, _File)


def _with_table(model: type[BaseModel], table: f.Table) -> Any:
    label = table.axis.label if table.axis else ""
    holding = f"a row for each {label}, as in [{table.key}.first_{label}]" if label else f"its values below the heading [{table.key}]"
    return Annotated[model, BeforeValidator(lambda given: _told(_table, given, holding)), Field(title=table.title or label.capitalize())]


def json_schema(sections: Iterable[type[Section]]) -> dict[str, Any]:
    """The JSON Schema of scenario files, for editors: titles, units, usual ranges, defaults and options of every key."""
    found = file_model(sections).model_json_schema()
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", **found, "title": "farmbook scenario"}
