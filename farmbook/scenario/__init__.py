"""Scenario files: what a farm's file says, checked and laid out as the cells of a book."""

from __future__ import annotations

from farmbook.scenario.load import load, read
from farmbook.scenario.report import check_report
from farmbook.scenario.scenario import Scenario, with_cell
from farmbook.scenario.schema import json_schema

__all__ = ["Scenario", "check_report", "json_schema", "load", "read", "with_cell"]
