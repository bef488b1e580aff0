"""What a bag brings."""
