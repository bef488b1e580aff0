"""Timings a person runs."""
