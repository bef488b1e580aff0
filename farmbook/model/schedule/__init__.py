"""The plan week by week: bags filled, where they stand, what is picked and sold, hours, and what is short."""
