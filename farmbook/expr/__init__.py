"""The expression language: nodes, axes, the closed list of functions, lowering to display units."""
