"""The values between the stages as plain text, for seeing: a tree, a play, a scene.

A value is its kind and then its fields, two spaces in; what says nothing (empty, none, nowhere) is
left out. Lengths are in yards and times in seconds, to a hundredth. The text is stable: it holds no
address and no order that depends on the machine.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass
from enum import Enum

from stemline.draw.picture import picture
from stemline.football.play import Play
from stemline.session import Session
from stemline.source import NOWHERE, Span
from stemline.syntax.tree import Block, Phrase
from stemline.theme import Size, Theme

STAGES = ("tree", "play", "scene")
_STEP = "  "
_SHORT = 78
"""Characters of a value that still stands on one line."""


def stage_lines(session: Session, play: Play, stage: str, theme: Theme) -> Iterator[str]:
    """What there is of a call's ``play`` at a stage, one of `STAGES`, as lines."""
    if stage == "tree":
        for block in _blocks(session, play):
            yield from _lines(block, "")
    elif stage == "play":
        yield from _lines(play, "")
    else:
        level = session.book.settings.level if session.book else None
        drawn = picture(play, Size.FULL, theme, level=level) if level else None
        yield from _lines(drawn, "")


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
    if short is not None and len(lead) + len(short) <= _SHORT:
        yield f"{lead}{short}"
    elif isinstance(value, Mapping):
        for key, each in value.items():
            yield from _named(str(_short(key)), each, lead)
    elif isinstance(value, (tuple, frozenset)):
        for each in value if isinstance(value, tuple) else sorted(value, key=str):
            yield from _lines(each, lead)
    elif is_dataclass(value):
        yield f"{lead}{type(value).__name__}{_place(value)}"
        for field in fields(value):
            each = getattr(value, field.name)
            if not _empty(each) and not isinstance(each, Span):
                yield from _named(field.name, each, lead + _STEP)
    else:
        yield f"{lead}{short}"


def _named(name: str, value: object, lead: str) -> Iterator[str]:
    short = _short(value)
    if short is not None and len(lead) + len(name) + len(short) <= _SHORT:
        yield f"{lead}{name}: {short}"
    else:
        yield f"{lead}{name}:"
        yield from _lines(value, lead + _STEP)


def _short(value: object) -> str | None:
    """A value in a few words; None where it takes lines of its own."""
    match value:
        case Phrase():
            return value.text
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
    return f"{span.source}:{span.line}:{span.column}"


def _empty(value: object) -> bool:
    return value is None or value in ("", (), NOWHERE) or value == frozenset() or value == {}
