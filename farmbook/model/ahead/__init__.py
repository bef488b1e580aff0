"""The next weeks, as they hang on the wall: thirteen of them, and the card of this one."""
