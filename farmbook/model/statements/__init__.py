"""What the farm owns, owes and earns month by month and year by year, as a lender reads it; and what it can repay."""
