"""The farm: sections that declare inputs and lines, one module per subject; `farm` wires them."""
