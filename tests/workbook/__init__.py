"""Rules that every written workbook must keep, and proofs that each rule bites."""
