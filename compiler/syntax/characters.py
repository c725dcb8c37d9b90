"""Characters that no text of a playbook may hold, and what is left behind of an unfinished merge.

Both are looked for before a line is cut: what nobody sees on his screen may neither part two names
that look alike nor reach a terminal or a page.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable

from stemline.diagnostics.catalogue.files import E130, E131, E132, E133
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.source import Source, Span

Report = Callable[[Diagnostic], None]

_UNSEEN = re.compile(
    # The control characters of ISO 6429 but the tab; half characters; what XML 1.0 cannot hold.
    "[\x00-\x08\x0b-\x1f\x7f-\x9f\u2028\u2029\ud800-\udfff\ufffe\uffff"
    # Blanks without width, marks that turn the direction of writing, fillers: most of what the
    # Unicode Character Database calls Default_Ignorable_Code_Point, and the empty braille cell.
    "\u00ad\u034f\u061c\u115f\u1160\u17b4\u17b5\u180b-\u180f\u200b\u200e\u200f\u202a-\u202e"
    "\u2060-\u206f\u2800\u3164\ufeff\uffa0\ufff0-\ufffb\U0001bca0-\U0001bca3\U0001d173-\U0001d17a"
    "\U000e0000-\U000e0fff]"
    # The joiners belong between letters of some scripts, and in none of them behind a Latin one.
    "|(?<![\u0300-\U0010ffff])[\u200c\u200d]"
    # A sign may be told to be a picture or a letter; a Latin letter or a figure has no choice, but
    # for the figure in a key (an emoji keycap sequence, Unicode Technical Standard 51).
    '|(?<=[\\s"0-9A-Za-z\u00c0-\u024f])[\ufe00-\ufe0f](?!\u20e3)'
)

_SOFT_RETURNS = {
    "\x0b": "soft return",
    "\x0c": "page break",
    "\x85": "next-line character",
    "\u2028": "soft return",
    "\u2029": "paragraph separator",
}
"""What word processors put into a line in place of its end."""

_INVISIBLE = {
    "\u00ad": "soft hyphen",
    "\u200b": "zero-width space",
    "\u200c": "zero-width joiner",
    "\u200d": "zero-width joiner",
    "\u2060": "zero-width space",
    "\u2800": "braille blank",
    "\ufeff": "byte order mark",
}

_TURNING = "\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069"

_BLANKS = {
    "\t": "a tab",
    "\u00a0": "a no-break space",
    "\u202f": "a no-break space",
    "\u3000": "a wide space",
}

_MARKER = re.compile(r"(<{7}|={7}|>{7}|\|{7})(?: .*)?")
"""What version control writes between the two versions of a text that it could not merge."""


def readable(source: Source, report: Report) -> list[str]:
    """The lines of a file with a blank in place of each character that nobody sees, and of an
    unfinished merge one version only. Each kind of mistake is reported at its line."""
    lines = list(source.lines)
    if _UNSEEN.search(source.text):
        for n, line in enumerate(lines):
            if (found := _UNSEEN.search(line)) is not None:
                span = Span(source.name, n + 1, found.start() + 1, found.end() + 1)
                report(_unseen(found[0], span))
                lines[n] = _blanked(line)
    return _merged(lines, source.name, report)


def blank_word(char: str) -> str:
    """A blank as a coach calls it: "a tab", "a no-break space"."""
    return _BLANKS.get(char, f"the blank U+{ord(char):04X}")


def folded(text: str) -> str:
    """A text in quotes with one plain space for each run of blanks, and none at its ends.

    Two blanks look like one on a page, and a no-break space looks like any other.
    """
    return " ".join(text.split())


def _unseen(char: str, span: Span) -> Diagnostic:
    point = f"U+{ord(char):04X}"
    if char in _SOFT_RETURNS:
        return E130(name=_SOFT_RETURNS[char], point=point).at(span)
    if unicodedata.category(char) in ("Cc", "Cs", "Cn"):
        return E131(point=point).at(span)
    turning = "mark that turns the direction of writing"
    name = turning if char in _TURNING else _INVISIBLE.get(char, "character that nobody sees")
    return E132(name=name, point=point).at(span)


def _blanked(line: str) -> str:
    """The line with blanks for what is not seen; none before the word that opens it, since a
    margin would take it out of its place."""
    while (first := _UNSEEN.match(line)) and not line[1:2].isspace():
        line = line[first.end() :]
    return _UNSEEN.sub(" ", line)


def _merged(lines: list[str], name: str, report: Report) -> list[str]:
    """The lines without markers and without the second version of what they part."""
    if not any(line.startswith(("<<<<<<<", "=======", ">>>>>>>", "|||||||")) for line in lines):
        return lines
    marks = [(n, m[1][0]) for n, line in enumerate(lines) if (m := _MARKER.fullmatch(line))]
    if not marks:
        return lines
    opened = sum(mark == "<" for _, mark in marks)
    first = next((n for n, mark in marks if mark == "<"), marks[0][0])
    span = Span(name, first + 1, 1, len(lines[first]) + 1)
    report(E133(count=max(opened, 1)).at(span))
    for n, _ in marks:
        lines[n] = ""
    for start, end in _second_versions(marks):
        lines[start:end] = [""] * (end - start)
    return lines


def _second_versions(marks: list[tuple[int, str]]) -> list[tuple[int, int]]:
    """From the mark in the middle of each place to its end; nothing of one that is not whole."""
    found: list[tuple[int, int]] = []
    inside, middle = False, -1
    for n, mark in marks:
        if mark == "<":
            inside, middle = True, -1
        elif mark == ">":
            if inside and middle >= 0:
                found.append((middle, n))
            inside, middle = False, -1
        elif inside and middle < 0:
            middle = n
    return found
