"""Changing the source on purpose, and counting what no test sees; run by a person, `python -m tests.mutation`."""
