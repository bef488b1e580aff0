"""Rules that the source files themselves must keep: layers, sizes, wording, start-up."""
