"""The list of sources."""

from __future__ import annotations

import re
from typing import get_args

import pytest

from farmbook import sources
from farmbook.errors import ModelFault
from farmbook.model.farm import farm_model
from farmbook.sources import ALL, Source
from tests.calc.functions_of_calc import CALCULATIONS, CONSTANTS


def test_keys_are_words_and_each_stands_once() -> None:
    keys = [source.key for source in ALL]
    assert len(set(keys)) == len(keys)
    assert all(re.fullmatch(r"[a-z][a-z0-9_]*", key) for key in keys)


def test_every_source_of_the_module_is_listed() -> None:
    written = {value.key for value in vars(sources).values() if isinstance(value, Source)}
    assert {source.key for source in ALL} == written


every_source = pytest.mark.parametrize("source", ALL, ids=lambda source: source.key)


@every_source
def test_a_source_says_what_it_is_where_the_fact_stands_and_how_it_is_known(source: Source) -> None:
    assert source.title
    assert source.place
    assert source.how_known in get_args(sources.HowKnown)
    assert "http" not in source.place


@every_source
def test_a_work_has_a_title_of_its_own_and_somebody_who_stands_for_it(source: Source) -> None:
    no_work = source in (sources.ARITHMETIC, sources.COMMON_PRACTICE)
    assert bool(source.author) != no_work
    assert not re.search(r"\b(calculator|converter|help|function)", f"{source.title} {source.place}", re.IGNORECASE)


@every_source
def test_something_rests_on_the_source(source: Source) -> None:
    """A work nothing is taken from would lend the book a weight that it does not have."""
    model = farm_model()
    cited = {line.source for line in model.lines} | {constant.source for constant in CONSTANTS}
    cited |= {declared.source.key for declared in model.inputs if declared.source}
    cited |= {name for each in CALCULATIONS for name in re.findall(r"Source: (\w+)\.", each.__doc__ or "")}
    assert source.key in cited


def test_common_practice_says_that_it_has_no_source() -> None:
    assert sources.COMMON_PRACTICE.title == "common practice, no source"
    assert sources.COMMON_PRACTICE.how_known == "no source"


def test_a_key_that_is_not_listed_is_refused() -> None:
    assert sources.source_of("wood_handbook") is sources.WOOD_HANDBOOK
    with pytest.raises(ModelFault, match="no source `wood`"):
        sources.source_of("wood")
