"""The page of the notation: every sample compiles, and every word of every list stands on it."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from importlib.resources import files

import pytest

from stemline.diagnostics.render import render
from stemline.football.blocking.block_names import BLOCKS, DEFENDERS, PROTECTIONS
from stemline.football.blocking.run_rules import MEANINGS
from stemline.football.blocking.run_rules import BlockWay as RunWay
from stemline.football.contact_limits import GROUPS as PRACTICE_GROUPS
from stemline.football.contact_limits import HitLevel
from stemline.football.defence.techniques import GAPS, LINEBACKERS, TECHNIQUES, Shade
from stemline.football.defence.techniques import WORDS as TECHNIQUE_WORDS
from stemline.football.field import BallSpot
from stemline.football.offence.landmarks import END_SPLIT, GUARD_SPLIT, TACKLE_SPLIT, Landmark
from stemline.football.offence.quarterback import FEET, MOVING
from stemline.football.offence.routes import LIBRARY
from stemline.football.offence.strokes import RunTo, Up
from stemline.football.players import Position
from stemline.football.rulebook.codes import CODES, Certainty, Known
from stemline.football.rulebook.rules import MotionWay, PlayClock
from stemline.football.situations import DISTANCES, FieldPart, Moment, Score, Wind
from stemline.playbook.concepts import Keep
from stemline.playbook.look_definitions import LookSide
from stemline.playbook.protection_definitions import SlideWay
from stemline.playbook.said import SideWord
from stemline.playbook.week_definitions import TEMPOS
from stemline.read.league import NAMES as LEAGUE
from stemline.read.league import NO_LIMIT
from stemline.read.read_claims import CLAIMS
from stemline.read.read_concepts import PICKS
from stemline.read.read_duties import MEN, RUSHES, ZONES
from stemline.read.read_guards import CONDITION_WORDS
from stemline.read.read_looks import STRENGTHS
from stemline.read.read_protections import BLOCKS as PASS_BLOCKS
from stemline.read.read_routes import STROKES
from stemline.read.read_runs import GAPS as HOLES
from stemline.read.read_runs import PLACES as LINE_PLACES
from stemline.read.read_runs import REACTIONS
from stemline.read.read_spots import SPOT_DEPTHS
from stemline.read.read_stands import PLACES
from stemline.read.read_week_rows import BAND_SIZES
from stemline.resolve.progression import HALF_HEIGHT, HALF_WIDTH, LOW_HALF_WIDTH
from stemline.session import Session
from stemline.source import Source
from stemline.syntax.lines import KINDS
from stemline.syntax.parser import parse
from stemline.syntax.tree import Block, Fact, Linked, Series, Value

PAGE = files("stemline.grammar").joinpath("reference.md").read_text("utf-8")
_FENCE = re.compile(r"^```play *(.*)\n((?:.*\n)*?)```$", re.MULTILINE)


@dataclass(frozen=True)
class Sample:
    """A fenced text, the word behind its fence and the line of the page it begins on."""

    word: str
    text: str
    line: int

    @property
    def blocks(self) -> tuple[Block, ...]:
        document, _ = parse(Source("sample.play", self.text))
        return document.blocks


SAMPLES = [Sample(m[1], m[2], PAGE[: m.start()].count("\n") + 1) for m in _FENCE.finditer(PAGE)]
(BASE,) = (s for s in SAMPLES if s.word == "base")
SHOWN = [s for s in SAMPLES if not s.word]
LATER = [s for s in SAMPLES if s.word == "later"]


def key(block: Block) -> tuple[str, str]:
    return block.kind, block.name.text.casefold()


def cut(text: str) -> list[str]:
    """A text's blocks, each as text."""
    return [part for part in re.split(r"^(?=\S)", text, flags=re.MULTILINE) if part.strip()]


def whole(sample: Sample) -> list[str]:
    """A sample with the blocks of the base that it does not hold, and what it needs to be called.

    A concept without a dress-up is dressed with its tags, so that each is laid over it and proved;
    a route is run by somebody, and a motion put before a concept that anybody can run.
    """
    mine = {key(b) for b in sample.blocks}
    texts = [sample.text]
    if sample is not BASE and not any(kind == "playbook" for kind, _ in mine):
        parts = zip(BASE.blocks, cut(BASE.text), strict=True)
        texts += [text for block, text in parts if key(block) not in mine]
    document, _ = parse(Source("all.play", "\n".join(texts)))
    blocks = document.blocks
    formation = "Three Two"
    if any(kind == "playbook" for kind, _ in mine):
        formation = next(b.name.text for b in blocks if b.kind == "formation")
    dressed = {b.name.text.casefold() for b in blocks if b.kind == "dress"}
    for block in blocks:
        owner = block.name.text.casefold()
        if block.kind in ("concept", "run") and owner not in dressed:
            tags = [b.name.text for b in blocks if b.kind == "tag" and of(b) == owner]
            lines = [f"in {formation}", "to right, left"]
            lines += [f"with {tag}" for tag in ("plain", *tags)]
            texts.append("\n    ".join([f"dress {block.name.text}", *lines]) + "\n")
    for block in blocks:
        if block.kind == "route":
            name = block.name.text
            texts.append(f"concept Test {name}\n    a is strong #1\n    a runs {name}\n")
            texts.append(f"dress Test {name}\n    in {formation}\n")
    motions = [b.name.text for b in blocks if b.kind == "motion"]
    if motions:
        texts.append("concept Anything\n    a is strong #1\n    a runs go\n")
        texts.append(f"dress Anything\n    in {formation} motion {', '.join(motions)}\n")
    return texts


def of(tag: Block) -> str:
    """The concept that a tag is for."""
    owner = tag.join("for")
    assert owner is not None
    return owner.text.casefold()


def compiled(sample: Sample) -> tuple[Session, str]:
    sources = [Source(f"{n}.play", text) for n, text in enumerate(whole(sample))]
    result = Session(sources, "playbook")
    return result, render(result.diagnostics, {s.name: s for s in sources})


def at_line(sample: Sample) -> str:
    return f"line {sample.line}"


@pytest.mark.parametrize("sample", [BASE, *SHOWN], ids=at_line)
def test_every_sample_compiles(sample: Sample) -> None:
    """Without an error; a concept that is a fragment may leave a man without a job."""
    result, printed = compiled(sample)
    assert not result.failed, printed
    clock = {d.code for d in result.diagnostics if d.code.startswith("W80")}
    assert {d.code for d in result.diagnostics} - clock <= {"W650"}, printed


@pytest.mark.parametrize("sample", [BASE, *SHOWN], ids=at_line)
def test_every_concept_of_a_sample_makes_calls(sample: Sample) -> None:
    result, printed = compiled(sample)
    assert result.season is not None
    called = {p.call.concept for p in result.season.plays}
    mine = {b.name.text for b in sample.blocks if b.kind in ("concept", "run")}
    assert mine <= called, printed


def test_the_base_leaves_no_man_without_a_job() -> None:
    result, printed = compiled(BASE)
    assert result.diagnostics == (), printed


@pytest.mark.parametrize("sample", LATER, ids=at_line)
def test_a_word_kept_for_later_is_refused(sample: Sample) -> None:
    result, printed = compiled(sample)
    assert {d.code for d in result.diagnostics if d.is_error} == {"E403"}, printed


# Every form of line stands in a sample.


def said(samples: Iterable[Sample]) -> set[tuple[str, str]]:
    """Labels and verbs by kind of block, and the joins of headers."""
    found: set[tuple[str, str]] = set()
    for sample in samples:
        for block in sample.blocks:
            found |= {(block.kind, fact.key) for fact in block.facts}
            found |= {(block.kind, row.key) for fact in block.facts for row in fact.rows}
            found |= {(block.kind, join.connector.word) for join in block.joins}
    return found


def heads() -> set[tuple[str, str]]:
    words = {(k, w) for k, kind in KINDS.items() for w in (*kind.turning, *kind.verbs)}
    words |= {(k, w) for k, kind in KINDS.items() for o in kind.openers.values() for w in o.labels}
    return words | {(k, kind.join) for k, kind in KINDS.items() if kind.join}


_AS_IN_CONCEPTS = {word for word in KINDS["concept"].labels if word in KINDS["tag"].labels} | set(
    KINDS["concept"].verbs
)
"""A tag and a run say these as a concept does, so they need no second sample."""


def in_concepts(kind: str, word: str) -> tuple[str, str]:
    """The kind of block in whose sample a word has to stand: a tag's or a run's may do."""
    shared = kind in ("tag", "run") and (word in _AS_IN_CONCEPTS or word == "extends")
    return ("concept" if shared else kind), word


def test_every_label_and_verb_stands_in_a_sample() -> None:
    wanted = {in_concepts(*head) for head in heads()}
    assert wanted - {in_concepts(*head) for head in said([*SHOWN, *LATER])} == set()


def connectors(value: Value | None) -> set[str]:
    match value:
        case Series(_, items):
            return set[str]().union(*map(connectors, items))
        case Linked(head, links):
            inner = (connectors(v) for v in (head, *(k.value for k in links)))
            return {k.connector.word for k in links}.union(*inner)
    return set()


def test_every_connector_of_a_line_stands_in_a_sample() -> None:
    found: dict[tuple[str, str], set[str]] = {}
    for sample in SHOWN:
        for block in sample.blocks:
            for fact in block.facts:
                assert isinstance(fact, Fact)
                head = in_concepts(block.kind, fact.key)
                found.setdefault(head, set()).update(connectors(fact.value))
                for row in fact.rows:
                    found.setdefault((block.kind, ""), set()).update(connectors(row.value))
    for kind, shape in KINDS.items():
        rows = (opener.row for opener in shape.openers.values())
        for line in (*shape.turning.values(), *shape.verbs.values(), *rows):
            missing = line.connectors - found.get(in_concepts(kind, line.word), set())
            assert not missing, (kind, line.word, missing)


# Every word of every closed list stands on the page.

CODE_SPANS = set(re.findall(r"`([^`\n]+)`", _FENCE.sub("", PAGE)))

LISTS: dict[str, Iterable[str]] = {
    "landmarks": (m.value for m in Landmark),
    "sides": (s.value for s in SideWord),
    "depths": ("on line", "off line", "under centre"),
    "conditions": CONDITION_WORDS,
    "strokes": STROKES,
    "routes": LIBRARY,
    "feet": FEET,
    "blocks": BLOCKS,
    "protections": PROTECTIONS,
    "pass blocks": PASS_BLOCKS,
    "ways of a slide": (w.value for w in SlideWay),
    "picks": PICKS,
    "claims": CLAIMS,
    "defenders": DEFENDERS,
    "keeps": (k.value for k in Keep),
    "codes": CODES,
    "positions": (p.value for p in Position),
    "spot depths": SPOT_DEPTHS,
    "ball spots": (s.value for s in BallSpot),
    "launches": MOVING,
    "ways": ("away from", "same side as", "toward", "across from"),
    "house figures": ("numbers", "gun"),
    "league figures": (*LEAGUE, NO_LIMIT),
    "pictures": ("middle", "strength to field", "strength to boundary"),
    "rules": (
        *("inside", "outside", "tight end", "back", "nobody"),
        *("fullback", "wing", "quarterback"),
    ),
    "blocking rules": (way.value for way in RunWay),
    "places on the line": (*LINE_PLACES, "centre", "line"),
    "aims": (*HOLES, "outside the end"),
    "reactions": REACTIONS,
    "techniques": TECHNIQUES,
    "linebackers": LINEBACKERS,
    "techniques in words": set(TECHNIQUE_WORDS) - {"over center"},
    "gaps": (*GAPS, *RUSHES),
    "places of a defender": PLACES,
    "strengths": STRENGTHS,
    "sides of a look": (s.value for s in LookSide),
    "zones": (*ZONES, "man", "deep middle"),
    "men to cover": MEN,
    "moments": (moment.value for moment in Moment),
    "parts of the field": (part.word for part in FieldPart),
    "scores": (score.value for score in Score),
    "winds": (wind.value for wind in Wind),
    "distances": DISTANCES,
    "levels of contact": (level.value for level in HitLevel),
    "groups": PRACTICE_GROUPS,
    "tempos": TEMPOS,
    "cards": BAND_SIZES,
}


def test_the_table_of_techniques() -> None:
    table = rows("technique")
    assert list(table) == list(TECHNIQUES)
    for name, (stands, gap) in table.items():
        technique = TECHNIQUES[name]
        assert gap == technique.gap.value
        assert technique.on.value in stands
        assert ("head-up" in stands) == (technique.shade is Shade.HEAD)
        assert ("inside" in stands) == (technique.shade is Shade.INSIDE)


@pytest.mark.parametrize("name", LISTS)
def test_every_word_of_a_closed_list_stands_on_the_page(name: str) -> None:
    words = set(LISTS[name])
    assert words
    assert words - CODE_SPANS - {"inside", "outside", "keeps"} == set()


def rows(heading: str) -> dict[str, list[str]]:
    """A table of the page: its first column without its marks, and the cells after it."""
    table = PAGE.partition(f"| {heading} |")[2].partition("\n\n")[0]
    cells = [[c.strip() for c in line.strip("|").split("|")] for line in table.splitlines()[2:]]
    return {row[0].strip("`"): row[1:] for row in cells}


def follows(name: str) -> bool:
    """Whether the depth of a route moves any of its strokes."""
    depths = (s.to if isinstance(s, Up) else s.depth for s in LIBRARY[name].strokes
              if isinstance(s, Up | RunTo))  # fmt: skip
    return any(d is not None and d.called for d in depths)


def test_the_route_table_is_the_library() -> None:
    table = rows("route")
    assert list(table) == list(LIBRARY)
    for name, (depth, runs) in table.items():
        assert depth == (f"{LIBRARY[name].depth:g}" if follows(name) else "-"), name
        assert runs


@pytest.mark.parametrize(
    ("heading", "words"),
    [
        ("feet", FEET),
        ("rule | whom he takes", {way.value: m.words for way, m in MEANINGS.items()}),
        ("protection", PROTECTIONS),
        ("block", {name: job.words for name, job in BLOCKS.items()}),
    ],
)
def test_a_table_says_what_the_compiler_says(heading: str, words: dict[str, str]) -> None:
    assert {name: cells[0] for name, cells in rows(heading).items()} == words


_MARKS = {
    Certainty.PUBLISHED: "P",
    Certainty.REPORTED: "R",
    Certainty.TABLE: "T",
    Certainty.CUSTOM: "C",
    Certainty.MEMORY: "M",
}


def marked(figure: Known[object]) -> str:
    """A figure of a rule code as its cell has it: the value and the letter of its certainty."""
    match figure.value:
        case None:
            said = "no limit"
        case MotionWay() as way:
            said = "yes" if way is MotionWay.ANY else "no"
        case bool():
            said = "yes" if figure.value else "no"
        case PlayClock() as clock:
            said = f"{clock.usual:g}" + (f" or {clock.short:g}" if clock.short else "")
        case tuple() as ranges:
            said = ", ".join(f"{low}-{high}" for low, high in ranges) or "none"
        case int() | float() as number:
            said = f"{round(number, 1):g}"
        case other:
            raise AssertionError(other)
    return f"{said} {_MARKS[figure.certainty]}"


@pytest.mark.parametrize(
    ("heading", "figures"),
    [
        (
            "code",
            "players length width end_zone hash_from_sideline numbers_from_sideline",
        ),
        (
            "rules",
            "on_line in_backfield motion_most motion_way motion_set downfield ineligible_numbers "
            "also_ineligible",
        ),
        ("line", "ineligible block_past exchange play_clock"),
    ],
)
def test_the_tables_of_codes(heading: str, figures: str) -> None:
    """Every figure as the compiler has it, with how sure it is."""
    table = rows(heading)
    assert list(table) == list(CODES)
    for name, cells in table.items():
        if heading == "line":
            assert cells.pop(0) == " ".join(CODES[name].line)
        assert cells == [marked(getattr(CODES[name], f)) for f in figures.split()], name


def test_the_league_figures_have_their_rows() -> None:
    table = PAGE.partition("| league figure |")[2].partition("\n\n")[0]
    firsts = [line.split("|")[1] for line in table.splitlines()[2:]]
    assert re.findall(r"`([^`]+)`", " ".join(firsts)) == list(LEAGUE)


def test_figures_in_the_prose() -> None:
    places, spots = rows("place"), rows("words")
    assert [places[m][0].split()[0] for m in ("guard", "tackle", "end")] == [
        f"{GUARD_SPLIT:g}",
        f"{TACKLE_SPLIT:g}",
        f"{END_SPLIT:g}",
    ]
    for name, depth in SPOT_DEPTHS.items():
        assert spots[name] == [f"{depth:g} yards deep"]
    assert (HALF_HEIGHT, LOW_HALF_WIDTH, HALF_WIDTH) == (2, 4.5, 3)


def test_every_condition_has_its_row() -> None:
    assert set(rows("condition")) == {*CONDITION_WORDS, "3x1", "3 strong", "1 weak"}


def test_the_page_is_read_aloud_in_short_sentences() -> None:
    prose = _FENCE.sub("", PAGE)
    prose = re.sub(r"^```text\n.*?^```$", "", prose, flags=re.MULTILINE | re.DOTALL)
    prose = re.sub(r"^(\||- \[|  \[|#).*$", "", prose, flags=re.MULTILINE)
    sentences = re.split(r"(?<=[.:;?])[*]*\s+|\n\n", prose)
    long = [s for s in sentences if len(s.split()) > 34]
    assert long == []
