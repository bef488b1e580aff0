"""The JSON Schema: the same list of keys as validation has, and defaults that load as the defaults they describe."""

from __future__ import annotations

import json
import tomllib
from typing import Any

import numpy as np
import pytest

from farmbook.model.farm import SECTIONS, farm_model
from farmbook.scenario.fields import tables_of
from farmbook.scenario.load import read
from farmbook.scenario.schema import json_schema
from tests.scenario.bakery import GOOD, Bakery, Sale

SCHEMA = json_schema([Bakery, Sale])


def properties(table: str, schema: dict[str, Any] = SCHEMA) -> dict[str, Any]:
    reference = schema["properties"][table]["$ref"]
    found: dict[str, Any] = schema["$defs"][reference.rpartition("/")[2]]
    return found


def test_the_keys_are_those_of_the_declarations() -> None:
    assert set(SCHEMA["properties"]) == {
        "units",
        "currency",
        "paper",
        "months",
        "extends",
        "bakery",
        "sale",
        "loaf",
        "stall",
    }
    assert set(properties("bakery")["properties"]) == {
        field.name for field in Bakery.declared if hasattr(field, "how")
    } | {"basis"}
    row = SCHEMA["$defs"][properties("loaf")["additionalProperties"]["$ref"].rpartition("/")[2]]
    assert set(row["properties"]) == {"name", "basis", "flour_price", "salt", "width"}
    assert row["additionalProperties"] is False
    assert SCHEMA["additionalProperties"] is False
    assert SCHEMA["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    json.dumps(SCHEMA)


def test_words_of_a_field() -> None:
    heat = properties("bakery")["properties"]["oven_heat"]
    assert heat["title"] == "Heat of the oven"
    assert (
        heat["description"]
        == "Probe in the middle. Usually 180 to 260 degC in a metric file, 356 to 500 degF in a US file."
    )
    assert heat["default"] == "220 degC"
    share = properties("bakery")["properties"]["bake_off"]
    assert share["description"] == "Scale. Usually 8 to 20 %."
    assert (share["default"], share["anyOf"][0]) == (0.12, {"type": "number", "minimum": 0, "maximum": 1})
    power = properties("bakery")["properties"]["oven_power"]
    assert power["description"] == "Nameplate. Usually 5 to 40 kW. Must be given."
    assert "default" not in power
    assert properties("bakery")["properties"]["own_time"]["description"].endswith("May be left out.")


def test_options_and_units_are_enumerations() -> None:
    fuel = properties("bakery")["properties"]["fuel"]
    assert fuel["anyOf"][0] == {"enum": ["wood", "gas", "electricity", "power"]}
    assert fuel["default"] == "gas"
    assert SCHEMA["properties"]["units"]["enum"] == ["metric", "us"]
    assert SCHEMA["properties"]["paper"]["enum"] == ["letter", "a4"]
    assert "measured" in properties("bakery")["properties"]["basis"]["enum"]


def test_a_list_of_a_fixed_axis() -> None:
    rest = properties("bakery")["properties"]["rest"]
    listed, keyed = rest["anyOf"]
    assert (listed["type"], listed["minItems"], listed["maxItems"]) == ("array", 2, 2)
    assert set(keyed["properties"]) == {"first", "second"}
    assert rest["default"] == [8, 1]


def test_a_default_that_leaves_a_member_blank_names_the_others() -> None:
    materials = properties("own_spawn", json_schema(SECTIONS))["properties"]["unit_cost"]
    assert materials["default"] == {"second_grain": 2.6, "grain": 2.6, "plate": 0.9}


@pytest.mark.parametrize("system", ["metric", "us"])
def test_typing_every_default_of_the_schema_changes_nothing_but_the_digits(system: str) -> None:
    model = farm_model()
    schema = json_schema(SECTIONS)
    plain: dict[str, Any] = {
        "units": system,
        "currency": "USD",
        "farm": {"bags_filled_a_week": 600, "bags_per_load": 1000},
        "ingredient": {"oak": {}},
        "recipe": {"standard": {}},
        "loan": {"van": {"amount": 20000, "rate": 0.05, "term": 60}},
        "request": {},
        "crosswalk": {},
    }
    typed = json.loads(json.dumps(plain))
    for key, table in tables_of(SECTIONS).items():
        about = properties(key, schema)
        defaults = {name: field["default"] for name, field in about["properties"].items() if "default" in field}
        typed.setdefault(key, {}).update(defaults)
        if table.axis is not None:
            row = schema["$defs"][about["additionalProperties"]["$ref"].rpartition("/")[2]]
            for each in plain.get(key, {}):
                found = {name: field["default"] for name, field in row["properties"].items() if "default" in field}
                typed[key][each].update(found)
    before, after = read(plain, model), read(typed, model)
    assert len(json.dumps(typed)) > 2 * len(json.dumps(plain))
    for raw, cells in before.cells.items():
        if raw.kind == "number":
            np.testing.assert_allclose(after.cells[raw].numbers, cells.numbers, rtol=6e-3, err_msg=raw.name)


def test_a_file_that_loads_has_only_keys_of_the_schema() -> None:
    given = tomllib.loads(GOOD)
    assert set(given) <= set(SCHEMA["properties"])
    assert set(given["bakery"]) <= set(properties("bakery")["properties"])
