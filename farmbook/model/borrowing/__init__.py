"""Loans one by one, and what they take in a typical year."""
