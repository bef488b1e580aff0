"""A copy of a workbook in which some sheets are hidden, so that the others print, in any order; its other parts stay as they are."""

from __future__ import annotations

import io
import re
import zipfile
from collections.abc import Sequence
from typing import Final

__all__ = ["copy_without"]

_PART: Final = "xl/workbook.xml"
_SHEET: Final = re.compile(r"<(?:\w+:)?sheet\s[^>]*>")
_STATE: Final = re.compile(r"\sstate=\"\w*\"")
_NAME: Final = re.compile(r"<(?:\w+:)?definedName\s([^>]*)>[^<]*</(?:\w+:)?definedName>")
_OF_SHEET: Final = re.compile(r'localSheetId="(\d+)"')
_VIEW: Final = re.compile(r"\s(?:activeTab|firstSheet)=\"\d*\"")


def copy_without(workbook: bytes, kept: Sequence[int]) -> bytes:
    """A workbook with only the sheets at these places shown, in this order; with none given, as it is."""
    if not kept:
        return workbook
    packed = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(workbook)) as source, zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as target:
        for part in source.infolist():
            content = source.read(part)
            target.writestr(part, _hidden(content.decode(), kept).encode() if part.filename == _PART else content)
    return packed.getvalue()


def _hidden(workbook: str, kept: Sequence[int]) -> str:
    """The list of sheets with those kept first, the first of them the one that opens, and all others hidden.

    Their print areas go too: LibreOffice prints a hidden sheet that has one. What belongs to one sheet says so by its place.
    """
    sheets = _SHEET.findall(workbook)
    order = [*kept, *(place for place in range(len(sheets)) if place not in kept)]
    listed = iter([sheets[place] if place in kept else _marked(sheets[place]) for place in order])

    def moved(match: re.Match[str]) -> str:
        sheet = _OF_SHEET.search(match[1])
        if sheet is None:
            return match[0]
        place = int(sheet[1])
        if place not in kept and "_xlnm.Print_" in match[1]:
            return ""
        return match[0].replace(sheet[0], f'localSheetId="{order.index(place)}"', 1)

    return _VIEW.sub("", _NAME.sub(moved, _SHEET.sub(lambda _: next(listed), workbook)))


def _marked(sheet: str) -> str:
    """The same sheet, hidden."""
    start, name, rest = _STATE.sub("", sheet).partition("sheet ")
    return f'{start}{name}state="hidden" {rest}'
