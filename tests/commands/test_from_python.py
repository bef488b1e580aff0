"""From Python: frames with units and labels, and the shipped example."""

from __future__ import annotations

import runpy
from pathlib import Path

import pytest

import farmbook
import farmbook.errors

ROOT = Path(__file__).parents[2]


def test_frames_carry_values_units_and_labels() -> None:
    results = farmbook.compute(farmbook.load(ROOT / "scenarios" / "hof_fennewald.toml"))
    tables = farmbook.frames(results)
    assert tables["farm"].loc["wage_used", "value"] == 15.2
    assert tables["farm"].loc["labour_rate", "value"] == pytest.approx(15.2 * 1.23)
    assert tables["farm"].loc["wage_used", "unit"] == "EUR/hour of work"
    ingredients = tables["ingredient.ingredient"]
    assert list(ingredients.index.get_level_values("ingredient")) == [
        "beech_sawdust", "wheat_bran", "spelt_hulls", "limestone",
    ]  # fmt: skip
    assert ingredients.attrs["units"]["price_used"] == "EUR/kg"
    assert tables["recipe.ingredient.recipe"]["parts_used"].loc[("wheat_bran", "summer")] == 8


def test_a_share_is_told_as_a_share_of_one_and_a_text_without_a_unit() -> None:
    results = farmbook.compute(farmbook.load(ROOT / "scenarios" / "hof_fennewald.toml"))
    tables = farmbook.frames(results)
    assert tables["farm"].loc["payroll_extra_used", ["value", "unit"]].tolist() == [0.23, "share"]
    assert isinstance(tables["report"].loc["verdict", "value"], str)
    assert tables["report"].loc["verdict", "unit"] == ""
    assert tables["recipe.recipe"].attrs["units"]["target_moisture_used"] == "share"
    for table in tables.values():
        for name, unit in dict(table.attrs.get("units", {}), **dict(table.get("unit", {}))).items():
            values = [table.loc[name, "value"]] if "unit" in table else table[name]
            assert {isinstance(value, str) for value in values} <= {unit == ""}, name
            assert "%" not in unit, name


def test_build_returns_the_path_and_keeps_an_edited_file(tmp_path: Path) -> None:
    results = farmbook.compute(farmbook.load(ROOT / "scenarios" / "hof_fennewald.toml"))
    path = farmbook.build(results, tmp_path / "book.xlsx")
    path.write_bytes(b"somebody's own")
    with pytest.raises(farmbook.errors.FileProblem, match="left as it is"):
        farmbook.build(results, path)
    assert path.read_bytes() == b"somebody's own"


def test_the_example_runs(capsys: pytest.CaptureFixture[str]) -> None:
    example = runpy.run_path(str(ROOT / "docs" / "from_python.py"))
    example["main"](ROOT / "scenarios" / "kestrel_hollow.toml")
    lines = capsys.readouterr().out.splitlines()
    prices = [float(line.split()[-5]) for line in lines if "a bag filled" in line]
    assert len(prices) == 3
    assert prices == sorted(prices)
    assert prices[0] < prices[-1]
