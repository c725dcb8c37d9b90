from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from syrupy.assertion import SnapshotAssertion

from stemline.source import Source
from stemline.syntax.parser import parse
from stemline.syntax.tree import Atom, AtomKind, Block, Linked, Phrase, Series, Value
from stemline.syntax.walking import Walk

PLAYBOOKS = Path(__file__).parents[2] / "playbooks"

CROSSERS = """\
// Two shallow crossers under a settle.
concept Crossers
    settle is strong #2
    settle is strong #3 when 4x1
    settle is tight end or strong #2 when 3x1
    settle runs sit 8 over ball
    under is weak inside
    under runs cross 5
    over is inside opposite under
    over runs cross 6
    over, under runs settle in space when zone, past ball
    flat is back or nobody
    flat runs shoot away from settle
    dig is weak #1 or nobody
    dig runs dig 12
    clear is strong #1
    clear runs post
    clear runs dig 12 when 3x2
    clear runs out 10 when 3x2, off // his choice
    window is strong #2 when 4x1
    window runs in 10
    spot near is low, away from settle
    spot top is over ball
    spot far is low, same side as settle
    claims triangle near top far
    needs under within 6 of tackle at snap
    feet quick, 3, reset
    read flat on quick > near with dig on 3 > top on reset > far on reset
    pressure flat > near > far
    say "Over sets the depth; under runs off his heels."

tag Wheel for Crossers
    flat runs wheel
    keeps read, feet

tag Return for Crossers
    over, under runs return
    keeps read, feet

dress Crossers
    in Empty Three Two
    in Quads
    with plain
    with Wheel
    with Return
    with Wheel + Return
    to right, left
    against Cover 1
    never in Empty Three Two with Wheel, Wheel + Return
"""


def atoms(value: Value | None) -> Iterator[Atom]:
    match value:
        case None:
            return
        case Phrase():
            yield from value.atoms
        case Series():
            for item in value.items:
                yield from atoms(item)
        case Linked():
            yield from atoms(value.head)
            for link in value.links:
                yield link.connector
                yield from atoms(link.value)


def atoms_of(block: Block) -> Iterator[Atom]:
    yield from atoms(block.name)
    for join in block.joins:
        yield join.connector
        yield from atoms(join.value)
    for fact in block.facts:
        yield from filter(None, (fact.label, fact.verb))
        for value in (*fact.subject, fact.value, fact.guard):
            yield from atoms(value)


def test_crossing_family(tree: Callable[[str], str], snapshot: SnapshotAssertion) -> None:
    assert tree(CROSSERS) == snapshot


def test_every_atom_stands_where_its_span_says_and_only_marks_are_left() -> None:
    source = Source("crossers.play", CROSSERS)
    document, _ = parse(source)
    left = [line.partition("//")[0] for line in source.lines]
    for block in document.blocks:
        for atom in atoms_of(block):
            line, start, end = left[atom.span.line - 1], atom.span.column - 1, atom.span.end - 1
            written = line[start:end]
            assert (written[1:-1] if atom.kind is AtomKind.STRING else written) == atom.text
            left[atom.span.line - 1] = line[:start] + " " * (end - start) + line[end:]
    words = " ".join(left).split()
    assert set(words) == {"concept", "tag", "dress", "when", "or", ">", ",", "+"}


@pytest.mark.parametrize(
    ("line", "wanted"),
    [
        # `>` is loosest, then connectors, `then`, `,`, `or`, `+`.
        (
            "read flat on quick > near with dig on 3",
            "read: (> [flat @on quick] | [near @with dig @on n:3])",
        ),
        ("claims a, b above c or d", "claims: [(, a | b) @above (or c | d)]"),
        ("x runs up 5 then in, a or b + c", "x <runs> (then up n:5 | (, in | (or a | (+ b | c))))"),
        ("x runs a + b or c, d then e", "x <runs> (then (, (or (+ a | b) | c) | d) | e)"),
        ("read on 3 > b", "read: (> [@on n:3] | b)"),
        # A guard binds to the whole line and knows no connector.
        (
            "read a on 3 when zone, 3x1 or man on 3",
            "read: [a @on n:3] WHEN (, zone | (or s:3x1 | man on n:3))",
        ),
        # Connectors count for their own label only; `above` is a plain word after `runs`.
        ("x runs sit 8 above ball with care", "x <runs> sit n:8 above ball with care"),
        ("spot near is low, away from a", "spot: [near @is (, low | away from a)]"),
        # A label comes first, but where a verb turns the words before it into a name; the first
        # verb behind the first word parts a line.
        ("read runs flat", "read: runs flat"),
        ("read flat runs", "read: flat runs"),
        ("read man is strong #2", "read man <is> strong #2"),
        ("family late man runs deep", "family: late man runs deep"),
        ("runs is strong #2", "runs <is> strong #2"),
        ("over, the tight end runs dig", "over, the tight end <runs> dig"),
        # Only a comma right between two figures may be a decimal one.
        ("feet 1, 3", "feet: (, n:1 | n:3)"),
        ("feet 1 ,3", "feet: (, n:1 | n:3)"),
        ("feet quick,3", "feet: (, quick | n:3)"),
        # Quotes make an ordinary word of anything.
        ('"read" is strong #1', "t:<read> <is> strong #1"),
        ('read near "with" dig', "read: near t:<with> dig"),
        ('x runs "then" "or" “when” "+"', "x <runs> t:<then> t:<or> t:<when> t:<+>"),
        # Keywords know no capitals; the text is kept as written.
        ("Settle IS Strong #2 WHEN 4x1", "Settle <IS> Strong #2 WHEN s:4x1"),
        ("READ a ON 3 Then b", "READ: (> [a @ON n:3] | b)"),
    ],
)
def test_shape_of_a_line(fact: Callable[..., str], line: str, wanted: str) -> None:
    assert fact(line) == wanted


@pytest.mark.parametrize(
    ("line", "wanted"),
    [
        ("in A, B motion M", "in: [(, A | B) @motion M]"),
        ("never in A with W, W + R", "never: [@in A @with (, W | (+ W | R))]"),
        ("only to left", "only: [@to left]"),
        ("call Quads Crossers as Comet", "call: [Quads Crossers @as Comet]"),
        ("to right, left", "to: (, right | left)"),
    ],
)
def test_shape_of_a_line_of_a_dress(fact: Callable[..., str], line: str, wanted: str) -> None:
    assert fact(line, "dress Crossers") == wanted


def test_header(tree: Callable[[str], str]) -> None:
    text = (
        "FORMATION Quads 3x2 Tight Extends Quads\n  X at ball\n"
        'tag "Now or Never" for Crossers\n  say "Go."\n'
        "concept Élan d’hiver\n  say “Allez.”\n"
        "playbook Herons 2026 // no line below\n"
    )
    assert tree(text) == (
        "1:1-40 formation Quads s:3x2 Tight @Extends Quads\n"
        "  2:3-12 X <at> ball\n"
        "3:1-32 tag t:<Now or Never> @for Crossers\n"
        "  4:3-12 say: t:<Go.>\n"
        "5:1-21 concept Élan d’hiver\n"
        "  6:3-15 say: t:<Allez.>\n"
        "7:1-21 playbook Herons n:2026\n"
        "7:22-38 line end: // no line below\n"
    )


def test_comments_stand_anywhere_but_in_quotes(tree: Callable[[str], str]) -> None:
    text = (
        "// first\n"
        "concept A // of the block\n"
        "        // odd margin\n"
        '    say "not // one" // but this\n'
        "\n"
        "    x is high/low//tight\n"
        "wood Four // in a block stepped over\n"
    )
    assert tree(text) == (
        "2:1-10 concept A\n"
        "  4:5-21 say: t:<not // one>\n"
        "  6:5-18 x <is> high/low\n"
        "1:1-9 own line: // first\n"
        "2:11-26 line end: // of the block\n"
        "3:9-22 own line: // odd margin\n"
        "4:22-33 line end: // but this\n"
        "6:18-25 line end: //tight\n"
        "7:11-37 line end: // in a block stepped over\n"
        "7:1-5 E200\n"
    )


@pytest.mark.parametrize("bad", ["read a > > b", "nonsense", "x = b", "x is", "read a when"])
@pytest.mark.parametrize("at", [0, 1, 2])
def test_a_mistake_costs_one_line(bad: str, at: int) -> None:
    good = ["settle is strong #2", "feet quick, 3", "settle runs sit 8 when zone"]
    lines = [*good[:at], bad, *good[at:]]
    text = "concept A\n" + "".join(f"    {line}\n" for line in lines)
    document, found = parse(Source("test.play", text))
    (block,) = document.blocks
    assert [f.key for f in block.facts] == ["is", "feet", "runs"]
    assert [d.span.line for d in found] == [at + 2]


def test_a_bad_header_keeps_its_name_and_its_lines(tree: Callable[[str], str]) -> None:
    text = (
        "formation Trips extends\n    X at ball\n"
        "concpt Snag\n    x is back\n"
        "concept Smash: high\n    x is back\n"
    )
    assert tree(text) == (
        "1:1-16 formation Trips\n"
        "  2:5-14 X <at> ball\n"
        "3:1-12 concept Snag\n"
        "  4:5-14 x <is> back\n"
        "5:1-20 concept Smash high\n"
        "  6:5-14 x <is> back\n"
        "1:17-24 E209\n"
        "3:1-7 E200\n"
        "5:14-15 E121\n"
    )


def test_a_line_that_lost_its_margin_is_still_read(tree: Callable[[str], str]) -> None:
    text = "concept A\nx is back\ny is back\n    z is back\n  v is back\nconcept B\n  x is back\n"
    assert tree(text) == (
        "1:1-10 concept A\n"
        "  2:1-10 x <is> back\n"
        "  3:1-10 y <is> back\n"
        "  4:5-14 z <is> back\n"
        "  5:3-12 v <is> back\n"
        "6:1-10 concept B\n"
        "  7:3-12 x <is> back\n"
        "2:1-2 E205\n"
        "5:1-3 E206\n"
    )


def test_tabs_are_said_once_and_read(tree: Callable[[str], str]) -> None:
    text = "concept A\n\tx is back\n\ty is back\n    z is back\n  \tv is\tback\n"
    assert tree(text) == (
        "1:1-10 concept A\n"
        "  2:2-11 x <is> back\n"
        "  3:2-11 y <is> back\n"
        "  4:5-14 z <is> back\n"
        "  5:4-13 v <is> back\n"
        "2:1-2 E110\n"
    )


def test_blanks_that_only_look_like_spaces_are_said_once_and_read(
    tree: Callable[[str], str],
) -> None:
    text = "concept A\n    x is back\n\u00a0\u00a0y is back\n\u00a0z is back\n"
    assert tree(text) == (
        "1:1-10 concept A\n"
        "  2:5-14 x <is> back\n"
        "  3:3-12 y <is> back\n"
        "  4:2-11 z <is> back\n"
        "3:1-3 E110\n"
    )


def test_a_line_too_long_is_left_out_before_it_is_read() -> None:
    text = "concept A\n    x is back\n    say " + "x" * 1_000_000 + "\n    y is back\n"
    document, found = parse(Source("test.play", text))
    assert [f.subject[0].text for f in document.blocks[0].facts] == ["x", "y"]
    assert [(d.code, d.span.line) for d in found] == [("E111", 3)]


def test_a_header_too_long_ends_the_block_above() -> None:
    text = "concept A\n    x is back\nconcept " + "B" * 1000 + "\n    y is back\n"
    document, found = parse(Source("test.play", text))
    assert [[f.subject[0].text for f in b.facts] for b in document.blocks] == [["x"]]
    assert [d.code for d in found] == ["E111"]


def test_empty_texts() -> None:
    for text in ("", "\n", "   \n", "// only this\n"):
        document, found = parse(Source("test.play", text))
        assert not document.blocks and not found


def test_the_walk_makes_what_the_library_makes(monkeypatch: pytest.MonkeyPatch) -> None:
    """Texts as they are, and some with their fourth line cut short: mistakes are met alike."""
    places = sorted((PLAYBOOKS / "saltmarsh-herons").glob("*.play"))[::2]
    texts = [Source(place.name, place.read_text("utf-8")) for place in places]
    for text in texts[::2]:
        lines = text.text.splitlines()
        lines[3] = lines[3][: len(lines[3]) // 2] + " >"
        texts.append(Source(text.name, "\n".join(lines)))
    walked = [parse(text) for text in texts]
    monkeypatch.setattr(Walk, "feed", lambda _, state, token: state.feed_token(token))
    assert walked == [parse(text) for text in texts]
    assert any(found for _, found in walked)
