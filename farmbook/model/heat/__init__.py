"""What a steamer takes up, and what it loses."""
