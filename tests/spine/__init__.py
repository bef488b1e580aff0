"""A farm of the size that the book is to grow to, for tests alone: weeks, months and cases, some 60,000 formulas."""
