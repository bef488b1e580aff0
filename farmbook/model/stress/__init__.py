"""If things go badly: what may go wrong with the plan, ten cases of it, and how much it takes until a lender is not paid."""
