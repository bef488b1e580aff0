"""Tables left out whole, though nearly every farm gives some of them."""

from __future__ import annotations

from pathlib import Path

import pytest

from farmbook.model.farm import SECTIONS, farm_model
from farmbook.scenario.fields import tables_of
from farmbook.scenario.load import load

ASKED = [section for section in SECTIONS if section.most_give]
MODEL = farm_model()
HEAD = """
units = "us"
currency = "USD"

[farm]
bags_filled_a_week = 500
bags_per_load = 300

[ingredient.sawdust]

[recipe.house]
parts = { sawdust = 1 }
"""


def told(folder: Path, content: str) -> dict[str, str]:
    """What is said of whole tables."""
    path = folder / "farm.toml"
    path.write_text(content, encoding="utf-8")
    return {problem.where: problem.wanted for problem in load(path, MODEL).warnings}


def test_each_is_told_with_what_most_farms_give_of_it(tmp_path: Path) -> None:
    words = "left out whole, so the book fills all of it in; most farms give"
    assert told(tmp_path, HEAD) == {
        "[energy]": f"{words} `electricity_price` and `demand_charge`",
        "[bag]": f"{words} `wet_fill` and `bag_price`",
        "[cabinet]": f"{words} `power` and `hold_time`",
        "[crop]": f"{words} `flushes_kept` and `yield_given`",
        "[spawn]": f"{words} `spawn_rate` and `price`",
    }


def test_one_value_of_a_table_is_enough(tmp_path: Path) -> None:
    rest = "[energy]\nvoltage = 240\n[bag]\ntie_price = 0.02\n[cabinet]\nfuel = 'propane'\n[spawn]\nfreight = 0.5\n"
    assert list(told(tmp_path, f"{HEAD}{rest}")) == ["[crop]"]


def test_a_table_of_the_file_below_counts(tmp_path: Path) -> None:
    (tmp_path / "base.toml").write_text(HEAD + "[energy]\ndemand_charge = 0\n", encoding="utf-8")
    assert "[energy]" not in told(tmp_path, 'extends = "base.toml"\n[bag]\nbag_price = 0.3\n')


@pytest.mark.parametrize("section", ASKED, ids=lambda each: each.__name__)
def test_what_most_farms_give_are_keys_of_the_table(section: type) -> None:
    kind = next(each for each in ASKED if each is section)
    assert set(kind.most_give) <= set(tables_of(SECTIONS)[kind.scenario_table()].fields)
