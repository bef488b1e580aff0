"""Farmbook given what nobody should give it; a person runs the long scripts, the suite a seeded slice of each."""
