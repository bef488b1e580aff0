"""What limits the farm: what each stage can do, the smallest, the next after it, and what one more of it is worth."""
