"""A copy of a workbook in which some sheets are hidden, so that the others print; all else stays byte for byte."""

from __future__ import annotations

import io
import re
import zipfile
from collections.abc import Collection
from typing import Final

__all__ = ["copy_without"]

_PART: Final = "xl/workbook.xml"
_SHEET: Final = re.compile(r"<(?:\w+:)?sheet\s[^>]*>")
_STATE: Final = re.compile(r"\sstate=\"\w*\"")
_NAME: Final = re.compile(r"<(?:\w+:)?definedName\s([^>]*)>[^<]*</(?:\w+:)?definedName>")
_OF_SHEET: Final = re.compile(r'localSheetId="(\d+)"')
_VIEW: Final = re.compile(r"\s(?:activeTab|firstSheet)=\"\d*\"")


def copy_without(workbook: bytes, kept: Collection[int]) -> bytes:
    """A workbook with only the sheets at these places shown; with none given, as it is."""
    if not kept:
        return workbook
    packed = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(workbook)) as source, zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as target:
        for part in source.infolist():
            content = source.read(part)
            target.writestr(part, _hidden(content.decode(), kept).encode() if part.filename == _PART else content)
    return packed.getvalue()


def _hidden(workbook: str, kept: Collection[int]) -> str:
    """The list of sheets with all others hidden, the first that is kept the one that opens.

    Their print areas go too: LibreOffice prints a hidden sheet that has one.
    """
    places = iter(range(len(_SHEET.findall(workbook))))

    def marked(match: re.Match[str]) -> str:
        if next(places) in kept:
            return match[0]
        start, sheet, rest = _STATE.sub("", match[0]).partition("sheet ")
        return f'{start}{sheet}state="hidden" {rest}'

    def without_area(match: re.Match[str]) -> str:
        sheet = _OF_SHEET.search(match[1])
        return "" if sheet and int(sheet[1]) not in kept and "_xlnm.Print_" in match[1] else match[0]

    return _VIEW.sub("", _NAME.sub(without_area, _SHEET.sub(marked, workbook)))
