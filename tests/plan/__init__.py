"""Sheets of weeks, months and years: a small farm in the plan's own calendar, laid out and read in other programs."""
