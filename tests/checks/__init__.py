"""Every check of the book: broken, and whole; and no check that blames a formula where a farm is only strange."""
