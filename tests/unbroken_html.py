"""All HTML that a template writes in any test: no value of an attribute holds a mark.

A letter of theirs becomes a mark where it is printed, and one within a value ends the value, so
that the rest of a picture's words stands on the paper.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from jinja2 import Template

_TAG = re.compile(r'<[A-Za-z][^<>"]*(?:"[^"]*"[^<>"]*)+>')
_VALUE = re.compile(r'"([^"]*)"')
_generate = Template.generate


def broken_values(html: str) -> list[str]:
    """The values of attributes with "<" or ">" in them."""
    values = (value for tag in _TAG.findall(html) for value in _VALUE.findall(tag))
    return [value for value in values if "<" in value or ">" in value]


def _watched(self: Template, *values: object, **named: object) -> Iterator[str]:
    parts = []
    for part in _generate(self, *values, **named):
        parts.append(part)
        yield part
    broken = broken_values("".join(parts))
    assert not broken, f"{self.name}: {broken}"


def watch() -> None:
    """From now on a template that writes such a value fails the test it is filled in by."""
    Template.generate = _watched  # type: ignore[method-assign]
