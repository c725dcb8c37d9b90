"""Who looks for a rusher and goes out afterwards is read however it is said.

What the sentences mean is common practice; no published source.
"""

from __future__ import annotations

import pytest

from syntax.said_lines import read

SAID = {
    "concept": (
        ("back checks edge then releases", "back runs check edge"),
        ("back checks scan then releases over the ball", "back runs check over ball"),
        ("back blocks edge, then swings", "back runs check edge then swing"),
        ("back blocks the edge then swings out to the weak side",
         "back runs check edge then swing weak"),
        ("back checks the edge, then runs a wheel", "back runs check edge then wheel"),
        ("back blocks check, swing", "back runs check then swing"),
        ("R checks then swing weak", "R runs check then swing weak"),
        ("back checks, then goes to the flat", "back runs check then flat"),
        ("back scans inside out then runs flat weak", "back runs check then flat weak"),
        ("back checks near linebacker then releases", "back runs check near linebacker"),
        ("Y blocks edge, then releases to flat", "Y runs check edge then flat"),
        ("Y checks his man, then releases to the flat", "Y runs check then flat"),
        ("tight end blocks the weak edge, then slips out", "tight end runs check weak edge"),
        ("each end blocks edge, then releases to flat", "each end runs check edge then flat"),
        ("centre blocks one count, then releases over the ball", "centre runs check over ball"),
        ("back, fullback check edge then release", "back, fullback runs check edge"),
        ("Y blocks then leaks", "Y runs leak"),
    ),
    "protection": (
        ("back checks edge then releases", "back blocks check edge then release"),
        ("back checks and releases", "back blocks check then release"),
        ("back checks and releases when empty", "back blocks check then release when empty"),
        ("tight end checks edge then flat", "tight end blocks check edge then flat"),
        ("Y checks edge, then slips to the flat when 2x2",
         "Y blocks check edge then flat when 2x2"),
        ("tight end blocks the weak edge, then slips out",
         "tight end blocks check weak edge then release"),
        ("back checks near linebacker then releases",
         "back blocks check near linebacker then release"),
    ),
}  # fmt: skip


@pytest.mark.parametrize("kind", SAID)
def test_a_check_and_release_is_read_as_it_is_said(kind: str) -> None:
    for said, line in SAID[kind]:
        assert read(kind, said) == line, said
        assert read(kind, line) == line, line


def test_a_block_that_is_no_check_is_left_as_it_is() -> None:
    for line in ("back blocks inside out", "playside guard blocks double with tackle then far man",
                 "back blocks chip", "helper blocks scan"):  # fmt: skip
        assert read("concept", line) == line
