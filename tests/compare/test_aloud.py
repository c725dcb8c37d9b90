"""What has become of a line, as a coach says it."""

from __future__ import annotations

import pytest

from stemline.compare.aloud import dress_words, lines_words
from stemline.compare.definitions import Definition, definitions
from stemline.compare.line_changes import line_changes
from stemline.source import Source
from stemline.syntax.parser import parse


def _one(text: str) -> Definition:
    (found,) = definitions([parse(Source("a.play", text))[0]]).values()
    return found


def _said(head: str, old: str, new: str) -> list[str]:
    sides = [
        _one("\n".join([head, *(f"    {line}" for line in text.split("/"))]) + "\n")
        for text in (old, new)
    ]
    words = dress_words if sides[0].kind == "dress" else lines_words
    return [line.text.strip() for line in words(line_changes(sides[0].lines, sides[1].lines, {}))]


@pytest.mark.parametrize(
    ("head", "old", "new", "said"),
    [
        ("concept A", "over runs cross 5", "over runs cross 6",
         ["over runs the cross at 6 instead of 5"]),
        ("concept A", "over runs dig 12 over ball", "over runs post 12",
         ["over runs the post at 12 instead of the dig at 12 over the ball"]),
        ("concept A", "a runs dig 9/b runs dig 9", "a runs dig 8/b runs dig 8",
         ["a and b run the dig at 8 instead of 9"]),
        ("concept A", "read a on 3 > b on hitch", "read b on 3 > a on hitch",
         ["we now read b on 3, then a on the hitch", "before: a on 3, then b on the hitch"]),
        ("concept A", "pressure a on 3", "pressure b on 3",
         ["under pressure we now look b on 3", "before: a on 3"]),
        ("concept A", 'a says "In."', 'a says "Out."', ['we now tell a: "Out."', 'before: "In."']),
        ("protection P", "line blocks slide", "line blocks reach",
         ["the line now reaches instead of sliding"]),
        ("protection P", "line blocks man", "line blocks slide",
         ["the line now slides instead of blocking man"]),
        ("dress A", "in Trey/with Wheel/to right", "in Trey/in Quads motion Tuck/to right, left",
         ["now also from Quads with Tuck", "now also to the left", "no longer with Wheel"]),
        ("dress A", "in Trey/never in Trey to left", "in Trey",
         ["no longer left out: Trey to the left"]),
        ("dress A", "in Trey/against man, off", "in Trey/against zone",
         ["now against zone instead of man, off"]),
    ],
)  # fmt: skip
def test_a_line_is_said_as_a_coach_says_it(head: str, old: str, new: str, said: list[str]) -> None:
    assert _said(head, old, new) == said
