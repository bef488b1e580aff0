"""What a lender is shown beside the plan: only where a scenario asks for a loan."""
