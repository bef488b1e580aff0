"""One way beside another: which steamer, make or buy spawn."""
