"""Loads of the steamer: hours, power, energy and cost."""
