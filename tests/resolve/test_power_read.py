"""A power on which the end is read: the puller fits inside of him, wherever the ball may go.
Common practice, no published source."""

from __future__ import annotations

import pytest

from resolve.test_checks_then_goes import TIGHT
from resolve.test_protections import against
from resolve.test_sealed_ends import LOOK
from resolve.texts import ELEVEN, codes, compiled
from stemline.geometry.paths import crossing

RUN = """
run Read
    carrier is back
    carrier aims outside the end
    playside end blocks down or climb
    playside tackle blocks down or double with guard then far linebacker
    playside guard blocks down or on or double with tackle then far linebacker
    centre blocks back or on
    backside guard blocks wrap to near linebacker
    backside tackle blocks hinge
    everyone else blocks stalk
    key {key}
    give if he squeezes
    pull if he widens
    {keeps}

dress Read
    in Tight
    against Front
"""


def wrap_at(keeps: str, key: str = "end man on line", man: str = "M") -> tuple[float, float]:
    """Where the puller goes through the line, and where the end stands."""
    text = RUN.format(key=key, keeps=keeps or 'say "Ride him."')
    formation = TIGHT.partition("run Plunge")[0]
    result = compiled(ELEVEN, formation, LOOK.format(edge="5"), text)
    assert not [d for d in result.diagnostics if d.is_error], codes(result)
    play, _ = against(result, "Front")
    path = play.assignment("LG").path
    assert path is not None and play.defence is not None
    assert [hit.defender for hit in play.assignment("LG").hits] == [man]
    at = crossing(path, 0.0)
    assert at is not None
    return at, play.defence.defender("E").at.x


@pytest.mark.parametrize(
    "keeps", ["", "quarterback aims playside B", "quarterback aims backside A"]
)
def test_the_puller_turns_up_inside_of_the_man_who_is_read(keeps: str) -> None:
    wrap, end = wrap_at(keeps)
    assert 0 < wrap < end - 0.5


def test_where_the_quarterback_keeps_it_is_where_he_turns_up() -> None:
    wrap, _ = wrap_at("quarterback aims playside A")
    assert wrap == pytest.approx(0.65, abs=0.4)


def test_with_the_read_elsewhere_he_goes_around() -> None:
    wrap, end = wrap_at("", "backside end man on line", "S")
    assert wrap > end
