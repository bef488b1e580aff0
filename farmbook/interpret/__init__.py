"""The interpreters: numbers, formulas, words, kinds. They never import one another."""
