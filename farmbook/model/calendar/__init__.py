"""The plan's own calendar: its first month, its weeks and its months, all dates from one."""
