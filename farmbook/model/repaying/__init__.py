"""Loans month by month over the plan, and year by year to the end of the longest."""
