"""The farm and its plan, its site, and the energy it buys."""
