from __future__ import annotations

from dataclasses import fields, is_dataclass

from hypothesis import given, settings
from hypothesis import strategies as st

from stemline.diagnostics.render import render
from stemline.source import Source, Span
from stemline.syntax.lines import KINDS
from stemline.syntax.parser import parse
from stemline.syntax.tree import Block

WORDS = sorted(
    {
        *KINDS,
        *(w for k in KINDS.values() for o in k.openers.values() for w in (o.line.word, *o.labels)),
        *(w for k in KINDS.values() for w in (*k.labels, *k.verbs, k.join) if w),
        *(c for k in KINDS.values() for line in k.labels.values() for c in line.connectors),
        *("when", "then", "or", "over", "Quads", "#2", "3x1", "12", "1.5", "10-12", '"go"'),
        *(">", ",", "+", "//", "“a", "”", '"', ":", ";", "=", "-2", "1,5", "!", "'", "’", "\x0c"),
    }
)
PIECES = st.one_of(
    st.sampled_from(WORDS), st.text(st.characters(exclude_characters="\n"), max_size=6)
)
LINES = st.builds(
    lambda margin, pieces, gap: margin + gap.join(pieces),
    st.sampled_from(["", "", "    ", "    ", "  ", "\t", " \t", "\u00a0", "      "]),
    st.lists(PIECES, max_size=9),
    st.sampled_from([" ", " ", ""]),
)
TEXTS = st.one_of(st.text(), st.lists(LINES, max_size=14).map("\n".join))
GARBAGE = st.lists(st.lists(PIECES, max_size=9).map(lambda p: "    " + " ".join(p)), max_size=8)

ABOVE = (
    "concept Above\n    settle is strong #2\n    feet quick, 3\n    settle runs sit 8 when zone\n"
)
BELOW = "tag Below for Above\n    settle runs return\n    keeps read, feet\n"


def spans(value: object) -> list[Span]:
    """Every span in a value, however deep."""
    if isinstance(value, Span):
        return [value]
    if isinstance(value, tuple):
        return [s for item in value for s in spans(item)]
    if is_dataclass(value) and not isinstance(value, Source):
        return [s for f in fields(value) for s in spans(getattr(value, f.name))]
    return []


def written(block: Block) -> list[tuple[str, str]]:
    return [(f.key, str([p.text for p in f.subject])) for f in block.facts]


@given(TEXTS)
@settings(max_examples=400, deadline=None)
def test_any_text_is_read_and_every_span_lies_in_it(text: str) -> None:
    source = Source("any.play", text)
    document, found = parse(source)
    for span in spans((document.blocks, document.comments, found)):
        assert span.source == source.name
        line = source.lines[span.line - 1]
        assert 1 <= span.line <= len(source.lines)
        assert 1 <= span.column < span.end <= len(line) + 1
    lines = [d.span.line for d in found]
    assert lines == sorted(set(lines))
    assert parse(source) == (document, found)
    render(found, {source.name: source})


@given(GARBAGE)
@settings(max_examples=100, deadline=None)
def test_garbage_in_one_block_touches_no_other(garbage: list[str]) -> None:
    text = ABOVE + "concept Between\n" + "\n".join(garbage) + "\n" + BELOW
    document, _ = parse(Source("any.play", text))
    above, *_, below = document.blocks
    assert above == parse(Source("any.play", ABOVE))[0].blocks[0]
    assert below.facts and written(below) == written(parse(Source("b", BELOW))[0].blocks[0])


@given(GARBAGE, st.integers(1, 4))
@settings(max_examples=100, deadline=None)
def test_garbage_between_good_lines_costs_no_good_line(garbage: list[str], at: int) -> None:
    good = ABOVE.splitlines()
    text = "\n".join([*good[:at], *garbage, *good[at:]])
    document, _ = parse(Source("any.play", text))
    facts = written(document.blocks[0])
    assert all(fact in facts for fact in written(parse(Source("a", ABOVE))[0].blocks[0]))
