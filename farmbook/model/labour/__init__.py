"""Hours: what each task takes, who works them, and what an hour costs."""
