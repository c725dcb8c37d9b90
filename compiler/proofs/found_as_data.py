"""Diagnostics as plain data, and back: a code's name and what it carries, nothing that runs."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache

from stemline.checks.discovered import rows
from stemline.diagnostics.broken_rule import Resting
from stemline.diagnostics.diagnostic import Diagnostic, Mistake, Related
from stemline.proofs.reading import Place, Reading

_RESTING = "rests on"


def as_data(found: Iterable[Diagnostic], reading: Reading) -> list[object]:
    """Raises ValueError for a place that was not read, or a value that is none of ours."""
    return [_row(d, reading) for d in found]


def from_data(held: object, reading: Reading) -> tuple[Diagnostic, ...]:
    """Raises ValueError for what `as_data` does not write."""
    if not isinstance(held, list):
        raise ValueError(held)
    return tuple(_diagnostic(row, reading) for row in held)


@cache
def _rows() -> dict[str, type[Mistake]]:
    return {row.__name__: row for row in rows()}


def _row(d: Diagnostic, reading: Reading) -> list[object]:
    name = type(d.said).__name__
    if _rows().get(name) is not type(d.said):
        raise ValueError(name)
    try:
        place = reading.place(d.span)
        related = [[reading.place(each.span), each.label] for each in d.related]
    except KeyError as elsewhere:
        raise ValueError(*elsewhere.args) from None
    values = {field: _plain(getattr(d.said, field)) for field in d.said.fields}
    return [name, values, place, list(d.nearest), related]


def _plain(value: object) -> object:
    match value:
        case str() | bool() | int() | float():
            return value
        case Resting():
            return {_RESTING: [value.rules, value.source, value.binds]}
        case tuple() if all(type(each) is str for each in value):
            return list(value)
    raise ValueError(value)


def _diagnostic(held: object, reading: Reading) -> Diagnostic:
    match held:
        case [str(name), dict(values), place, list(nearest), list(related)] if name in _rows():
            said = {str(field): _value(value) for field, value in values.items()}
            near = tuple(_word(each) for each in nearest)
            others = tuple(_related(each, reading) for each in related)
            try:
                mistake = _rows()[name](**said)
            except TypeError:
                raise ValueError(held) from None
            return Diagnostic(mistake, reading.span(_place(place)), near, others)
    raise ValueError(held)


def _value(held: object) -> object:
    match held:
        case str() | bool() | int() | float():
            return held
        case {"rests on": [str(rules), str(source), bool(binds)]}:
            return Resting(rules, source, binds)
        case list():
            return tuple(_word(each) for each in held)
    raise ValueError(held)


def _word(held: object) -> str:
    if not isinstance(held, str):
        raise ValueError(held)
    return held


def _place(held: object) -> Place:
    match held:
        case [int(number), int(column), int(end)]:
            return number, column, end
    raise ValueError(held)


def _related(held: object, reading: Reading) -> Related:
    match held:
        case [place, str(label)]:
            return Related(reading.span(_place(place)), label)
    raise ValueError(held)
