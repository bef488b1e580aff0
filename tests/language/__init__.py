"""Tests of the language: expressions, lowering, interpreters, placement."""
