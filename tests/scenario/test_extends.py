"""Files that extend others: merged by key, each file's plain numbers in its own units."""

from __future__ import annotations

from pathlib import Path

import pytest

from farmbook.errors import FileProblem
from farmbook.scenario.load import load
from tests.scenario.bakery import GOOD, LOAF, MODEL, Bakery, Sale, basis, cell, numbers, texts, told, written


def reason(path: Path) -> str:
    with pytest.raises(FileProblem) as caught:
        load(path, MODEL)
    return f"{Path(caught.value.path).name} {caught.value.reason}"


def test_a_file_changes_what_it_names_and_keeps_the_rest(tmp_path: Path) -> None:
    written(tmp_path, GOOD, "base.toml")
    child = """
extends = "base.toml"
[bakery]
oven_power = { value = 20, basis = "measured" }
[bakery.risen]
second = 0.6
[loaf.white_tin]
name = "White"
[loaf.spelt]
flour_price = 2
[stall.green_market.sold]
spelt = 30
"""
    found = load(written(tmp_path, child), MODEL)
    assert (found.system, found.currency, found.paper) == ("metric", "EUR", "a4")
    assert found.rows[LOAF] == ("rye", "white_tin", "spelt")
    assert numbers(found, Bakery.oven_power) == 20
    assert numbers(found, Bakery.risen) == [0.9, 0.6]
    assert numbers(found, Sale.flour_price)[:3] == [1.1, 0.9, 2]
    assert texts(found, cell(Sale.loaves))[:3] == ["Rye", "White", "Spelt"]
    assert [row[0] for row in numbers(found, Sale.sold)][:3] == [0, 0, 30]
    assert texts(found, basis(Bakery.oven_power)) == "measured"


def test_each_file_means_its_plain_numbers_in_its_own_units(tmp_path: Path) -> None:
    written(
        tmp_path,
        GOOD + "width = 1\n[loaf.old]\nflour_price = 1\nwidth = 0.3048\n".replace("width = 1\n", "", 1),
        "base.toml",
    )
    child = 'extends = "base.toml"\nunits = "us"\n[loaf.rye]\nwidth = 2\n[bakery]\noven_heat = 450\n'
    found = load(written(tmp_path, child), MODEL)
    assert found.system == "us"
    assert numbers(found, Sale.width)[:3] == [
        2,
        pytest.approx(0.984, abs=1e-12),
        1,
    ]  # ft: typed, default 0.3 m, 0.3048 m
    assert numbers(found, Bakery.oven_heat) == 450


def test_files_may_be_chained(tmp_path: Path) -> None:
    written(tmp_path, GOOD, "a.toml")
    written(tmp_path, 'extends = "a.toml"\n[bakery]\noven_power = 20\nfuel = "wood"\n', "b.toml")
    found = load(written(tmp_path, 'extends = "b.toml"\n[bakery]\noven_power = 25\n'), MODEL)
    assert numbers(found, Bakery.oven_power) == 25
    assert texts(found, cell(Bakery.fuel)) == "wood"


def test_the_digest_covers_the_files_below(tmp_path: Path) -> None:
    written(tmp_path, GOOD, "a.toml")
    path = written(tmp_path, 'extends = "a.toml"\n')
    before = load(path, MODEL).digest
    written(tmp_path, GOOD + "# remark\n", "a.toml")
    assert load(path, MODEL).digest != before


def test_a_problem_in_a_file_below_names_that_file(tmp_path: Path) -> None:
    written(tmp_path, GOOD.replace("oven_power = 18", "oven_power = true"), "a.toml")
    assert told(tmp_path, 'extends = "a.toml"\n') == [
        ("[bakery] oven_power (in a.toml)", "true", "a number is wanted, not true or false")
    ]


def test_two_currencies_do_not_mix(tmp_path: Path) -> None:
    written(tmp_path, GOOD, "a.toml")
    wanted = "the file that this one extends is in EUR; money of two currencies is not mixed"
    assert told(tmp_path, 'extends = "a.toml"\ncurrency = "USD"\n') == [("currency", '"USD"', wanted)]


def test_a_missing_base(tmp_path: Path) -> None:
    written(tmp_path, GOOD, "base.toml")
    path = written(tmp_path, 'extends = "bass.toml"\n')
    assert reason(path) == "bass.toml does not exist; did you mean `base.toml`? (`oak_lane.toml` extends it)"


def test_a_cycle(tmp_path: Path) -> None:
    written(tmp_path, 'extends = "oak_lane.toml"\n', "b.toml")
    path = written(tmp_path, 'extends = "b.toml"\n')
    assert reason(path) == "oak_lane.toml extends itself: `oak_lane.toml` -> `b.toml` -> `oak_lane.toml`"
    written(tmp_path, 'extends = "./oak_lane.toml"\n')
    assert reason(path) == "oak_lane.toml extends itself: `oak_lane.toml` -> `oak_lane.toml`"


def test_eight_steps_and_no_more(tmp_path: Path) -> None:
    written(tmp_path, GOOD, "0.toml")
    for step in range(1, 10):
        written(tmp_path, f'extends = "{step - 1}.toml"\n', f"{step}.toml")
    assert load(tmp_path / "8.toml", MODEL).currency == "EUR"
    assert reason(tmp_path / "9.toml") == "9.toml extends more than 8 files, one through the other"


@pytest.mark.parametrize(("named", "told_as"), [(r"a\u0000b", r"a\u0000b"), (r"a\u200Bb.toml", r"a\u200Bb.toml")])
def test_a_file_with_characters_that_are_not_shown(tmp_path: Path, named: str, told_as: str) -> None:
    path = written(tmp_path, f'extends = "{named}"\n')
    with pytest.raises(FileProblem) as caught:
        load(path, MODEL)
    assert str(caught.value).isprintable()
    assert told_as in str(caught.value)


def test_extends_is_a_text(tmp_path: Path) -> None:
    assert told(tmp_path, "extends = 5\n" + GOOD) == [
        ("extends", "5", "a text in quotation marks is wanted, not a number")
    ]
    assert told(tmp_path, 'extends = ""\n' + GOOD) == [
        ("extends", '""', "is empty; leave the key out to keep what the book fills in")
    ]


def padded(text: str, size: int) -> str:
    """A text made so many bytes long by a remark."""
    return f"{text}# {'x' * (size - len(text) - 3)}\n"


def test_a_chain_has_the_room_of_one_file(tmp_path: Path) -> None:
    written(tmp_path, padded(GOOD, 400_000), "a.toml")
    written(tmp_path, padded('extends = "a.toml"\n', 300_000), "b.toml")
    assert load(written(tmp_path, padded('extends = "b.toml"\n', 300_000)), MODEL).currency == "EUR"
    path = written(tmp_path, padded('extends = "b.toml"\n', 300_001))
    words = "together with the files that extend it larger than 1 MB, far more than a scenario needs"
    assert reason(path) == f"a.toml is {words} (`b.toml` extends it)"


def test_nine_files_of_a_megabyte_are_not_all_read(tmp_path: Path) -> None:
    for step in range(9):
        text = GOOD if step == 0 else f'extends = "{step - 1}.toml"\n'
        written(tmp_path, padded(text, 1_000_000), f"{step}.toml")
    assert reason(tmp_path / "8.toml").startswith("7.toml is together with the files that extend it larger than 1 MB")


def test_what_a_screen_would_obey_is_shown_as_its_number(tmp_path: Path) -> None:
    path = written(tmp_path, 'extends = "a\\u001B[31m\\u202Eb\\n.toml"\n')
    with pytest.raises(FileProblem) as caught:
        load(path, MODEL)
    assert str(caught.value).endswith("a\\u001B[31m\\u202Eb\\u000A.toml` does not exist (`oak_lane.toml` extends it)")
    base = "b\u202e.toml"
    (tmp_path / base).write_text(GOOD.replace("oven_power = 18", "oven_power = true"), encoding="utf-8")
    places = {where for where, _, _ in told(tmp_path, 'extends = "b\\u202E.toml"\n')}
    assert places == {"extends", "[bakery] oven_power (in b\\u202E.toml)"}
