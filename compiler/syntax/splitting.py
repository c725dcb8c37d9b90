"""A file cut into blocks, before any line of it is read.

Comments are taken off, lines too long to be meant are left out, and the text is cut at its
column-one lines. What opens no block that can be read is reported and stepped over.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from stemline.diagnostics.catalogue.files import E110, E111
from stemline.diagnostics.catalogue.forms import E200, E204, E205
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.diagnostics.nearest import distance, nearest
from stemline.source import Source, Span
from stemline.syntax.characters import blank_word, readable
from stemline.syntax.lexer import junk
from stemline.syntax.lines import KINDS, LONGEST_LINE, BlockKind
from stemline.syntax.tree import Comment

_CALLED = {
    "play": ("concept", "run"), "pass": ("concept",), "defense": ("look",), "defence": ("look",),
    "front": ("look",), "coverage": ("look",), "set": ("formation",), "roster": ("personnel",),
    "team": ("playbook",), "blocking": ("protection",), "shift": ("motion",),
}  # fmt: skip
"""What a coach calls a block, and its kind: the word nearest by its letters would mislead."""

_NEAR_KIND = 2
"""Letters by which a misspelt kind is still read as the kind it is nearest to."""

_VERB_SOUGHT = 5
"""Words of an unindented line among which a verb is looked for."""

_BEFORE_COMMENT = re.compile(r'(?:"[^"]*"|["“”][^"“”]*["“”]|/(?!/)|[^"“”/]+)*')
_FIRST_WORD = re.compile(r"\w[\w'’/-]*|[\"“”#,>+]\S*")


@dataclass(frozen=True)
class Cut:
    """A block's text, comments off, header first; ``line`` is its header's, counted from 1.

    ``said`` tells whether anything stands under the header, be it readable or not.
    """

    kind: str
    text: str
    line: int
    said: bool


class Cutter:
    """One file's lines as the parser may see them."""

    def __init__(self, source: Source, report: Callable[[Diagnostic], None]) -> None:
        self._source = source
        self._report = report
        self.comments: list[Comment] = []
        self._long: set[int] = set()
        self._lines = [self._clean(n, line) for n, line in enumerate(readable(source, report), 1)]
        self._margins()

    def _span(self, line: int, column: int, length: int) -> Span:
        return Span(self._source.name, line, column, column + length)

    def _clean(self, number: int, line: str) -> str:
        """The line without its comment and the blanks at its end."""
        if len(line) > LONGEST_LINE:
            span = self._span(number, 1, len(line))
            self._report(E111(length=len(line), most=LONGEST_LINE).at(span))
            self._long.add(number)
            # A header too long to read still ends the block above it.
            return "" if line[0].isspace() else "?"
        if "//" in line and (before := _BEFORE_COMMENT.match(line)):
            at = before.end()
            if line.startswith("//", at):
                text, line = line[at:].rstrip(), line[:at].rstrip()
                span = self._span(number, at + 1, len(text))
                self.comments.append(Comment(text, span, own_line=not line))
        return line.rstrip()

    def _margins(self) -> None:
        """A margin of anything but spaces is said once a file: its cause is an editor's setting."""
        wrong = []
        for n, line in enumerate(self._lines):
            words = line.lstrip()
            length = len(line) - len(words)
            if other := line[:length].strip(" "):
                wrong.append((self._span(n + 1, 1, length), blank_word(other[0])))
                # All tabs, so that `Margins` does not compare the depth of such a line.
                self._lines[n] = "\t" * length + words
        for span, what in wrong[:1]:
            self._report(E110(what=what, count=len(wrong)).at(span))

    def cuts(self) -> Iterator[Cut]:
        """The blocks of known kinds, in order."""
        kind, start, homeless = "", 0, True
        for n, line in enumerate(self._lines):
            if line[:1].isspace():
                if homeless:
                    self._report(E204().at(self._span(n + 1, 1, len(line))))
                homeless = False
            elif line and not self._stray(line, n, kind):
                yield from self._cut(kind, start, n)
                kind, start, homeless = self._opened(line, n), n, False
        yield from self._cut(kind, start, len(self._lines))

    def _cut(self, kind: str, start: int, end: int) -> Iterator[Cut]:
        if kind:
            said = any(self._lines[start + 1 : end]) or not self._long.isdisjoint(
                range(start + 2, end + 1)
            )
            yield Cut(kind, "\n".join(self._lines[start:end]).rstrip(), start + 1, said)

    def _stray(self, line: str, n: int, kind: str) -> bool:
        """Whether a line in column one is no header but a fact that lost its margin.

        One that fits the block above is left in it, and reported where the margin is read.
        """
        word = line.split()[0].casefold()
        if word in KINDS:
            return False
        if kind and _fits(line, KINDS[kind]):
            return True
        if nearest(word, KINDS) or not any(_fits(line, k) for k in KINDS.values()):
            return False
        self._report(E205().at(self._span(n + 1, 1, len(word))))
        self._lines[n] = ""
        return True

    def _opened(self, line: str, n: int) -> str:
        """The kind of block a header opens; "" for a block that is stepped over."""
        first = _FIRST_WORD.match(line)
        if first is None:
            self._report(junk(line[0], self._span(n + 1, 1, 1)))
            return ""
        word, span = first[0].casefold(), self._span(n + 1, 1, len(first[0]))
        if word in KINDS:
            return word
        near = _CALLED.get(word) or nearest(word, KINDS)
        self._report(E200(word=first[0]).at(span, nearest=near))
        return near[0] if near and distance(word, near[0]) <= _NEAR_KIND else ""


def _fits(line: str, kind: BlockKind) -> bool:
    """Whether a line has the look of a fact of this kind."""
    first, *others = line.casefold().split(maxsplit=_VERB_SOUGHT)
    return first in kind.turning or any(word in kind.verbs for word in others)
