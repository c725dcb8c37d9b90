"""Lines of a look that hang on where its other men stand, as a coach says them at the board."""

from __future__ import annotations

from typing import cast

import pytest

from read.newcomers import written
from stemline.playbook.look_definitions import AtTechnique


@pytest.mark.parametrize(
    ("line", "does"),
    [
        ("corners cover flat", {"C": "flat, strong", "B": "flat, weak"}),
        ("linebackers cover hook", {"M": "hook, strong", "W": "hook, weak"}),
        ("M, W take the backs", {"M": "back", "W": "second back"}),
        ("M blitzes", {"M": "A"}),  # a linebacker in 10 has the A gap
        ("W blitzes", {"W": "B"}),
        ("T blitzes", {"T": "B"}),
        ("S blitzes", {"S": "contain"}),  # he stands over a slot: nobody is outside of him
    ],
)
def test_a_line_is_for_the_men_who_stand_so(line: str, does: dict[str, str]) -> None:
    made = written("look", line)
    assert made.book is not None, made.definitions
    look = made.book.looks["tried"]
    for man, duty in does.items():
        (said,) = look.duties[man]
        assert said.value.words == (duty,), man


def test_a_blitz_of_who_is_deep_over_the_field_is_asked_its_gap() -> None:
    (found,) = (d for d in written("look", "F blitzes").definitions if d.is_error)
    assert found.code == "E404"


@pytest.mark.parametrize(
    ("front", "number"), [("0", "00"), ("1, weak", "10"), ("3, strong", "30"), ("5, weak", "50")]
)
def test_who_is_stacked_stands_as_the_man_before_him(front: str, number: str) -> None:
    made = written("look", f"T in {front}", "W stacks behind T")
    assert made.book is not None, made.definitions
    (said,) = made.book.looks["tried"].stands["W"]
    stand = said.value[0]
    assert cast(AtTechnique, stand.where).name == number
    wanted = front.partition(", ")[2]
    assert (stand.side.value if stand.side else "") == wanted
