"""What ends an order of reads: `run`, `throw away`, or one or the other."""

from __future__ import annotations

import pytest

from resolve.texts import CONCEPT, THREE_TWO, TWELVE, codes, compiled, dress, play
from stemline.book.content.quarterback_strip import strip
from stemline.describe.changes import order_changes
from stemline.describe.spoken_play import describe
from stemline.football.play import Play
from stemline.session import Session

READ = "read flat on quick > near with dig on 3 > top on reset > far on reset"
ENDED = CONCEPT.replace(READ, f"{READ} > run or throw away")
PLAIN, TAGGED = "Three Two Right Crossers", "Three Two Right Crossers Slow"


def tagging(*lines: str) -> Session:
    tag = "\n    ".join(["tag Slow for Crossers", *lines])
    return compiled(TWELVE, THREE_TWO, ENDED, tag, dress("Three Two", "with plain, Slow"))


def made(concept: str = ENDED) -> Play:
    return play(compiled(TWELVE, THREE_TWO, concept, dress("Three Two")), PLAIN)


def test_it_is_no_look_and_is_told_behind_the_looks() -> None:
    ended, open_ended = made(), made(CONCEPT)
    assert (ended.last, open_ended.last) == (("run", "throw away"), ())
    assert [r.target for r in ended.reads] == [r.target for r in open_ended.reads]
    assert "4 far (W) on reset, then run or throw it away." in describe(ended)
    told = strip(ended)
    assert told is not None
    assert [n.words for n in told.notes if n.label == "nobody open"] == ["run or throw it away"]


def test_it_changes_no_line_of_the_picture() -> None:
    ended, open_ended = made(), made(CONCEPT)
    assert [a.path for a in ended.assignments] == [a.path for a in open_ended.assignments]
    assert order_changes(ended, open_ended) == (
        ("After the reads was", "", "run or throw it away"),
    )


def test_a_tag_s_order_takes_its_place_and_rest_brings_it_along() -> None:
    assert play(tagging("read flat on quick > far on reset"), TAGGED).last == ()
    assert play(tagging("weak #1 runs post", "read flat on quick > rest"), TAGGED).last == (
        "run",
        "throw away",
    )
    own = tagging("weak #1 runs post", "read flat on quick > rest > throw away")
    assert play(own, TAGGED).last == ("throw away",)


def test_a_tag_that_keeps_the_read_keeps_how_it_ends() -> None:
    assert "E661" in codes(tagging(READ, "keeps read"))
    assert "E661" not in codes(tagging(f"{READ} > run or throw away", "keeps read"))


@pytest.mark.parametrize(
    "order",
    [
        "read flat > run > near",
        "read run",
        "read flat > throw away on reset",
        "pressure flat > run",
    ],
)
def test_it_stands_last_and_without_a_foot(order: str) -> None:
    assert codes(tagging(order)).count("E474") == 1


def test_a_role_of_that_name_is_the_role() -> None:
    roles = ENDED.replace("    flat is back", "    run is back").replace("flat ", "run ")
    roles = roles.replace(" > run or throw away", " > throw away")
    result = made(roles)
    assert (result.reads[0].target, result.last) == ("run", ("throw away",))


def test_a_misspelt_end_is_told_by_its_own_words() -> None:
    wrong = compiled(
        TWELVE, THREE_TWO, ENDED.replace("run or throw away", "thow away"), dress("Three Two")
    )
    (found,) = [d for d in wrong.diagnostics if d.code == "E464"]
    assert "throw away" in found.nearest
