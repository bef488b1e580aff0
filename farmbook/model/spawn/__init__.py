"""Spawn, bought and made."""
