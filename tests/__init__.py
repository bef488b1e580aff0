"""Tests of farmbook."""
