"""Four deep: whom each of them takes, and what he does who has nobody.

The safety has the second man past five yards wherever he goes; whose man breaks before that looks
to rob the first ("Quarters coverage: alignment and assignments", a national youth sports site).
The yards are common practice, no published source.
"""

from __future__ import annotations

import numpy as np
import pytest
from numpy.typing import NDArray

from football.test_zone_coverage import CALL, TIMES, stands, zone
from football.timed import line
from stemline.football.defenders import Defender, DutyKind
from stemline.football.timing.levels import HIGH_SCHOOL
from stemline.football.timing.quarters import CARRIES, OVER_HIM, ROBS, matched
from stemline.football.timing.running import Array, Timeline
from stemline.football.timing.zone_coverage import EARLY, TURNS
from stemline.geometry.paths import Point


def quarter(x: float, depth: float = 15.0) -> Defender:
    return zone(DutyKind.QUARTER, Point(x, depth), Point(x, 8.0))


def four(*men: Defender, **receivers: Timeline) -> tuple[Array, NDArray[np.bool_]]:
    """Where men in quarters are, and when each has a man."""
    places = {label: man.where(TIMES) for label, man in receivers.items()}
    return matched(men, CALL, places, TIMES, HIGH_SCHOOL)


GO = ((22.0, 0.0), (22.0, 30.0))
POST = ((22.0, 0.0), (22.0, 10.0), (6.0, 30.0))
CORNER = ((14.0, 0.0), (14.0, 12.0), (28.0, 28.0))


def at(time: float) -> int:
    return round(time / 0.1)


@pytest.mark.parametrize("side", [-1, 1])
def test_he_goes_with_his_man_wherever_he_goes(side: int) -> None:
    post = line(*((side * x, y) for x, y in POST))
    (place,), (has,) = four(quarter(side * 22), Z=post)
    man = post.where(TIMES)
    assert has[at(3.0) :].all() and not has[: at(1.0)].any()
    assert np.abs(place[at(4.0), 0] - man[at(4.0), 0]) < 3.0
    assert abs(man[at(4.0), 0] - side * 22) > 8.0, "far off his landmark"
    assert (place[at(2.5) : at(4.0), 1] > man[at(2.5) : at(4.0), 1]).all(), "he stays on top"


def test_two_who_cross_are_followed_and_not_passed_over() -> None:
    """The scissors: the corner goes in with the post, the safety out with the flag."""
    (corner, safety), has = four(quarter(22), quarter(8), Z=line(*POST), S=line(*CORNER))
    assert has[:, -1].all()
    assert corner[at(4.0), 0] < safety[at(4.0), 0]


def test_who_has_a_short_man_has_nobody_and_helps_on_the_one_beside_him() -> None:
    (_, safety), has = four(quarter(18), quarter(8), Z=stands(18, 20), S=stands(8, 5))
    assert not has[1].any()
    assert safety[-1, 0] == pytest.approx(8 + ROBS)


def test_a_second_man_whom_nobody_has_he_stays_between() -> None:
    (place,), (has,) = four(quarter(8), a=stands(4, 14), b=stands(11, 14))
    assert place[-1] == pytest.approx([7.5, 14 + OVER_HIM])
    assert not has.any(), "his eyes are on the ball: he has to break on either"


def test_a_man_beyond_his_quarter_is_not_his() -> None:
    _, has = four(quarter(8), Z=stands(8 + CARRIES + 1, 20))
    assert not has.any()


def test_a_break_is_news_to_a_deep_man() -> None:
    """He goes on as his man went for as long as it takes to see the break and to turn out of his
    pedal, 0.2 s on top (Domenic, McCabe and Earp, of college backs)."""
    (straight,), _ = four(quarter(22), Z=line(*GO))
    (turned,), _ = four(quarter(22), Z=line(*POST))
    gone = float(np.interp(10.0, line(*GO).where(TIMES)[:, 1], TIMES))
    apart = TIMES[np.flatnonzero(np.hypot(*(straight - turned).T) > 0.05)[0]]
    assert gone + HIGH_SCHOOL.choose.value + TURNS - 0.2 <= apart
    assert apart <= gone + HIGH_SCHOOL.choose.value + TURNS + EARLY
