"""What if: another spawn rate, bag or spawn run, more rooms, hours or loads, bags bought in ready-made; each beside now."""
