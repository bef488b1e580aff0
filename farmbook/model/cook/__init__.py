"""How hard a bag is cooked."""
