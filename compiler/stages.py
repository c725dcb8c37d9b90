"""The values between the stages as plain text, for seeing: a tree, a play, a scene.

A value is its kind and then its fields, two spaces in; what says nothing (empty, none, nowhere) is
left out. Lengths are in yards and times in seconds, to a hundredth. The text is stable: it holds no
address and no order that depends on the machine.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass
from enum import Enum
from pathlib import PurePath
from typing import Any

from stemline.football.field import Field
from stemline.football.play import Play
from stemline.geometry.paths import Point
from stemline.picture.picture import picture
from stemline.session import Session
from stemline.source import NOWHERE, Span
from stemline.syntax.tree import Atom, Block, Phrase
from stemline.theme import Size, Theme

STAGES = ("tree", "play", "scene")
_STEP = "  "
_SHORT = 100
"""Characters of a value that still stands on one line."""


def stage_lines(session: Session, play: Play, stage: str, theme: Theme) -> Iterator[str]:
    """What there is of a call's ``play`` at a stage, one of `STAGES`, as lines."""
    if stage == "tree":
        for block in _blocks(session, play):
            yield from _lines(block, "")
    elif stage == "play":
        yield from _lines(play, "")
    else:
        assert session.book is not None, "a play comes from a book"
        level = session.book.settings.level
        yield from _lines(picture(play, Size.FULL, theme, level=level), "")


def _blocks(session: Session, play: Play) -> Iterator[Block]:
    """The definitions that the call is made of, as they stand in the texts."""
    call = play.call
    wanted = {
        ("formation", call.formation.casefold()),
        ("motion", call.motion.casefold()),
        ("concept", call.concept.casefold()),
        ("run", call.concept.casefold()),
        ("protection", play.protection.casefold()),
        *(("tag", tag.casefold()) for tag in call.tags),
    }
    for document, _ in session.trees:
        for block in document.blocks:
            owner = block.join("for")
            others = owner is not None and owner.text.casefold() != call.concept.casefold()
            if (block.kind, block.name.text.casefold()) in wanted and not others:
                yield block


def _lines(value: object, lead: str) -> Iterator[str]:
    """A value's own lines, each after ``lead``."""
    short = _short(value)
    if short is not None and (len(lead) + len(short) <= _SHORT or not isinstance(value, tuple)):
        yield f"{lead}{short}"
    elif isinstance(value, Mapping):
        for key, each in value.items():
            yield from _named(str(_short(key)), each, lead)
    elif isinstance(value, (tuple, frozenset)):
        for each in value if isinstance(value, tuple) else sorted(value, key=str):
            yield from _lines(each, lead)
    elif is_dataclass(value):
        line = _one_line(value)
        if line is not None and len(lead) + len(line) <= _SHORT:
            yield f"{lead}{line}"
            return
        yield f"{lead}{type(value).__name__}{_place(value)}"
        for name, each in _said(value):
            yield from _named(name, each, lead + _STEP)
    else:
        yield f"{lead}{value}"


def _one_line(value: object) -> str | None:
    """A dataclass whose fields are all short; None of another."""
    told = [(name, _short(each)) for name, each in _said(value)]
    if any(words is None for _, words in told):
        return None
    said = ", ".join(f"{name} {words}" for name, words in told)
    return f"{type(value).__name__} {said}{_place(value)}"


def _said(value: Any) -> list[tuple[str, object]]:
    """The fields that say something, but where the value comes from."""
    said = ((field.name, getattr(value, field.name)) for field in fields(value))
    return [(name, each) for name, each in said if not (_empty(each) or isinstance(each, Span))]


def _named(name: str, value: object, lead: str) -> Iterator[str]:
    short = _short(value)
    if short is not None and len(lead) + len(name) + len(short) <= _SHORT:
        yield f"{lead}{name}: {short}"
    elif is_dataclass(value) and (line := _one_line(value)) and len(lead + name + line) <= _SHORT:
        yield f"{lead}{name}: {line}"
    else:
        yield f"{lead}{name}:"
        yield from _lines(value, lead + _STEP)


def _short(value: object) -> str | None:
    """A value in a few words; None where it takes lines of its own."""
    match value:
        case Phrase() | Atom():
            return value.text
        case Point():
            return f"({_short(value.x)}, {_short(value.y)})"
        case Field():
            return f"{value.code.key}, {value.spot.value}"
        case Span():
            return _at(value)
        case Enum():
            return value.name.casefold().replace("_", " ")
        case bool() | None:
            return {True: "yes", False: "no", None: "none"}[value]
        case float():
            return f"{value + 0.0:.2f}".replace("-0.00", "0.00")
        case int() | str():
            return str(value)
        case tuple():
            parts = [_short(each) for each in value]
            told = [part for part in parts if part is not None]
            return f"({', '.join(told)})" if len(told) == len(parts) else None
    return None


def _place(value: object) -> str:
    """Where in the texts it comes from."""
    span = getattr(value, "span", NOWHERE)
    return f"  [{_at(span)}]" if isinstance(span, Span) and span != NOWHERE else ""


def _at(span: Span) -> str:
    return f"{PurePath(span.source).name}:{span.line}:{span.column}"


def _empty(value: object) -> bool:
    return value is None or value in ("", (), NOWHERE) or value == frozenset() or value == {}
