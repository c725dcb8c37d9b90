"""A plain document is the tree that the engine's own parser makes of it."""

from __future__ import annotations

import io
import random
from xml.etree.ElementTree import Element

import tinyhtml5

from stemline.emit.plain_html import _BLOCKS, _IN, _INLINE, plain_tree

_TAGS = sorted({*_BLOCKS, *_INLINE, *_IN, "pre", "select", "svg", "form", "ol", "caption", "col"})
_WORDS = ("", "\n", " ", "Stick", "a &amp; b", " &lt;2", "&#34;", "&nbsp;", "&#150;", " é\n", "&")
_NAMED = (
    "", ' class="a"', ' id="x" class="b c"', ' data-N="1"', ' alt="a\nb"', ' alt="a\rb"',
    ' alt="a>b"', " a",
)  # fmt: skip
_EMPTY = ("img", "br", "meta", "link", "col")
_ANYWHERE = ("p", "div", "span", "b", "table", "ul", "dl", "figure", "h2", "img")
_NEAR = {
    "table": ("tr", "tbody", "thead", "tr"), "tbody": ("tr",), "thead": ("tr",),
    "tr": ("td", "th"), "ul": ("li",), "dl": ("dt", "dd", "div"),
}  # fmt: skip


def told(tree: Element) -> object:
    text, tail = tree.text or "", tree.tail or ""
    return tree.tag, sorted(tree.items()), text, tail, [told(each) for each in tree]


def parsed(text: str) -> object:
    return told(tinyhtml5.parse(io.StringIO(text), namespace_html_elements=False))


def drawn(chance: random.Random, over: str, depth: int) -> str:
    """Anything in anything, mostly what belongs there."""
    made = chance.choice(_WORDS[:4] if chance.random() < 0.9 else _WORDS)
    made = made if over not in _NEAR or chance.random() < 0.03 else "\n"
    for _ in range(chance.randint(0, 3) if depth else 0):
        near = _NEAR.get(
            over, ("p", "div", "span", "b", "table", "ul", "dl", "figure", "h2", "img")
        )
        tag = chance.choice(near if chance.random() < 0.96 else _TAGS)
        named = chance.choice(_NAMED[:3] if chance.random() < 0.98 else _NAMED)
        made += f"<{tag}{named}>"
        if tag not in _EMPTY:
            made += f"{drawn(chance, tag, depth - 1)}</{tag}>"
        made += "\n" if over in _NEAR else chance.choice(_WORDS[:4])
    return made


def document(body: str, head: str = "<title>-</title>") -> str:
    return (
        f'<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n{head}\n</head>\n'
        f"<body>\n{body}</body>\n</html>"
    )


def test_what_is_plain_is_read_as_the_parser_reads_it() -> None:
    plain = 0
    for seed in range(1500):
        text = document(drawn(random.Random(seed), "body", 5))
        tree = plain_tree(text)
        if tree is not None:
            plain += 1
            assert told(tree) == parsed(text), text
    assert plain > 300


def test_what_is_not_plain_is_left_to_the_parser() -> None:
    whole = document("<p>Stick</p>")
    assert plain_tree(whole) is not None
    for text in (
        whole.replace("<body>", "<style>p { }</style><body>"),
        whole.replace("<p>", "<!-- -->\n<p>"),
        whole + "\n",
        whole.replace("<html", "<HTML", 1),
        document("<p>Stick"),
        document("<div/>"),
        document("", '<style>p::after { content: "&amp;" }</style>'),
        document("\x01"),
        document("\ud800"),
    ):
        assert plain_tree(text) is None, text
