"""What the farm's work and bags cost."""
