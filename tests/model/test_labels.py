"""The labels of the whole farm: each says one thing, whatever a sheet's title lets it leave out."""

from __future__ import annotations

from collections import Counter

from farmbook.layout.template import read_templates
from farmbook.results import whole_farm


def test_no_two_lines_share_a_label() -> None:
    labels = Counter(line.label.casefold() for line in whole_farm().lines)
    assert [label for label, times in labels.items() if times > 1] == []
    assert len(labels) > 1000


def test_what_a_sheet_leaves_unsaid_is_said_by_labels_on_it() -> None:
    heads = {line.name: line.head for line in whole_farm().lines}
    for template in read_templates():
        shown = [name.removeprefix("show:") for block in template.blocks for name in block.lines]
        here = [heads[name] for name in (*template.homes, *shown)]
        assert [words for words in template.unsaid if not any(words in head for head in here)] == [], template.sheet
