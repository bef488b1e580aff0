"""The calculations held against print, against their definitions, and as nodes of the model."""
