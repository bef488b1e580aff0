"""Pure functions with cited sources, one step each; every one may become one line of the workbook.

Each takes floats, arrays or nodes and returns the same kind. A docstring closes with the units of the operands and of
the result, and the key of its source. Numbers are taken in exactly those units; nodes convert themselves.
"""
