"""Files nobody thought of: a scenario, or an error of farmbook's own in plain words; never anything else."""

from __future__ import annotations

import tempfile
from collections.abc import Callable
from pathlib import Path
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from farmbook.errors import FarmbookError, FileProblem, ModelFault, ScenarioProblems
from farmbook.scenario.load import load, read
from farmbook.scenario.scenario import Scenario
from tests.scenario.bakery import GOOD, MODEL

SETTINGS = settings(max_examples=200, deadline=None, derandomize=True, database=None)

RAW_WORDS = ("pydantic", "Traceback", "tomllib", "Extra inputs", "Input should", "type=", "<class", "object at")

WORDS = st.sampled_from(
    [
        *("units", "currency", "paper", "extends", "bakery", "sale", "loaf", "stall", "name", "basis", "value", "note"),
        *(
            "oven_heat",
            "oven_power",
            "risen",
            "fuel",
            "rest",
            "sold",
            "keeping",
            "flour_price",
            "best",
            "first",
            "second",
        ),
        *("rye", "green_market", "metric", "us", "EUR", "guess", "wood", "5 lb", "55 %", "5 gal/", "1 EUR/kg"),
    ]
)
SCALARS = st.one_of(
    WORDS,
    st.text(max_size=20),
    st.booleans(),
    st.integers(),
    st.floats(),
    st.decimals(),
    st.dates(),
    st.times(),
    st.datetimes(),
)
KEYS = st.one_of(WORDS, st.text(max_size=8))
VALUES = st.recursive(
    SCALARS,
    lambda inner: st.one_of(st.lists(inner, max_size=3), st.dictionaries(KEYS, inner, max_size=4)),
    max_leaves=12,
)


def judged(make: Callable[[], Scenario]) -> Scenario | FarmbookError:
    """What comes of reading: anything but a scenario or one of our errors fails the test by itself."""
    found = outcome(make)
    if isinstance(found, FarmbookError):
        assert not isinstance(found, ModelFault)
        assert not any(word in str(found) for word in RAW_WORDS), str(found)
    else:
        assert isinstance(found, Scenario)
    return found


def outcome(make: Callable[[], Scenario]) -> Scenario | FarmbookError:
    try:
        return make()
    except FarmbookError as error:
        return error


def from_bytes(content: bytes) -> Scenario | FarmbookError:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "junk.toml"
        path.write_bytes(content)
        return judged(lambda: load(path, MODEL))


@SETTINGS
@given(st.binary(max_size=300))
def test_bytes(content: bytes) -> None:
    assert isinstance(from_bytes(content), (FileProblem, ScenarioProblems))


@SETTINGS
@given(st.text(max_size=300))
def test_texts(content: str) -> None:
    assert isinstance(from_bytes(content.encode("utf-8", "surrogatepass")), (FileProblem, ScenarioProblems))


@SETTINGS
@given(st.data())
def test_a_good_file_damaged_in_places(data: st.DataObject) -> None:
    content = GOOD
    for _ in range(data.draw(st.integers(1, 4))):
        start = data.draw(st.integers(0, len(content)))
        end = data.draw(st.integers(start, min(len(content), start + 12)))
        content = content[:start] + data.draw(st.one_of(WORDS, st.text(max_size=6))) + content[end:]
    from_bytes(content.encode("utf-8", "surrogatepass"))


@SETTINGS
@given(st.dictionaries(KEYS, VALUES, max_size=6))
def test_tables_of_anything(tables: dict[str, Any]) -> None:
    found = judged(lambda: read(tables, MODEL))
    assert isinstance(found, (FileProblem, ScenarioProblems)) or tables["currency"]


@SETTINGS
@given(st.dictionaries(st.sampled_from(["bakery", "sale", "loaf", "stall"]), VALUES), st.sampled_from(["metric", "us"]))
def test_tables_of_anything_below_a_good_head(tables: dict[str, Any], system: str) -> None:
    found = judged(lambda: read({**tables, "units": system, "currency": "EUR"}, MODEL))
    if isinstance(found, Scenario):
        assert "bakery" in tables


@SETTINGS
@given(st.dictionaries(KEYS, VALUES, max_size=3), st.sampled_from(["bakery", "sale", "loaf", "stall"]))
def test_one_table_of_anything_in_a_good_scenario(inside: dict[str, Any], key: str) -> None:
    good: dict[str, Any] = {
        "units": "us",
        "currency": "EUR",
        "bakery": {"oven_power": 18, "risen": [0.9, 0.5]},
        "loaf": {"rye": {"flour_price": 1.1}},
        "stall": {"market": {"sold": {"rye": 4}}},
    }
    found = judged(lambda: read({**good, key: {**good.get(key, {}), **inside}}, MODEL))
    if isinstance(found, Scenario):
        assert found.cells
