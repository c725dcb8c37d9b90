"""Rules of the pages that are handed out are still there on a black and white copy at 64 %.

A copier asks of each dot whether more than half of it is dark. On a copy of that size half a point
of ink covers two thirds of a dot wherever it falls; four tenths may lie half on one dot and half on
the next, and then neither is printed.
"""

from __future__ import annotations

import re
from importlib.resources import files

import pytest

LEAST = 0.5
"""Points of ink."""
SHADES = {"ink": 0.0, "soft": 0.33, "hair": 0.45}
"""How pale each is, as `book.html.jinja` says it."""
_BORDER = re.compile(r"border(?:-\w+)?:\s*([\d.]+)pt (?:solid|dashed)(?: var\(--(\w+)\))?")


@pytest.mark.parametrize("sheet", ["book.css", "week.css", "contact.css"])
def test_no_rule_is_lost_on_a_copy(sheet: str) -> None:
    text = files("stemline.themes").joinpath("plain", sheet).read_text("utf-8")
    rules = [
        (name.strip(), float(weight) * (1 - SHADES[shade or "ink"]))
        for name, says in re.findall(r"([^{}]+)\{([^{}]*)\}", text)
        for weight, shade in _BORDER.findall(says)
        if shade != "ground"
    ]
    assert rules
    assert not [(name, ink) for name, ink in rules if ink < LEAST]


def test_the_shades_are_those_of_the_pages() -> None:
    page = files("stemline.themes").joinpath("plain", "book.html.jinja").read_text("utf-8")
    said = dict(re.findall(r"--(\w+): \{\{ colours\.shade\(([\d.]+)\) \}\}", page))
    assert {name: float(shade) for name, shade in said.items()} == {
        name: shade for name, shade in SHADES.items() if name in said
    }
    assert set(said) == {"soft", "hair"}
