"""Recipes and what goes into a bag."""
