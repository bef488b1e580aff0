"""The rooms in which bags stand: places had, and places taken."""
