"""The paragraph that closes a check: concepts without an answer to a look, few lines, or none."""

from __future__ import annotations

from collections.abc import Sequence

from stemline.analysis.answer_lines import answer_lines
from stemline.football.timing.answers import Answer, Faced

OPEN = Answer(nearly=True, hot=False, rusher=None)
HOT = Answer(nearly=False, hot=True, rusher=1.9)
BARE = Answer(nearly=False, hot=False, rusher=None)
RUSHED = Answer(nearly=False, hot=False, rusher=1.73)


def faced(concept: str, look: str, *answers: Answer) -> list[Faced]:
    return [Faced(concept, f"{concept} {n}", look, a) for n, a in enumerate(answers)]


def lines(*rows: Sequence[Faced]) -> list[str]:
    return list(answer_lines(one for row in rows for one in row))


def test_with_an_answer_to_everything_nothing_is_said() -> None:
    assert lines() == []
    assert lines(faced("Flood", "Zero", OPEN, HOT), faced("Flood", "Bear", OPEN, OPEN)) == []


def test_a_concept_without_an_answer_is_one_line_with_the_rusher_who_comes_first() -> None:
    late = Answer(nearly=False, hot=False, rusher=2.4)
    said = lines(faced("Flood", "Zero", late, RUSHED), faced("Flood", "Bear", BARE, BARE))
    assert said == [
        "no answer by the clock (planning figures): nobody open or nearly, no hot throw in time",
        "    Flood against Zero, Bear, a free rusher at 1.7 s",
    ]


def test_a_part_of_its_calls_is_said_with_how_many() -> None:
    said = lines(faced("Flood", "Zero", BARE, BARE, OPEN), faced("Flood", "Bear", BARE, BARE, BARE))
    assert said[1:] == ["    Flood against Zero, Bear in 2 to 3 of 3 calls"]
    assert lines(faced("Flood", "Zero", BARE, BARE, OPEN))[1:] == [
        "    Flood against Zero in 2 of 3 calls"
    ]


def test_of_looks_that_not_every_set_is_played_against_most_calls_and_the_first_rusher_count() -> (
    None
):
    late = Answer(nearly=False, hot=False, rusher=2.4)
    said = lines(faced("Flood", "Zero", late, BARE), faced("Flood", "Bear", RUSHED))
    assert said[1:] == ["    Flood against Zero, Bear in 1 to 2 of 2 calls, a free rusher at 1.7 s"]


def test_less_than_half_of_its_calls_is_the_sets_and_not_the_concepts() -> None:
    assert lines(faced("Flood", "Zero", BARE, OPEN, OPEN)) == []
    assert len(lines(faced("Flood", "Zero", BARE, OPEN))) == 2


def test_many_looks_and_many_concepts_are_counted() -> None:
    looks = [faced("Flood", f"L{n}", BARE) for n in range(5)]
    assert lines(*looks)[1] == "    Flood against L0, L1, L2 and 2 more looks"
    assert lines(*looks[:-1])[1].endswith(" and 1 more look")
    many = [faced(f"C{n}", "Zero", BARE) for n in range(9)]
    assert lines(*many)[-1] == "    and 1 more concept"
    assert len(lines(*many)) == 10
    assert len(lines(*many[:-1])) == 9


def test_those_with_most_to_answer_come_first() -> None:
    said = lines(faced("A", "Zero", BARE), faced("B", "Zero", BARE, BARE), faced("C", "Zero", BARE))
    assert [line.split()[0] for line in said[1:]] == ["B", "A", "C"]
