from __future__ import annotations

from together import together

from stemline.source import Source
from stemline.syntax.lines import KINDS, WrittenLine
from stemline.syntax.parser import parse
from stemline.syntax.tree import Linked, Series, Value

LINES = [
    (kind, line)
    for kind, shape in KINDS.items()
    for line in (*shape.labels.values(), *shape.verbs.values())
]


def connectors(value: Value | None) -> set[str]:
    match value:
        case Series(_, items):
            return set().union(*map(connectors, items))
        case Linked(head, links):
            inner = (connectors(v) for v in (head, *(k.value for k in links)))
            return {k.connector.word for k in links}.union(*inner)
    return set()


@together(("kind", "line"), LINES, ids=[f"{k} {ln.word}" for k, ln in LINES])
def test_every_example_reads_as_the_line_it_shows(kind: str, line: WrittenLine) -> None:
    document, found = parse(Source("test.play", f"{KINDS[kind].header}\n    {line.example}\n"))
    assert not found
    (fact,) = document.blocks[0].facts
    assert fact.key == line.word
    assert (fact.label is not None) == (KINDS[kind].labels.get(line.word) is line)
    assert connectors(fact.value) <= line.connectors
    assert bool(connectors(fact.value)) == bool(line.connectors)


@together("kind", KINDS)
def test_no_word_is_both_a_label_and_a_verb_of_a_kind(kind: str) -> None:
    shape = KINDS[kind]
    # `Wheel only to right` beside `only in Quads with Wheel`: what is limited may stand first.
    # `keeps read` of a tag beside `quarterback keeps if end chases`: one has nobody before it.
    both = {"dress": {"only"}, "tag": {"keeps"}}.get(kind, set())
    assert shape.labels.keys() & shape.verbs.keys() == both
    assert not shape.labels.keys() & shape.openers.keys()


@together("kind", KINDS)
def test_a_header_example_names_its_kind_and_join(kind: str) -> None:
    document, _ = parse(Source("test.play", KINDS[kind].header + "\n"))
    (block,) = document.blocks
    assert block.kind == kind
    assert [j.connector.word for j in block.joins] == [KINDS[kind].join][: bool(KINDS[kind].join)]
