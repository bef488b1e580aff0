"""Customers: what each takes, what it brings, and what selling to it costs."""
