"""A text put through what `stemline check` does with it, and what must hold of the answer."""

from __future__ import annotations

import time
import traceback
import unicodedata
from collections import Counter
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from stemline.commands.closing_lines import summary
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.diagnostics.render import MOST, render
from stemline.one_picture import drawn
from stemline.outside.texts import decoded
from stemline.session import Session, no_collecting
from stemline.source import Source
from stemline.theme import SIZES, Theme, load_theme

NAME = "mine/all.play"
_SUBJECTS = ("man", "other", "role", "look", "tag", "target", "who", "what", "formation", "first",
             "second", "spot", "found", "motion", "by", "free")  # fmt: skip


@dataclass(frozen=True)
class Judged:
    """What came of a text: CPU seconds, whether there was a play, and what is wrong."""

    seconds: float
    play: bool
    fault: str


@cache
def _theme() -> Theme:
    return load_theme()


def warm() -> None:
    """What every check does once, whatever the text."""
    _theme()
    judge(b"playbook A\n    code high school\n")


def judge(raw: bytes) -> Judged:
    began = time.process_time()
    play, fault = False, ""
    try:
        play, fault = _checked(raw)
    except Exception:
        fault = traceback.format_exc()
    return Judged(time.process_time() - began, play, fault)


def _checked(raw: bytes) -> tuple[bool, str]:
    source, problem = decoded(NAME, raw)
    if source is None:
        assert problem is not None
        return False, _told((problem,), Source(NAME, ""))
    found = (problem,) if problem is not None else ()
    with no_collecting():
        compiled = Session([source], "mine", whole=not found)
    found = (*found, *compiled.diagnostics)
    title = summary(Path("mine"), compiled, len(compiled.calls.orders), found)
    fault = _told(found, source) or ("" if title.isprintable() else f"unprintable: {title!r}")
    plays = compiled.season.plays if compiled.season is not None else ()
    if plays and compiled.book is not None:
        level = compiled.book.settings.level
        svg = drawn(plays[0], _theme(), SIZES["large"], level=level).decode()
        if "nan" in svg or "inf " in svg or '"inf' in svg:
            fault = fault or "a figure of the picture is no number"
    if not (found or plays):
        fault = fault or "neither a message nor a play"
    return bool(plays), fault


def _told(found: tuple[Diagnostic, ...], source: Source) -> str:
    """What is wrong with the messages; "" for nothing."""
    shown = render(found, {source.name: source})
    odd = {c for c in shown if not c.isprintable() and c not in "\n\u200c\u200d"}
    odd = {c for c in odd if unicodedata.category(c) not in ("Co", "Cn")}  # no terminal obeys them
    if odd:
        return f"unprintable characters reach the terminal: {sorted(odd)!r}"
    if shown.count(": error ") + shown.count(": warning ") > MOST + 5:
        return "more messages than a coach reads"
    if any(word in shown and word.strip() not in source.text for word in (" inf ", " nan ")):
        return f"a figure that is no number:\n{shown[:2000]}"
    places = Counter((d.code, d.span, _whom(d)) for d in found)
    twice = sorted({code for (code, _, _), times in places.items() if times > 1})
    if twice:
        lines = [f"{d.code} {d.span} {d.values}" for d in found if d.code in twice]
        return "\n".join((*lines[:6], f"said twice at one place: {' '.join(twice)}"))
    for d in found:
        if d.span.source == source.name and source.text and not _in_text(d, source):
            return f"{d.code} stands outside the text: {d.span}"
    return ""


def _whom(d: Diagnostic) -> tuple[str, ...]:
    """Whom a message speaks of: one line may put several men wrong."""
    values = dict(d.values)
    return tuple(values.get(key, "") for key in _SUBJECTS)


def _in_text(d: Diagnostic, source: Source) -> bool:
    lines = source.lines
    if not 0 < d.span.line <= len(lines):
        return False
    return 0 < d.span.column <= len(lines[d.span.line - 1]) + 1
