"""Tests of the model, section by section."""
