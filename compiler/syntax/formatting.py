"""One canonical layout for a text: margins, blanks between words, blank lines, quotes.

A line in an older form is written in its newer one (`older_forms`), which means the same. No line
changes its place and no other word its spelling, so no play can change. A line that could not
be read, or of a kind that is not known, stays as it is.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from stemline.syntax.older_forms import names_of, newer
from stemline.syntax.tree import Comment, Document
from stemline.syntax.writing import written_fact, written_header

MARGIN = "    "
"""The margin of a block's lines, as every example of the reference has it."""


def formatted(tree: Document) -> str:
    """The text of ``tree`` in its canonical layout; it ends with one line break."""
    lines = [_LaidLine(text) for text in tree.source.lines]
    names = names_of([tree])
    for block in tree.blocks:
        _put_header(lines[block.span.line - 1], written_header(block))
        for fact in block.facts:
            _put(lines, fact.span.line, MARGIN + written_fact(newer(block.kind, fact, names)))
            for row in fact.rows:
                _put(lines, row.span.line, 2 * MARGIN + written_fact(row))
    for comment in tree.comments:
        _comment(lines, comment)
    _settle_comments(lines)
    return "".join(f"{line}\n" for line in _spaced(lines))


class _LaidLine:
    """A line on its way: what it says, the comment at its end, what it is."""

    def __init__(self, text: str) -> None:
        self.text = text.rstrip()
        self.behind = ""
        self.header = False
        self.comment = False
        self.inner = text[:1].isspace()

    @property
    def whole(self) -> str:
        return f"{self.text}  {self.behind}" if self.behind else self.text


def _put(lines: list[_LaidLine], number: int, text: str) -> None:
    line = lines[number - 1]
    line.text, line.inner = text, True


def _put_header(line: _LaidLine, text: str) -> None:
    """The first line of a block, which stays as it is where not all of it could be read."""
    line.header, line.inner = True, False
    if _letters(line.text.partition("//")[0]) == _letters(text):
        line.text = text


def _letters(text: str) -> str:
    """What a text says, whatever its blanks and quotes."""
    return re.sub(r"[\s\"\u201c-\u201f]", "", text).casefold()


def _comment(lines: list[_LaidLine], comment: Comment) -> None:
    line = lines[comment.span.line - 1]
    if comment.own_line:
        line.text, line.comment = comment.text, True
        return
    line.behind = comment.text
    if line.text.endswith(comment.text):  # a line that stays as it is has its comment still
        line.behind = ""


def _settle_comments(lines: list[_LaidLine]) -> None:
    """A comment goes with what follows it: into the margin before a line, out of it before a
    header. At the end of a block its own margin says where it belongs."""
    follows: _LaidLine | None = None
    for line in reversed(lines):
        if line.comment:
            if follows is not None and not follows.header:
                line.inner = follows.inner
            line.text = (_margin(follows) if line.inner else "") + line.text.strip()
        elif line.text:
            follows = line


def _margin(follows: _LaidLine | None) -> str:
    """The margin of a comment inside a block: a row's where a row follows."""
    if follows is None or follows.header or not follows.inner:
        return MARGIN
    return follows.text[: len(follows.text) - len(follows.text.lstrip())]


def _spaced(lines: list[_LaidLine]) -> Iterator[str]:
    """One blank line before a block and its comment; elsewhere one where there were any, but none
    behind a header."""
    kept = [line for line in lines if line.text]
    blank_before = set()
    was_blank = False
    for line in lines:
        if line.text:
            if was_blank:
                blank_before.add(id(line))
            was_blank = False
        else:
            was_blank = True
    for n, line in enumerate(kept):
        if n and _parts(kept, n, id(line) in blank_before):
            yield ""
        yield line.whole


def _parts(kept: list[_LaidLine], n: int, blank: bool) -> bool:
    """Whether a blank line stands before the line at ``n``."""
    line, above = kept[n], kept[n - 1]
    if line.inner:
        return blank and not above.header
    if line.header:
        led = above.comment and not above.inner
        return blank or not led
    return blank or above.inner
