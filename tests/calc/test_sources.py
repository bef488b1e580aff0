"""The list of sources."""

from __future__ import annotations

import re
from typing import get_args

import pytest

from farmbook import sources
from farmbook.errors import ModelFault
from farmbook.expr.nodes import Named
from farmbook.expr.walk import walk
from farmbook.results import whole_farm
from farmbook.sources import ALL, Source


def test_keys_are_words_and_each_stands_once() -> None:
    keys = [source.key for source in ALL]
    assert len(set(keys)) == len(keys)
    assert all(re.fullmatch(r"[a-z][a-z0-9_]*", key) for key in keys)


def test_every_source_of_the_module_is_listed() -> None:
    written = {value.key for value in vars(sources).values() if isinstance(value, Source)}
    assert {source.key for source in ALL} == written


@pytest.mark.parametrize("source", ALL, ids=lambda source: source.key)
def test_a_source_says_what_it_is_where_the_fact_stands_and_how_it_is_known(source: Source) -> None:
    assert source.title
    assert source.author or source in (sources.ARITHMETIC, sources.COMMON_PRACTICE)
    assert source.place
    assert source.how_known in get_args(sources.HowKnown)
    assert "http" not in source.place


def test_common_practice_says_that_it_has_no_source() -> None:
    assert sources.COMMON_PRACTICE.title == "common practice, no source"
    assert sources.COMMON_PRACTICE.how_known == "no source"


def test_a_key_that_is_not_listed_is_refused() -> None:
    assert sources.source_of("wood_handbook") is sources.WOOD_HANDBOOK
    with pytest.raises(ModelFault, match="no source `wood`"):
        sources.source_of("wood")


def test_every_source_is_cited_by_a_line_an_input_or_a_constant() -> None:
    model = whole_farm()
    cited = {line.source for line in model.lines}
    cited |= {declared.source.key for declared in model.inputs if declared.source}
    cited |= {node.constant.source for line in model.lines for node in walk(line.expr) if isinstance(node, Named)}
    assert {source.key for source in ALL} - cited == set()
