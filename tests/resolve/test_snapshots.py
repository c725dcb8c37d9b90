"""Two whole plays written out, one a code: a change of any yard shows."""

from __future__ import annotations

from syrupy.assertion import SnapshotAssertion

from resolve.compact import write
from resolve.texts import CROSSERS, ELEVEN, QUADS, TREY, TWELVE, dress, play, sound
from stemline.football.field import BallSpot


def test_quads_with_twelve_men(snapshot: SnapshotAssertion) -> None:
    result = sound(TWELVE, QUADS, CROSSERS, dress("Quads motion Tuck", "with Wheel + Return"))
    assert write(play(result, "Quads Left Tuck Crossers Wheel + Return")) == snapshot


def test_trey_with_eleven_men_from_a_hash(snapshot: SnapshotAssertion) -> None:
    result = sound(ELEVEN, TREY, CROSSERS, dress("Trey"))
    assert write(play(result, "Trey Right Crossers", BallSpot.LEFT_HASH)) == snapshot
