"""Closed registries: a node or function without a rule in an interpreter fails here (rule 11)."""

from __future__ import annotations

from collections.abc import Iterable

import pytest

from farmbook.expr import lower as lowering
from farmbook.expr import nodes as n
from farmbook.expr.functions import FUNCTIONS
from farmbook.expr.number_rules import NUMBER_RULES
from farmbook.expr.sentences import Either, Figure, Sentence, Strip
from farmbook.interpret import formula, numbers, words

ROOT_ONLY = {n.Starting, n.Running, n.Shown}
"""Stand only as the whole of a line, where each interpreter treats them apart."""
A_LINE_ALONE = {n.Used}
"""Stand only as the whole of a line, which lowering treats apart; elsewhere like any other node."""
OPERANDS = {n.RawInput, n.Word}
"""Never a value by themselves: other nodes ask something of them."""
NEVER_SINGLE = {n.Before}
"""Has always one value for each member of a list."""
MADE_BY_LOWERING = {n.Factor}
GONE_AFTER_LOWERING = {n.Joined}

REGISTRIES: dict[str, tuple[Iterable[object], set[type[n.Expr]]]] = {
    "numbers, arrays": (numbers.ARRAY_RULES, ROOT_ONLY | OPERANDS | GONE_AFTER_LOWERING),
    "numbers, single values": (numbers.SINGLE_RULES, ROOT_ONLY | OPERANDS | NEVER_SINGLE | GONE_AFTER_LOWERING),
    "formula": (formula.NODE_RULES, ROOT_ONLY | OPERANDS | GONE_AFTER_LOWERING),
    "words": ({*words.NODE_RULES} - {Sentence}, OPERANDS | MADE_BY_LOWERING),
    "lower": (lowering._RULES, ROOT_ONLY | A_LINE_ALONE | OPERANDS | MADE_BY_LOWERING),
}


def classes() -> set[type[n.Expr]]:
    """Every node class of the language."""
    return {found for found in vars(n).values() if isinstance(found, type) and issubclass(found, n.Expr)} - {n.Expr}


def faults(every: set[type[n.Expr]], registry: Iterable[object], left_out: set[type[n.Expr]]) -> list[str]:
    """Classes without a rule, and keys that are no class that needs one."""
    needed, present = every - left_out, set(registry)
    missing = [f"no rule for {each.__name__}" for each in needed - present]
    return sorted(missing + [f"{each} needs no rule" for each in present - needed])


@pytest.mark.parametrize("name", REGISTRIES)
def test_every_node_has_a_rule_in_every_interpreter(name: str) -> None:
    registry, left_out = REGISTRIES[name]
    assert faults(classes(), registry, left_out) == []


def test_the_classes_are_all_there() -> None:
    subclasses = set(n.Expr.__subclasses__())
    assert classes() == {each for each in subclasses if each.__module__ == n.__name__}
    assert len(classes()) >= 30
    assert {each.__name__ for each in classes()} <= set(n.__all__)


def test_sentences_are_a_language_of_their_own() -> None:
    """They stand only as the whole of a line, which each interpreter treats apart; words for them are the one shared rule.

    A strip stands in flags.
    """
    assert {each for each in n.Expr.__subclasses__() if each.__module__ == Sentence.__module__} == {
        Either,
        Figure,
        Sentence,
        Strip,
    }
    assert Sentence in words.NODE_RULES


def test_a_missing_rule_and_a_strange_key_are_caught() -> None:
    registry, left_out = REGISTRIES["formula"]
    without = [each for each in registry if each is not n.Power]
    assert faults(classes(), without, left_out) == ["no rule for Power"]
    assert faults(classes(), [*registry, "Power"], left_out) == ["Power needs no rule"]


def test_every_function_has_a_number_a_formula_and_words() -> None:
    assert set(formula.FUNCTION_NAMES) == set(FUNCTIONS)
    assert set(words._FUNCTIONS) == set(FUNCTIONS)
    assert set(NUMBER_RULES) == set(FUNCTIONS)
    assert set(FUNCTIONS.values()) == {"same", "pure", "of a date", "a date"}
    assert all(callable(rule) for rule in NUMBER_RULES.values())
