"""Scenario files: what a farm's file says, checked and laid out as the cells of a book."""
