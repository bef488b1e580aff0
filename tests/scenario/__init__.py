"""Tests of scenario files."""
