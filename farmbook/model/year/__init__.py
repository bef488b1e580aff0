"""A typical year: what comes in, every cost once, what is left, and what one more costs."""
