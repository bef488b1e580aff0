"""How a line is worked out in the numbers of the lines on its sheet, as on a tax form: `9 \u00f7 12 + 10`."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from farmbook.expr.nodes import Line
from farmbook.interpret.words import GapOf, Part, Parts, Sign, in_sentence, operation_of, words_of

__all__ = ["LONGEST", "Place", "numbered_way"]

LONGEST: Final = 95
"""Characters that stand on one line of a page beside a value."""


@dataclass(frozen=True)
class Place:
    """Where a reader finds a line, cell or constant: on which sheet, as which line.

    A table is one line as a whole, and each of its columns has a `head`; one to type into goes by the title of its `table` too.
    """

    sheet: str
    number: int
    head: str = ""
    table: str = ""


def numbered_way(line: Line, places: Mapping[str, Place]) -> str:
    """How a line is worked out, in the numbers of lines; `places` holds it and what it uses by dotted name.

    What has no place is said by its label; what stands on another sheet by its label, with its sheet and number behind.
    Words of more than LONGEST characters give way to sheets and numbers alone, then to the outermost operation.
    """
    here = places[line.name]
    words, operation = words_of(line.expr), operation_of(line.expr)
    said = [_said(words, here, places), _placed(words, here, places), _said(operation, here, places)]
    said += [_placed(operation, here, places), _said(operation_of(line.expr, listed=False), here, places)]
    return next((text for text in said if len(text) <= LONGEST), said[-1])


def _placed(parts: Parts, here: Place, places: Mapping[str, Place]) -> str:
    """What stands on another sheet is said by its sheet and number, without its label."""
    text = ""
    for part in parts:
        place = places.get(part.of.name) if isinstance(part, GapOf) else None
        elsewhere = place is not None and place.sheet != here.sheet
        text += f"{place.sheet} {place.number}" if place and elsewhere else _part(part, here, places)
    return text


def _said(parts: Parts, here: Place, places: Mapping[str, Place]) -> str:
    text = "".join(_part(part, here, places) for part in parts)
    elsewhere: dict[str, dict[str, None]] = {}
    for part in parts:
        place = places.get(part.of.name) if isinstance(part, GapOf) else None
        if place is not None and place.sheet != here.sheet:
            elsewhere.setdefault(place.sheet, {})[str(place.number)] = None
    cited = "; ".join(f"{sheet} {', '.join(numbers)}" for sheet, numbers in elsewhere.items())
    return f"{text} ({cited})" if cited else text


def _part(part: Part, here: Place, places: Mapping[str, Place]) -> str:
    if isinstance(part, str):
        return part
    if isinstance(part, Sign):
        return part.among_numbers
    place = places.get(part.of.name)
    if place is None or place.sheet != here.sheet:
        return part.label
    if not place.head:
        return str(place.number)
    head = in_sentence(place.head)
    return head if place.number == here.number else f"{head} in {place.number}"
