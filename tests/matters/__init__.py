"""What matters most: its ranking, its place in the book, its command."""
