"""The page of the notation: every sample compiles, and every word of every list stands on it."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from importlib.resources import files

import pytest
from together import together

from stemline.diagnostics.render import render
from stemline.football.blocking.block_names import BLOCKS, DEFENDERS, PROTECTIONS
from stemline.football.blocking.run_rules import MEANINGS
from stemline.football.blocking.run_rules import BlockWay as RunWay
from stemline.football.contact_limits import GROUPS as PRACTICE_GROUPS
from stemline.football.contact_limits import HitLevel
from stemline.football.defence.techniques import GAPS, LINEBACKERS, TECHNIQUES, Shade
from stemline.football.defence.techniques import WORDS as TECHNIQUE_WORDS
from stemline.football.field import BallSpot
from stemline.football.line import SPLIT
from stemline.football.offence.counting import STACK_DEPTH, STACK_WIDTH
from stemline.football.offence.landmarks import END_SPLIT, TACKLE_SPLIT, Landmark
from stemline.football.offence.quarterback import FEET, MOVING
from stemline.football.offence.routes import LIBRARY
from stemline.football.offence.strokes import RunTo, Up
from stemline.football.players import Position
from stemline.football.rulebook.codes import CODES, Certainty, Known
from stemline.football.rulebook.rules import MotionWay, PlayClock
from stemline.football.situations import DISTANCES, FieldPart, Moment, Score, Wind
from stemline.football.timing.levels import HIGH_SCHOOL
from stemline.handbook.making import NOTATION, PAGES
from stemline.handbook.page_samples import PageSample, base_of, completed, samples_of
from stemline.one_picture import call_play, drawn
from stemline.playbook.concepts import Keep
from stemline.playbook.look_definitions import LookSide
from stemline.playbook.protection_definitions import SlideWay
from stemline.playbook.said import SideWord
from stemline.playbook.week_definitions import TEMPOS
from stemline.read.league import NAMES as LEAGUE
from stemline.read.league import NO_LIMIT
from stemline.read.pass_blocks import BLOCKS as PASS_BLOCKS
from stemline.read.read_claims import CLAIMS
from stemline.read.read_concepts import PICKS
from stemline.read.read_duties import MEN, RUSHES, ZONES
from stemline.read.read_exchanges import EXCHANGES
from stemline.read.read_guards import CONDITION_WORDS
from stemline.read.read_looks import STRENGTHS
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
from stemline.syntax.tree import Fact, Linked, Series, Value
from stemline.theme import load_theme

REFERENCE, BALL_PAGE, WEEK_PAGE, FIGURES_PAGE = (
    files("stemline.grammar").joinpath(name).read_text("utf-8")
    for name in (*NOTATION, "figures.md")
)
PAGE = f"{REFERENCE}\n{BALL_PAGE}\n{WEEK_PAGE}"
_FENCE = re.compile(r"^```play *(.*)\n((?:.*\n)*?)```$", re.MULTILINE)
SAMPLES = samples_of(PAGE)
BASE = base_of(SAMPLES)
SHOWN = [s for s in SAMPLES if not s.word]


def table_of(heading: str, page: str = PAGE) -> list[list[str]]:
    """The rows of a table, each as its cells; ``heading`` are its first headings."""
    found = re.search(rf"^(?:\| )?{re.escape(heading)}(?: \|.*)?$", page, re.MULTILINE)
    assert found, heading
    table = page[found.end() + 1 :].partition("\n\n")[0].splitlines()[1:]
    return [[c.strip() for c in line.strip("|").split("|")] for line in table]


@dataclass(frozen=True)
class Row:
    """What a coach says, the kind of block he says it in ("no" for none), what he types."""

    said: str
    kind: str
    typed: str

    @property
    def lines(self) -> list[str]:
        return re.findall(r"`([^`]+)`", self.typed)


def compiled(sample: PageSample) -> tuple[Session, str]:
    sources = [Source(f"{n}.play", text) for n, text in enumerate(completed(sample, BASE))]
    result = Session(sources, "playbook")
    return result, render(result.diagnostics, {s.name: s for s in sources})


def at_line(sample: PageSample) -> str:
    return f"line {sample.line}"


@together("sample", [BASE, *SHOWN], ids=at_line)
def test_every_sample_compiles(sample: PageSample) -> None:
    """Without an error; a concept that is a fragment may leave a man without a job."""
    result, printed = compiled(sample)
    assert not result.failed, printed
    clock = {d.code for d in result.diagnostics if d.code.startswith("W80")}
    assert {d.code for d in result.diagnostics} - clock <= {"W650"}, printed


@together("sample", [BASE, *SHOWN], ids=at_line)
def test_every_concept_of_a_sample_makes_calls(sample: PageSample) -> None:
    result, printed = compiled(sample)
    assert result.season is not None
    called = {p.call.concept for p in result.season.plays}
    mine = {b.name.text for b in sample.blocks if b.kind in ("concept", "run")}
    assert mine <= called, printed


def test_the_base_leaves_no_man_without_a_job() -> None:
    result, printed = compiled(BASE)
    assert result.diagnostics == (), printed


def test_no_sample_is_passed_over() -> None:
    """Every fence of the page is read as one of these; a word that no test knows is a mistake."""
    fences = re.findall(r"^ *```(.*)$", PAGE, re.MULTILINE)
    opened, closed = fences[::2], fences[1::2]
    assert set(closed) == {""}
    assert set(opened) == {"play", "play base", "text"}
    assert len(SAMPLES) == len([word for word in opened if word.startswith("play")])
    assert all(sample.blocks for sample in SHOWN)


def test_for_eleven_men() -> None:
    """The first playbook as its page tells a coach of eleven to change it."""
    text = BASE.text.replace("code canadian amateur", "code high school")
    text = re.sub(r"^    (X at|D at|D covers) .*\n", "", text, flags=re.MULTILINE)
    text = re.sub(r"(W at .*)off line", r"\1on line", text)
    source = Source("first.play", text)
    result = Session([source], "playbook")
    assert result.diagnostics == (), render(result.diagnostics, {source.name: source})
    assert result.season is not None and len(result.season.plays) == 4


def test_the_first_picture_is_what_the_first_pass_draws() -> None:
    """`stemline draw` of the page's own text makes it anew."""
    result, _ = compiled(BASE)
    play, _ = call_play(result, "Three Two Right Crossers", None, "")
    assert play is not None
    shown = files("stemline.grammar").joinpath("pictures", "first-pass.svg").read_bytes()
    assert "](pictures/first-pass.svg)" in PAGE
    assert shown == drawn(play, load_theme(), level=HIGH_SCHOOL)


def slug(heading: str) -> str:
    """The anchor that a heading has on a page of a repository."""
    return re.sub(r"[^\w\- ]", "", heading.casefold()).replace(" ", "-")


@pytest.mark.parametrize("name", PAGES)
def test_links_lead_somewhere(name: str) -> None:
    room = files("stemline.grammar")
    page = room.joinpath(name).read_text("utf-8")
    for target, anchor in re.findall(r"\]\(([^)#]*)(?:#([^)]*))?\)", page):
        there = room.joinpath(target) if target else room.joinpath(name)
        assert there.is_file(), target
        heads = re.findall(r"^#+ (.+)$", there.read_text("utf-8"), re.MULTILINE)
        assert not anchor or anchor in map(slug, heads), anchor


# What a coach says, and the line that says it.

SAID = [Row(*row) for row in table_of("you say")]
_HOST = {
    "concept": "concept {name} extends Crossers\n{lines}\n",
    "run": "run {name} extends Zone\n{lines}\n",
    "look": "look {name} extends Base\n{lines}\n",
    "protection": "protection {name}\n    line blocks man\n{lines}\n",
    "formation": "formation {name} extends Three Two\n{lines}\n",
    "motion": "motion {name}\n{lines}\n",
    "tag": "tag {name} for Crossers\n{lines}\n",
    "dress": "dress Crossers\n    in Three Two\n    with plain\n    to both\n{lines}\n",
    "week": "week 1 Larch Bay\n{lines}\n",
}
"""By kind a block of the first playbook that such a line is put into."""


def hosted(row: Row, name: str) -> str:
    lines = "".join(f"    {line}\n" for line in row.lines)
    if "feet " in lines and "read " not in lines and row.kind == "concept":
        foot = re.split(r"[ ,]+", lines.partition("feet ")[2])[0].strip()
        lines += f"    read flat on {foot}\n"
    if row.kind == "tag" and row.lines[0].startswith("tag "):  # more than one tag, each with lines
        return re.sub(r"^    tag ", "tag ", lines, flags=re.MULTILINE)
    return _HOST[row.kind].format(name=name, lines=lines)


def test_there_are_eighty_sayings_in_the_order_of_the_alphabet() -> None:
    said = [row.said.casefold() for row in SAID]
    assert len(said) >= 80
    assert said == sorted(set(said))


@together("kind", _HOST)
def test_a_saying_has_a_line_that_compiles(kind: str) -> None:
    """All of a kind in one playbook, but for what a playbook has once."""
    rows = [row for row in SAID if row.kind == kind]
    assert rows and all(row.lines for row in rows)
    blocks = [hosted(row, f"Tried {number}") for number, row in enumerate(rows)]
    for text in blocks if kind in ("dress", "week") else ["\n".join(blocks)]:
        result, printed = compiled(PageSample("", text, 0))
        assert not result.failed, printed


def test_every_other_saying_is_an_honest_no() -> None:
    assert {row.kind for row in SAID} == {*_HOST, "no"}


# Every form of line stands in a sample.


def said(samples: Iterable[PageSample]) -> set[tuple[str, str]]:
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


_ANSWERED = {("playbook", "picture"), ("concept", "install"), ("run", "install")} | {
    (kind, "moves") for kind in ("concept", "run", "tag")
}
"""Read, and answered with the line that is written now."""


def test_every_label_and_verb_stands_in_a_sample() -> None:
    wanted = {in_concepts(*head) for head in heads() - _ANSWERED}
    assert wanted - {in_concepts(*head) for head in said(SHOWN)} == set()


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
    # The verbs of the ball have one shape.
    given = set[str]().union(*(found["concept", verb] for verb in EXCHANGES))
    found |= {("concept", verb): given for verb in EXCHANGES}
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
    "pictures": ("from middle", "strong to field", "strong to boundary"),
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


@together("name", LISTS)
def test_every_word_of_a_closed_list_stands_on_the_page(name: str) -> None:
    words = set(LISTS[name])
    assert words
    assert words - CODE_SPANS - {"inside", "outside", "keeps"} == set()


def rows(heading: str, page: str = PAGE) -> dict[str, list[str]]:
    """A table: its first column without its marks, and the cells after it."""
    return {first.strip("`"): rest for first, *rest in table_of(heading, page)}


def follows(name: str) -> bool:
    """Whether the depth of a route moves any of its strokes."""
    depths = (s.to if isinstance(s, Up) else s.depth for s in LIBRARY[name].strokes
              if isinstance(s, Up | RunTo))  # fmt: skip
    return any(d is not None and d.called for d in depths)


def test_the_route_table_is_the_library() -> None:
    wanted = [f"`{n}`, {LIBRARY[n].depth:g}" if follows(n) else f"`{n}`" for n in LIBRARY]
    table = table_of("route, depth")
    told = [route for route, _ in table]
    before = {row: wanted[at - 1] for at, row in enumerate(wanted) if row not in told and at}
    assert told == wanted, "in grammar/reference.md, as the library has them: " + "; ".join(
        f"a row {row} behind that of {other}" for row, other in before.items()
    )
    assert all(runs for _, runs in table)


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
    table = rows(heading, FIGURES_PAGE)
    assert list(table) == list(CODES)
    for name, cells in table.items():
        if heading == "line":
            assert cells.pop(0) == " ".join(CODES[name].line)
        assert cells == [marked(getattr(CODES[name], f)) for f in figures.split()], name


def test_the_short_table_of_codes() -> None:
    table = rows("code")
    assert list(table) == list(CODES)
    for name, (men, line, *cells) in table.items():
        code = CODES[name]
        assert (men, line) == (f"{code.players.value}", f"{len(code.line)}"), name
        figures = ("on_line", "in_backfield", "motion_most", "width")
        assert cells == [marked(getattr(code, f))[:-2] for f in figures], name


def test_the_league_figures_have_their_rows() -> None:
    firsts = [first for first, *_ in table_of("league figure")]
    assert re.findall(r"`([^`]+)`", " ".join(firsts)) == list(LEAGUE)


def test_figures_in_the_prose() -> None:
    places = rows("place")
    assert [places[m][0].split()[0] for m in ("guard", "tackle", "end")] == [
        f"{SPLIT:g}",
        f"{TACKLE_SPLIT:g}",
        f"{END_SPLIT:g}",
    ]
    low, high, deep = (f"`{name}` {depth:g}" for name, depth in SPOT_DEPTHS.items())
    assert f"{low} yards deep, {high}, {deep}" in " ".join(PAGE.split())
    assert (HALF_HEIGHT, LOW_HALF_WIDTH, HALF_WIDTH) == (2, 4.5, 3)


def test_a_stack_is_as_the_pages_say() -> None:
    wide, deep = f"{STACK_WIDTH.value:g}", f"{STACK_DEPTH.value:g}"
    assert (wide, f"{deep} or more deep" in REFERENCE) == ("1", True)
    assert f"less than {wide} yard apart across, one at least {deep} yards behind" in FIGURES_PAGE


def test_every_condition_has_its_row() -> None:
    assert set(rows("condition")) == {*CONDITION_WORDS, "3x1", "3 strong", "1 weak", "Quads"}


def test_the_page_is_no_longer_than_a_coach_reads() -> None:
    over = len(REFERENCE.split()) - 10_000
    assert over <= 0, f"grammar/reference.md: say {over} words less somewhere"


def test_the_page_is_read_aloud_in_short_sentences() -> None:
    prose = _FENCE.sub("", PAGE)
    prose = re.sub(r"^```text\n.*?^```$", "", prose, flags=re.MULTILINE | re.DOTALL)
    prose = re.sub(r"^(- \[|  \[|#|!\[|.* \| ).*$", "", prose, flags=re.MULTILINE)
    sentences = re.split(r"(?<=[.:;?])[*]*\s+|\n\n", prose)
    long = [s for s in sentences if len(s.split()) > 34]
    assert long == []
