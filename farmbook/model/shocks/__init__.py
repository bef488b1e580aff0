"""What cases put their own figures in the place of: lines that leave the plan as it is."""
