"""Comparing texts as loosely as any spreadsheet program does."""

from __future__ import annotations

import unicodedata
from functools import lru_cache

__all__ = ["fold"]


@lru_cache(maxsize=4096)
def fold(text: str) -> str:
    """What two texts share that any program may take as equal; longer or shorter than the text itself.

    Gnumeric joins letters and their compatible forms, a ligature and its letters, a letter and its accent; LibreOffice
    joins i with and without a dot. This is the compatibility caseless matching of the Unicode Standard (section 3.13),
    with all four forms of i made one on top, as a Turkish spreadsheet pairs them otherwise than an English one.
    """
    caseless = unicodedata.normalize("NFKD", unicodedata.normalize("NFD", text).casefold()).casefold()
    return unicodedata.normalize("NFKD", caseless).replace("\u0131", "i").replace("i\u0307", "i")
