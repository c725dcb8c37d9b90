"""Diagnostics of many calls: one a cause, with how many calls have it, and from which spots."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from stemline.diagnostics.diagnostic import Diagnostic
from stemline.diagnostics.in_words import how_many, together


def gathered(found: Iterable[Diagnostic]) -> list[Diagnostic]:
    """One diagnostic a cause: calls that fail alike are counted, not listed."""
    groups: dict[tuple[object, ...], list[Diagnostic]] = {}
    for d in found:
        groups.setdefault(_cause(d), []).append(d)
    return [_counted(group) for group in groups.values()]


def said_once(found: Iterable[Diagnostic]) -> tuple[Diagnostic, ...]:
    """The first of those that several stages say of one cause, each with its own calls."""
    causes: dict[tuple[object, ...], Diagnostic] = {}
    for d in found:
        causes.setdefault(_cause(d), d)
    return tuple(causes.values())


def _cause(d: Diagnostic) -> tuple[object, ...]:
    return d.span, d.said.cause


def _counted(group: Sequence[Diagnostic]) -> Diagnostic:
    """The first of those with one cause, with the number of their calls, and all of the men where
    each names its own."""
    first = group[0].said
    shown: dict[str, object] = {}
    if first.listed:
        men = (man for d in group for man in getattr(d.said, first.listed))
        shown[first.listed] = tuple(dict.fromkeys(men))
    calls = list(dict.fromkeys(getattr(d.said, "call", "") for d in group))
    if len(calls) > 1:
        shown["call"] = f"{calls[0]} and {how_many(len(calls) - 1, 'more call')}"
    return replace(group[0], said=first.having(**shown)) if shown else group[0]


def from_some_spots(found: Iterable[Diagnostic], spots: int) -> list[Diagnostic]:
    """What names its spot names all those from which the call has it, and none where that is every
    one of its ``spots``."""
    told: dict[tuple[object, ...], list[str]] = {}
    found = list(found)
    for d in found:
        if "from_spot" in d.said.fields:
            told.setdefault(_but_spot(d), []).append(dict(d.said.values)["from_spot"])
    made = []
    for d in found:
        if "from_spot" in d.said.fields:
            where = dict.fromkeys(told[_but_spot(d)])
            names = [words.removeprefix(" from the ") for words in where]
            said = f" from the {together(names)}" if len(where) < spots else ""
            d = replace(d, said=d.said.having(from_spot=said))
        made.append(d)
    return made


def _but_spot(d: Diagnostic) -> tuple[object, ...]:
    return d.span, d.code, *(pair for pair in d.said.values if pair[0] != "from_spot")
