"""Rows under a heading, and lists, of a week or an install: what has become of them, in words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from stemline.compare.definitions import SaidLine
from stemline.compare.line_changes import LineChange
from stemline.compare.row_order import COMMA
from stemline.diagnostics.in_words import together

_HEADINGS = ("openers", "situation", "period", "scout", "wristband", "day", "week")
_LISTS = ("day", "week")
"""Headings whose rows are lists of names."""
_OWN_ROWS = ("size", "windows", "holds")
"""Rows of a wristband, which name no call."""


def is_row(line: SaidLine) -> bool:
    """Whether the line stands under a heading of a week or an install."""
    return line.subject.partition(" ")[0].casefold() in _HEADINGS


def row_words(line: SaidLine, value: str) -> str:
    """ "3rd and 6 to 9: Trips Right Stick"."""
    said = " ".join(filter(None, (line.verb, value)))
    return f"{line.subject.removeprefix('situation ')}: {said}"


def row_value(line: SaidLine) -> str:
    return " ".join(filter(None, (line.verb, line.value)))


def row_change(was: SaidLine, now: SaidLine) -> str:
    """A row that is another: of the same call only what stands behind it, as in
    "openers: Trey Right Stick, slow instead of fast"."""
    old, new = ((*_parts(row_value(side)), *_guard(side)) for side in (was, now))
    begin = row_words(now, "").rstrip() if not now.verb else f"{now.subject}:"
    begin = begin.removeprefix("situation ")
    if old[0].casefold() != new[0].casefold() or now.verb in _OWN_ROWS:
        return f"{begin} {', '.join(new)} instead of {', '.join(old)}"
    come, gone = ([x for x in a if x not in b] for a, b in ((new, old), (old, new)))
    return f"{begin} {new[0]}, {_other(come, gone)}".replace(", when", " when")


def _guard(line: SaidLine) -> Sequence[str]:
    return (f"when {line.guard}",) if line.guard else ()


def _parts(text: str) -> Sequence[str]:
    """The parts of a row between its commas, those of a coach's own sentence left alone."""
    return COMMA.split(text)


def list_change(was: SaidLine, now: SaidLine) -> str:
    """ "now also faces Zero": what came to a list of names and what went; "" for no list."""
    heading = now.subject.partition(" ")[0].casefold()
    if now.verb in _HEADINGS and not now.subject:
        name, *says = now.value.split(", ")
        before, *said = was.value.split(", ")
        new, old = ([x for x in a if x not in b] for a, b in ((says, said), (said, says)))
        return f"{now.verb} {name}: {_other(new, old)}" if name == before else ""
    if now.verb not in ("faces", "sections", "suits") and heading not in _LISTS:
        return ""
    old, new = (side.value.split(", ") for side in (was, now))
    come, gone = ([x for x in a if x not in b] for a, b in ((new, old), (old, new)))
    parts = [f"{word} {together(names)}" for word, names in _words(now, come, gone) if names]
    if heading in _LISTS and not parts:
        return f"{now.subject}: in another order"
    begin = f"{now.subject}: " if heading in _LISTS else ""
    again = f"{now.verb} " if begin and now.verb else ""
    if now.verb == "sections":
        begin, parts = "the book's sections: ", parts or ["in another order"]
    return f"{begin}{again}{', '.join(parts)}" if parts else ""


def _words(
    now: SaidLine, come: Sequence[str], gone: Sequence[str]
) -> Iterator[tuple[str, Sequence[str]]]:
    verb = f" {now.verb}" if now.verb in ("faces", "suits") else ""
    yield f"now also{verb}", come
    yield f"no longer{verb}", gone


def reopened(lines: Sequence[LineChange]) -> Iterator[tuple[str, list[LineChange]]]:
    """A heading that says another thing over the same rows, in words, and the lines that it tells
    of: "period Inside Run: 10 minutes instead of 12 minutes"."""
    come, gone = _by_heading(lines, "now"), _by_heading(lines, "was")
    for heading, rows in come.items():
        name, *says = heading.split(", ")
        for before in [b for b in gone if b.split(", ")[0] == name]:
            said = before.split(", ")[1:]
            both = rows.keys() & gone[before].keys()
            new, old = ([x for x in a if x not in b] for a, b in ((says, said), (said, says)))
            if both and (new or old):
                done = [*(rows[row] for row in both), *(gone[before].pop(row) for row in both)]
                yield f"{name}: {_other(new, old)}", done


def _other(new: Sequence[str], old: Sequence[str]) -> str:
    if not new and not old:
        return "in another order"
    if not new:
        return f"no longer {', '.join(old)}"
    return f"{', '.join(new)} instead of {', '.join(old)}" if old else f"now {', '.join(new)}"


def _by_heading(lines: Sequence[LineChange], side: str) -> dict[str, dict[str, LineChange]]:
    """The rows that are on this side alone, by heading and by what they say."""
    found: dict[str, dict[str, LineChange]] = {}
    for change in lines:
        line = getattr(change, side)
        if (change.was is None or change.now is None) and line is not None and is_row(line):
            found.setdefault(line.subject, {})[f"{row_value(line)} {line.guard}"] = change
    return found
