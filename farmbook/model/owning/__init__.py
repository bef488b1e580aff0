"""What the farm owns and loses in value, and the bills of a year."""
