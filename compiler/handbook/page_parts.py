"""A page for coaches read into its parts: headings, paragraphs, lists, tables, fenced texts.

It knows as much of the page's marks as the pages of `grammar/` use; `tests/test_handbook.py` holds
that nothing of them comes out as a mark.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from stemline.emit.handbook_pages import HandbookPart, InlineWords, PartKind

_INLINE = re.compile(r"`([^`]+)`|\*\*(.+?)\*\*|\*([^*]+)\*|!?\[([^]]*)\]\(([^)]*)\)")
_HEAD = re.compile(r"^(#+) (.+)$")
_ROW = re.compile(r"^(?:\| ?)?(.*?)(?: ?\|)?$")


def page_parts(page: str) -> tuple[HandbookPart, ...]:
    """The parts of ``page`` in its order. A fence keeps its text; its pictures come later."""
    return tuple(_parts(page.splitlines()))


def _parts(lines: list[str]) -> Iterator[HandbookPart]:
    at = 0
    while at < len(lines):
        line, first = lines[at], at
        head = _HEAD.match(line)
        if line.startswith("```"):
            at = lines.index("```", at + 1) + 1
            word = line.removeprefix("```").split(" ")[0]
            kind = PartKind.PLAY if word == "play" else PartKind.TEXT
            text = "\n".join(lines[first + 1 : at - 1]) + "\n"
            yield HandbookPart(kind, text=text, level=first + 1)
        elif head:
            at += 1
            words = _inline(head[2])
            yield HandbookPart(
                PartKind.HEADING, level=len(head[1]), anchor=_slug(head[2]), lines=(words,)
            )
        elif not line.strip() or line.startswith("!["):
            at += 1  # the page's own picture is drawn anew beside its sample
        else:
            while at < len(lines) and lines[at].strip() and not lines[at].startswith("```"):
                at += 1
            yield _paragraph(lines[first:at])


def _paragraph(lines: list[str]) -> HandbookPart:
    if len(lines) > 1 and set(lines[1]) <= set("|- :") and "---" in lines[1]:
        rows = (_ROW.sub(r"\1", line).split("|") for line in (lines[0], *lines[2:]))
        cells = tuple(tuple(_inline(cell.strip()) for cell in row) for row in rows)
        return HandbookPart(PartKind.TABLE, rows=cells)
    if re.match(r"^(?:- |\d+\. )", lines[0]):
        items = re.split(r"\n(?:- |\d+\. )", "\n" + "\n".join(lines))[1:]
        return HandbookPart(PartKind.LIST, lines=tuple(_inline(" ".join(i.split())) for i in items))
    return HandbookPart(PartKind.PROSE, lines=(_inline(" ".join(" ".join(lines).split())),))


def _inline(text: str) -> tuple[InlineWords, ...]:
    found: list[InlineWords] = []
    at = 0
    for mark in _INLINE.finditer(text):
        if mark.start() > at:
            found.append(InlineWords("", text[at : mark.start()]))
        code, strong, slanted, link, to = mark.groups()
        if code is not None:
            found.append(InlineWords("code", code))
        elif strong is not None:
            found.append(InlineWords("strong", strong.replace("`", "")))
        elif slanted is not None:
            found.append(InlineWords("em", slanted))
        else:
            # A page's parts are one book here: what leads to another page's part stays in it.
            found.append(InlineWords("link", link.replace("`", ""), to[to.find("#") :]))
        at = mark.end()
    return (*found, InlineWords("", text[at:])) if at < len(text) else tuple(found)


def _slug(heading: str) -> str:
    """The anchor that a heading has on a page of a repository."""
    return re.sub(r"[^\w\- ]", "", heading.casefold()).replace(" ", "-")
