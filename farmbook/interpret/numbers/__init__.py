"""Numbers: lowered lines become straight-line Python, run on one scenario or on many at once.

An array has a leading axis of draws (1, or as many as there are scenarios), then one for each axis of its line, in the
axes' order. For one scenario a single value is a plain float or text. A cycle through time becomes a loop over its steps. A cell that
holds no number is NaN.
"""

from farmbook.interpret.numbers.array_rules import ARRAY_RULES
from farmbook.interpret.numbers.engine import Engine
from farmbook.interpret.numbers.single_rules import SINGLE_RULES
from farmbook.interpret.numbers.values import Array, Cells, Values

__all__ = ["ARRAY_RULES", "SINGLE_RULES", "Array", "Cells", "Engine", "Values"]
