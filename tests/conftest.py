"""What all tests share: the workbook of every shipped scenario, built once in a run."""

from __future__ import annotations

import gc
from collections.abc import Mapping
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from tests.workbook.shipped import ShippedBook

gc.set_threshold(
    500_000, 20, 50
)  # models and books are large and seldom garbage: looking through them takes a quarter of a run


def pytest_addoption(parser: pytest.Parser) -> None:
    """The long sweeps stand behind an option; without it each is made on a slice."""
    parser.addoption("--whole", action="store_true", help="make every sweep whole: every edit, book, paper, length and moment")


@pytest.fixture(scope="session")
def books(tmp_path_factory: pytest.TempPathFactory) -> Mapping[str, ShippedBook]:
    """The workbook of every shipped scenario, by the scenario's name."""
    from tests.workbook.shipped import SCENARIOS, built  # for start-up speed: most tests need no workbook

    folder = tmp_path_factory.mktemp("books")
    return {name: built(path, folder) for name, path in SCENARIOS.items()}
