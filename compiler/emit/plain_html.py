"""Documents as trees by the shortest way: well-formed, and of which HTML's rules change nothing.

These rules (closing what was left open, moving what stands in a wrong place) are what takes the
engine's parser its time, and our templates ask for none of them but a table's body. Whatever they
could change is left to that parser.
"""

from __future__ import annotations

import io
import re
from collections.abc import Callable
from functools import wraps
from typing import Any
from xml.etree.ElementTree import Element, TreeBuilder
from xml.parsers import expat

_BEGIN, _END = "<!DOCTYPE html>\n<html", "</html>"
_EMPTY = re.compile(r'<(meta|link|img|br)((?: [\w-]+="[^"<]*")*)>')
"""Elements that hold nothing and are not closed."""
_OTHERWISE = re.compile(
    r"&(?!amp;|lt;|gt;|quot;|#34;|#39;)"  # a letter by a name that XML does not know
    r"|<style>[^<]*&"  # which is no letter there
    r'|="[^"]*[\t\n\r]|=\'|<\?|/>'  # white space that XML would change, and elements closed at once
)
_HEADINGS = frozenset(("h1", "h2", "h3", "h4", "h5", "h6"))
_BLOCKS = _HEADINGS | {
    "article", "div", "dl", "figcaption", "figure", "header", "p", "section", "table", "ul",
}  # fmt: skip
"""What ends a paragraph that is open."""
_INLINE = frozenset(("a", "b", "br", "em", "i", "img", "s", "span"))
_ROWS = frozenset(("table", "tbody", "thead"))
_IN = {
    "html": ("",), "head": ("html",), "body": ("html",), "meta": ("head",), "title": ("head",),
    "link": ("head",), "style": ("head",), "li": ("ul",), "dt": ("dl",), "dd": ("dl",),
    "tbody": ("table",), "thead": ("table",), "tr": tuple(_ROWS), "td": ("tr",), "th": ("tr",),
}  # fmt: skip
"""What stands in nothing else. A part of a list may stand in a division of it."""
_NO_WORDS = _ROWS | {"", "html", "head", "tr"}
_ONLY_OWN = _NO_WORDS | {"meta", "title", "link", "style", "ul", "dl"}
"""Where nothing stands but what `_IN` puts there."""
_CELLS = frozenset(("td", "th"))


class _Otherwise(Exception):
    """HTML's rules would make another tree of it, or might."""


def plain_first(parse: Callable[..., Any]) -> Callable[..., Any]:
    """As ``parse`` of the engine's parser, which is asked about what is not plain."""

    @wraps(parse)
    def parsed(document: Any, *values: Any, **named: Any) -> Any:
        text = document.getvalue() if isinstance(document, io.StringIO) else None
        tree = plain_tree(text) if text is not None else None
        return parse(document, *values, **named) if tree is None else tree

    return parsed


def plain_tree(text: str) -> Element | None:
    """The tree of a document; None where HTML's rules may have a word in it."""
    begins = text.startswith(_BEGIN) and text.endswith(_END) and text.count("<!") == 1
    if not begins or _OTHERWISE.search(text):
        return None
    try:
        return _PlainReading().tree(_EMPTY.sub(r"<\1\2/>", text))
    except (_Otherwise, expat.ExpatError, UnicodeError):
        return None


class _PlainReading:
    def __init__(self) -> None:
        self._made = TreeBuilder()
        self._open = [""]

    def tree(self, text: str) -> Element:
        parser = expat.ParserCreate()
        parser.buffer_text = True
        parser.StartElementHandler = self._begin
        parser.EndElementHandler = self._end
        parser.CharacterDataHandler = self._words
        parser.Parse(text, True)
        root = self._made.close()
        if [each.tag for each in root] != ["head", "body"]:
            raise _Otherwise
        body = root[1]
        root.text = None
        after, body.tail = body.tail or "", None
        if len(body):
            body[-1].tail = (body[-1].tail or "") + after or None
        else:
            body.text = (body.text or "") + after or None
        for table in [*root.iter("table")]:
            _give_bodies(table)
        return root

    def _begin(self, tag: str, named: dict[str, str]) -> None:
        over = self._open[-1]
        if tag in _IN:
            if over == "div" and self._open[-2] == "dl":
                over = "dl"
            right = over in _IN[tag]
        else:
            right = over not in _ONLY_OWN and (tag in _INLINE or tag in _BLOCKS)
            right = right or (tag == "div" and over == "dl")
        if (tag == "a" and tag in self._open) or (tag in _HEADINGS and over in _HEADINGS):
            right = False
        if not right or (tag in _BLOCKS and self._in_paragraph()):
            raise _Otherwise
        if not all(name.islower() for name in named):
            raise _Otherwise
        self._open.append(tag)
        self._made.start(tag, named)

    def _in_paragraph(self) -> bool:
        for tag in reversed(self._open):
            if tag == "p" or tag in _CELLS:
                return tag == "p"
        return False

    def _end(self, tag: str) -> None:
        self._open.pop()
        self._made.end(tag)

    def _words(self, said: str) -> None:
        if self._open[-1] in _NO_WORDS and said.strip(" \n"):
            raise _Otherwise
        self._made.data(said)


def _give_bodies(table: Element) -> None:
    """Rows that stand in a table itself have a body of their own (HTML, 13.2.6.4.9)."""
    kids, body = [*table], None
    if not any(each.tag == "tr" for each in kids):
        return
    for each in kids:
        table.remove(each)
        if each.tag != "tr":
            table.append(each)
            body = None
            continue
        if body is None:
            body = Element("tbody")
            table.append(body)
        body.append(each)
