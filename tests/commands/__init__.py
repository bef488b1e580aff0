"""What a person meets at the command line and from Python."""
