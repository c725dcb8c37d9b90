"""Runs, protections, looks and formations → page models."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from page_text import book_text
from sample_blocks import EVEN, EVEN_PRESS, ODD, blocking_season, power, stands
from sample_season import crossers
from syrupy.assertion import SnapshotAssertion

from stemline.book.content.block_table import Fronts, fronts, grouped, most_unlike
from stemline.book.content.book import Book, Edition, make_book
from stemline.book.content.cast_table import changes
from stemline.book.content.cautions import cautions
from stemline.book.content.dressed_page import DressedPage
from stemline.book.content.kinds.concept_page import ConceptPage
from stemline.book.content.kinds.look_page import place_words
from stemline.book.content.page import Remark
from stemline.football.defenders import Defender, Level
from stemline.football.field import Side
from stemline.football.play import Hit, Play
from stemline.geometry.paths import Ending, Leg, Path, Point
from stemline.source import NOWHERE

EDITION = Edition("4f2c9e1", "2026-05-01")


@pytest.fixture(scope="module")
def book() -> Book:
    return make_book(blocking_season(), EDITION, ())


def run_page(book: Book) -> ConceptPage:
    (page,) = book.of(ConceptPage)
    return page


def test_page_models(book: Book, snapshot: SnapshotAssertion) -> None:
    text = book_text(book)
    assert text[text.index("lineup") : text.index("index page")] == snapshot


def table_of(*plays: Play, rule: Play | None = None) -> Fronts:
    table = fronts(grouped(plays), rule, "free")
    assert table is not None
    return table


def test_looks_that_are_answered_alike_share_a_row(book: Book) -> None:
    table = run_page(book).fronts
    assert table is not None
    assert [row.looks for row in table.rows] == ["Even, Even Press", "Odd"]
    changed = replace(
        power(EVEN_PRESS),
        assignments=tuple(
            replace(a, job="on T.") if a.man == "RT" else a for a in power(EVEN_PRESS).assignments
        ),
    )
    assert [name for name, _ in grouped((power(EVEN), changed, power(ODD)))] == [
        "Even",
        "Even Press",
        "Odd",
    ]


def test_another_key_or_free_man_is_another_answer() -> None:
    free = replace(power(EVEN_PRESS), unblocked=("E",))
    assert len(grouped((power(EVEN), free))) == 2
    key = replace(power(EVEN_PRESS).keys[0], man="E")
    assert len(grouped((power(EVEN), replace(power(EVEN_PRESS), keys=(key,))))) == 2


def test_columns_stand_as_the_line_does() -> None:
    assert table_of(power(EVEN)).men == (
        ("LT", "backside tackle"),
        ("LG", "backside guard"),
        ("C", "centre"),
        ("RG", "playside guard"),
        ("RT", "playside tackle"),
    )
    left = table_of(replace(power(EVEN), toward=Side.LEFT))
    assert left.men[0] == ("LT", "playside tackle")


def test_a_receiver_has_a_column_only_where_the_front_changes_his_block() -> None:
    def stalks(play: Play, words: str) -> Play:
        hit = Hit("C", "stalk", Point(27, 7))
        return replace(
            play,
            assignments=tuple(
                replace(a, job=words, hits=(hit,)) if a.man == "Z" else a for a in play.assignments
            ),
        )

    same = table_of(stalks(power(EVEN), "Stalk."), stalks(power(ODD), "Stalk."))
    other = table_of(stalks(power(EVEN), "Stalk."), stalks(power(ODD), "Crack S."))
    assert [man for man, _ in same.men] == ["LT", "LG", "C", "RG", "RT"]
    assert other.men[-1] == ("Z", "stalk")


def test_the_rules_stand_over_the_answers_only_where_they_are_known() -> None:
    assert table_of(power(EVEN)).rules == ()
    rules = table_of(power(EVEN), rule=power(None)).rules
    assert rules[2] == Remark("C", "back")
    assert len(rules) == 5
    shared = replace(
        power(None), assignments=tuple(replace(a, job="Slide.") for a in power(None).assignments)
    )
    assert table_of(power(EVEN), rule=shared).rules == (Remark("LT LG C RG RT", "Slide"),)


def test_the_looks_worth_a_picture_are_those_least_alike() -> None:
    nearly = replace(
        power(EVEN_PRESS),
        assignments=tuple(
            replace(a, job="on T.") if a.man == "RT" else a for a in power(EVEN_PRESS).assignments
        ),
    )
    blocked = grouped((power(EVEN), nearly, power(ODD)))
    assert [name for name, _ in most_unlike(blocked, 1)] == ["Even", "Odd"]
    assert most_unlike(blocked, 5) == blocked


def test_men_of_one_job_share_a_row_on_a_run() -> None:
    play = power(EVEN)
    stalks = tuple(
        replace(a, role=f"wide {a.man}", job="Stalk.") if a.man in ("Z", "X") else a
        for a in play.assignments
    )
    season = replace(blocking_season(), plays=(replace(play, assignments=stalks),))
    rows = make_book(season, EDITION, ()).of(ConceptPage)[0].rows
    assert [(row.men, row.role) for row in rows] == [
        (("R",), "carrier"),
        (("Z X",), ""),
    ]


def test_columns_of_key_and_free_men_only_where_there_are_any() -> None:
    assert (table_of(power(EVEN)).key, table_of(power(EVEN)).free) == ("key", "")
    assert table_of(power(EVEN), power(ODD)).free == "free"
    assert table_of(replace(power(EVEN), keys=())).key == ""


def test_who_is_left_to_the_carrier_has_a_column_of_his_own() -> None:
    assert table_of(power(EVEN)).chasing == ""
    table = table_of(power(EVEN), replace(power(ODD), chasing=("F",)))
    assert (table.chasing, [row.chasing for row in table.rows]) == ("left to R", ["–", "[F]"])


def test_a_double_team_by_the_other_mans_rule_says_so() -> None:
    """The rules name a partner by his letter; a row with another one says whose rule it is."""
    places = {"C": "centre", "LG": "backside guard", "RG": "playside guard"}
    rules = {"C": "On or double with playside guard.", "LG": "Down or double with centre."}
    met = {"C": "Double N with LG, then M.", "LG": "Double N with C."}

    def told(play: Play, jobs: dict[str, str]) -> Play:
        return replace(play, assignments=tuple(
            replace(a, role=places.get(a.man, a.role), job=jobs.get(a.man, a.job))
            for a in play.assignments
        ))  # fmt: skip

    table = table_of(told(power(EVEN), met), rule=told(power(EVEN), rules))
    said = {label: note.words for note in table.rules for label in note.label.split()}
    assert (said["C"], said["LG"]) == ("On or double with RG", "Down or double with C")
    cells = dict(zip([man for man, _ in table.men], table.rows[0].blocks, strict=True))
    assert re.sub(r"[][]", "", cells["C"]) == "Double N with LG (his rule), then M"
    assert re.sub(r"[][]", "", cells["LG"]) == "Double N with C"


def test_the_views_of_a_run_are_no_calls(book: Book) -> None:
    (page,) = book.of(DressedPage)
    assert [(e.call, e.listed) for e in page.entries] == [
        ("Trips Tight Right Power Again", True),
        ("Trips Tight Right Power against Odd", False),
    ]
    assert [line.call for line in book.index.calls] == [
        "Trips Tight Right Power",
        "Trips Tight Right Power Again",
    ]


def test_the_key_is_named_with_his_letter(book: Book) -> None:
    (key,) = run_page(book).keys
    assert (key.described, key.man) == ("end man on line, backside", "[J]")
    assert [(n.label, n.words) for n in key.choices] == [
        ("give", "if he widens"),
        ("pull", "if he chases"),
    ]


def test_a_run_called_the_other_way_blocks_the_same() -> None:
    """Jobs name letters; called left the tackle's is LT's, and nothing has changed."""
    right = power(EVEN)
    swap = {"RT": "LT", "LT": "RT", "RG": "LG", "LG": "RG"}
    left = replace(
        right,
        toward=Side.LEFT,
        assignments=tuple(
            replace(
                a,
                man=swap.get(a.man, a.man),
                job=re.sub(r"\b[LR][TG]\b", lambda m: swap[m[0]], a.job),
            )
            for a in right.assignments
        ),
    )
    assert changes(left, right) == ()
    other = changes(power(ODD), right)
    assert ("playside tackle", "down [N]") in [(n.label, n.words) for n in other]


def with_block(label: str, *to: tuple[float, float]) -> Play:
    play = crossers()[0]
    path = Path(play.man(label).snap, tuple(Leg(Point(*p), 0.5) for p in to), Ending.BLOCK)
    return replace(
        play,
        assignments=tuple(
            replace(a, path=path if a.man == label else None) for a in play.assignments
        ),
    )


@pytest.mark.parametrize(
    ("label", "to", "cracks"),
    [
        ("Y", ((3.0, 3.0),), True),
        ("Y", ((6.0, 3.0),), False),
        ("Y", ((6.0, 8.0), (6.0, 4.0)), True),
        ("R", ((4.0, 1.0),), False),
    ],
    ids=["crack", "stalk", "peel back", "a back"],
)
def test_the_blindside_rule_stands_where_a_wide_man_comes_back_in(
    label: str, to: tuple[tuple[float, float], ...], cracks: bool
) -> None:
    season = replace(blocking_season(), blindside_block="blindside", crossing_contact="")
    assert (cautions((with_block(label, *to),), season) == ("blindside",)) is cracks


def test_the_low_block_rule_stands_where_a_man_pulls() -> None:
    season = replace(blocking_season(), low_block="low", crossing_contact="", blindside_block="")
    play = power(EVEN)
    still = replace(
        play,
        assignments=tuple(replace(a, hits=()) if a.man == "LG" else a for a in play.assignments),
    )
    assert abs(play.assignment("LG").path.end.x - play.man("LG").snap.x) < 3
    far = replace(
        play,
        assignments=tuple(
            replace(a, path=Path(Point(-1.3, 0), (Leg(Point(3, 4)),), Ending.BLOCK))
            if a.man == "LG"
            else a
            for a in play.assignments
        ),
    )
    assert cautions((far,), season) == ("low",)
    assert cautions((still,), season) == ()


@pytest.mark.parametrize(("past", "said"), [(4.0, True), (1.6, True), (1.4, False), (0.5, False)])
def test_a_block_past_the_line_on_a_pass_brings_its_rule(past: float, said: bool) -> None:
    """NFHS 7-5-10, NCAA 7-3-8b and the Canadian sheet on interference: not while it flies."""
    season = replace(blocking_season(), past_line="past", crossing_contact="", blindside_block="")
    assert (cautions((with_block("Y", (6.0, past)),), season) == ("past",)) is said


def test_the_chop_rule_stands_where_two_men_block_one() -> None:
    """NFHS 2-3-8: two teammates on one man, one of them low. One man alone makes no chop block."""
    season = replace(
        blocking_season(), low_block="", crossing_contact="", blindside_block="", chop_block="chop"
    )
    play = power(EVEN)
    assert cautions((play,), season) == ("chop",)
    apart: set[str] = set()
    alone = []
    for task in play.assignments:
        mine = {h.defender for h in task.hits}
        alone.append(replace(task, hits=()) if mine & apart else task)
        apart |= mine
    assert cautions((replace(play, assignments=tuple(alone)),), season) == ()


@pytest.mark.parametrize(
    ("at", "technique", "words"),
    [
        ((1.8, 0.8), "3", "3 technique, strong"),
        ((-0.5, 1.0), "1", "1 technique, weak"),
        ((0.1, 4.5), "", "over the ball, 4.5 deep"),
        ((9.9, 6.0), "", "over strong #3, 6 deep"),
        ((23.0, 7.2), "", "1 inside strong #2, 7 deep"),
        ((-10.5, 5.0), "", "1.5 outside weak #1, 5 deep"),
        ((-2.2, 4.5), "", "2 weak, 4.5 deep"),
    ],
)
def test_where_a_defender_lines_up(at: tuple[float, float], technique: str, words: str) -> None:
    level = Level.LINE if at[1] < 1.5 else Level.SECOND
    defender = Defender("D", Point(*at), level, technique, None, NOWHERE)
    assert place_words(defender, stands("Quads", EVEN)) == words


def test_a_books_pages_in_print_order(book: Book) -> None:
    assert [page.id for page in book.pages] == [
        "calls",
        "lineup",
        "concept-call-1",
        "dressed-call-1-all",
        "protection-1",
        "glance",
        "look-1",
    ]
    assert book.cover.about.startswith("0 concepts, 1 run, 1 protection, 1 look, 2 calls.")
