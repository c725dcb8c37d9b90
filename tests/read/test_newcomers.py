"""Lines that somebody writes who has not read the reference, and what he is told.

Each is judged by three questions: where am I, what is wrong, what shall I type? `good` answers all
three; `fair` leaves the last to a sample of another line or to a list; `poor` sends him somewhere
else. A judgement is a person's, made from the print-out beside it in the snapshot: who changes a
message reads it again. Nine of ten must be good.
"""

from __future__ import annotations

import pytest
from syrupy.assertion import SnapshotAssertion

from read.newcomers import FILE, written
from stemline.diagnostics.render import render

GOOD, FAIR, POOR = "good", "fair", "poor"

LINES = [
    ("formation", "X split out right", GOOD),
    ("formation", "Y at tight end", GOOD),
    ("formation", "Z at slot", GOOD),
    ("formation", "B at I, 7 deep", GOOD),
    ("formation", "Q under centre", GOOD),
    ("formation", "Q at shotgun", GOOD),
    ("formation", "trips right", GOOD),
    ("formation", "X: call, numbers", FAIR),
    ("concept", "X runs slant", GOOD),
    ("concept", "Z runs a go", GOOD),
    ("concept", "mate runs slatn when press", GOOD),
    ("concept", "#1 runs slant", GOOD),
    ("concept", "inside receiver runs seam", GOOD),
    ("concept", "each #1 run go", GOOD),
    ("concept", "everyone else runs vertical", GOOD),
    ("concept", "weak #1 runs 10 yard out", GOOD),
    ("concept", "drop 5", GOOD),
    ("concept", "5 step drop", GOOD),
    ("concept", "read mate, out man", GOOD),
    ("concept", "read 1 mate 2 out man", FAIR),
    ("concept", "check down to back", GOOD),
    ("concept", "if press out man runs fade", GOOD),
    ("concept", "out man runs fade when cover 2", GOOD),
    ("concept", "protection is six", GOOD),
    ("concept", "protect man", FAIR),
    ("concept", "motion man runns go", GOOD),
    ("run", "ball carrier is back", GOOD),
    ("run", "carrier runs A gap", GOOD),
    ("run", "carrier aims strong B gap", GOOD),
    ("run", "line zone blocks", GOOD),
    ("run", "guard pulls", GOOD),
    ("run", "backside guard pulls and kicks", GOOD),
    ("run", "fullback leads through B", GOOD),
    ("run", "toward the tight end", GOOD),
    ("run", "QB reads end", GOOD),
    ("tag", "keep read", GOOD),
    ("tag", "flat is blocking", GOOD),
    ("tag", "out and up", FAIR),
    ("dress", "in Doubles Right", GOOD),
    ("dress", "in Doubles, Trips, with plain", GOOD),
    ("dress", "in Doubles with Now or Never", GOOD),
    ("dress", "in every formation", GOOD),
    ("dress", "to both sides", GOOD),
    ("dress", "with no tag", GOOD),
    ("dress", "except Trips", GOOD),
    ("dress", "motion jet in Trips", GOOD),
    ("dress", "against cover 3", GOOD),
    ("look", "4-3 front", GOOD),
    ("look", "M at mike", FAIR),
    ("look", "M at 4 yards deep over guard", GOOD),
    ("look", "C covers flat", GOOD),
    ("look", "C man on #1", GOOD),
    ("look", "F free", GOOD),
    ("look", "M blitzes A gap", GOOD),
    ("look", "E at 5 technique, strong", GOOD),
    ("motion", "H goes in motion left", GOOD),
    ("motion", "H moves to 2 outside tackle", GOOD),
    ("motion", "snap when set", GOOD),
    ("week", "opener Doubles Right Stick", GOOD),
    ("week", "first down", GOOD),
    ("week", "3rd and long", GOOD),
    ("week", "practice Tuesday at 4pm", GOOD),
    ("protection", "RB blocks blitz", GOOD),
    ("protection", "slide left", GOOD),
    ("personnel", "X wide receiver", GOOD),
    ("playbook", "team Larch Bay", GOOD),
    ("playbook", "code 11 man", GOOD),
    # Written after the table of answers, and not for it.
    ("formation", "R at behind Q", GOOD),
    ("formation", "wing at outside Y", GOOD),
    ("concept", "mate and out man runs go", GOOD),
    ("concept", "back blocks protection", FAIR),
    ("concept", "QB throws to mate", GOOD),
    ("concept", "read defender over mate", FAIR),
    ("run", "QB hands to FB", GOOD),
    ("run", "trap the nose", GOOD),
    ("run", "backside tackle pull", GOOD),
    ("run", "everyone blocks down", GOOD),
    ("tag", "X fade", GOOD),
    ("dress", "formations Doubles, Trips", GOOD),
    ("dress", "run it from Trips", GOOD),
    ("look", "three deep", GOOD),
    ("look", "FS at 12 deep", GOOD),
    ("look", "S at box", FAIR),
    ("motion", "Z moves in 3", GOOD),
    ("protection", "man block", GOOD),
    ("week", "red zone", GOOD),
    ("week", "vs Ember Ridge", GOOD),
    ("personnel", "5 linemen", GOOD),
]


def printed(kind: str, line: str) -> str:
    session = written(kind, line)
    found = [d for d in session.definitions if d.span.source == FILE and d.is_error]
    texts = {tree.source.name: tree.source for tree, _ in session.trees}
    return render(found, texts)


@pytest.mark.parametrize(("kind", "line", "judged"), LINES)
def test_what_a_newcomer_is_told(
    kind: str, line: str, judged: str, snapshot: SnapshotAssertion
) -> None:
    told = printed(kind, line)
    assert line in told, "where am I"
    assert "help: " in told or "nearest: " in told, "what shall I type"
    assert f"{judged}\n{told}" == snapshot


def test_nine_of_ten_are_good() -> None:
    assert len(LINES) >= 60
    assert len({(kind, line) for kind, line, _ in LINES}) == len(LINES)
    assert 10 * sum(judged == GOOD for *_, judged in LINES) >= 9 * len(LINES)
