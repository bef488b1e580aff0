"""What can hurt people, and which law of food covers the farm: what the plan says of it."""
