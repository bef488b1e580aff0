"""The plan month by month: what the weeks come to, sales and what customers owe, bills, cash and the credit line."""
