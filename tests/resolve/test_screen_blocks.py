"""Whom the receivers of a screen block: the man whom the text names, else who is near the throw."""

from __future__ import annotations

import pytest
from lineup.look_texts import FRONT

from resolve.texts import THREE_TWO, TWELVE, compiled, dress, said
from stemline.football.field import BallSpot

PASS = """
concept Tunnel
    tunnel is strong #1
    tunnel runs tunnel
    kick is strong #2
    kick blocks {}
    everyone else runs go
    {}
    read tunnel on catch
"""


SLIDE, RUN = "protect five slide", "line blocks reach or climb"


@pytest.mark.parametrize(
    ("line", "told", "taken"),
    [
        (SLIDE, "stalk corner", ["C"]),
        (SLIDE, "stalk safety", ["F"]),
        (SLIDE, "stalk", []),  # as he is told, without a man
        (RUN, "stalk corner", ["C"]),
        (RUN, "stalk safety", ["F"]),
        (RUN, "stalk", ["H"]),
    ],
)
def test_a_screen_blocks_for_its_throw(line: str, told: str, taken: list[str]) -> None:
    session = compiled(
        TWELVE, THREE_TWO, FRONT, PASS.format(told, line), dress("Three Two", concept="Tunnel")
    )
    assert session.season is not None, said(session.diagnostics)
    order = session.calls.by_name["Three Two Right Tunnel"]
    play, _ = session.play(order, BallSpot.MIDDLE, look_key="front")
    assert play is not None
    kick = next(a for a in play.assignments if a.role == "kick")
    assert [hit.defender for hit in kick.hits] == taken and kick.path is not None
    at = play.man(kick.man).snap
    for hit in kick.hits:
        assert kick.path.end.distance(hit.at) < 1.5 < kick.path.end.distance(at)
    bare, _ = session.play(order, BallSpot.MIDDLE)
    assert bare is not None and bare.assignment(kick.man).path is not None
