"""Lines that somebody writes who has not read the reference, and what he is told.

Each is judged by three questions: where am I, what is wrong, what shall I type? `good` answers all
three; `fair` leaves the last to a sample of another line or to a list; `poor` sends him somewhere
else. A judgement is a person's, made from the print-out beside it in the snapshot: who changes a
message reads it again. Nine of ten must be good.
"""

from __future__ import annotations

import re

import pytest
from syrupy.assertion import SnapshotAssertion
from together import together

from read.newcomers import FILE, written
from read.test_own_words import FORMS
from stemline.diagnostics.render import render

GOOD, FAIR, POOR = "good", "fair", "poor"

LINES = [
    ("formation", "X split out right", GOOD),
    ("formation", "Y at tight end", GOOD),
    ("formation", "Z at slot", GOOD),
    ("formation", "B at I, 7 deep", GOOD),
    ("formation", "Q at shotgun", GOOD),
    ("formation", "trips right", GOOD),
    ("formation", "X: call, numbers", FAIR),
    ("concept", "V runs slant", GOOD),
    ("concept", "mate runs slatn when press", GOOD),
    ("concept", "#1 runs slant", GOOD),
    ("concept", "inside receiver runs seam", GOOD),
    ("concept", "weak #1 runs 10 yard out", GOOD),
    ("concept", "drop 5", GOOD),
    ("concept", "5 step drop", GOOD),
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
    ("run", "fullback leads through B", GOOD),
    ("run", "toward the tight end", GOOD),
    ("run", "QB reads end", GOOD),
    ("tag", "keep read", GOOD),
    ("tag", "flat is blocking", GOOD),
    ("tag", "out and up", FAIR),
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
    ("look", "C man on #1", GOOD),
    ("look", "extends Over Three", GOOD),
    ("look", "S blitzes when 2x2", GOOD),
    ("concept", "mate blocks then runs hook 5", GOOD),
    ("look", "F free", GOOD),
    ("look", "E at 5 technique, strong", GOOD),
    ("motion", "H goes in motion left", GOOD),
    ("motion", "H moves to 2 outside tackle", GOOD),
    ("motion", "snap when set", GOOD),
    ("week", "opener Doubles Right Stick", GOOD),
    ("week", "first down", GOOD),
    ("week", "3rd and long", GOOD),
    ("week", "practice Tuesday at 4pm", GOOD),
    ("protection", "RB blocks blitz", GOOD),
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
    ("run", "trap the nose", GOOD),
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
    # As coaches of six men, of youth and of a wing set write: before there was a row for them one
    # in four was good.
    ("formation", "center at ball, on line", GOOD),
    ("formation", "ends at 3 yards from ball", GOOD),
    ("formation", "Y at right, 4 yards out", GOOD),
    ("formation", "Q at 5 yards back", GOOD),
    ("formation", "spread", GOOD),
    ("formation", "everybody tight", GOOD),
    ("formation", "X by the sideline", GOOD),
    ("formation", "Q behind center", GOOD),
    ("formation", "wingback right of tight end", GOOD),
    ("formation", "A wing left", GOOD),
    ("formation", "foot to foot splits", GOOD),
    ("formation", "splits 0", GOOD),
    ("concept", "center goes out for a pass", GOOD),
    ("concept", "C runs hook", GOOD),
    ("concept", "left end runs out", GOOD),
    ("concept", "all go deep", GOOD),
    ("concept", "pitch then pass", GOOD),
    ("concept", "quarterback throws to open man", GOOD),
    ("concept", "ends run crossing routes", GOOD),
    ("concept", "X runs straight", GOOD),
    ("concept", "run to the corner", GOOD),
    ("concept", "buttonhook", GOOD),
    ("concept", "QB rolls out and throws", GOOD),
    ("concept", "play action off trap", GOOD),
    ("concept", "wing flat", GOOD),
    ("concept", "waggle right", GOOD),
    ("run", "QB keeps", GOOD),
    ("run", "direct snap to back", GOOD),
    ("run", "spinner", FAIR),
    ("run", "belly", FAIR),
    ("run", "toss right", GOOD),
    ("run", "back sweeps right", GOOD),
    ("run", "fullback dives", GOOD),
    ("run", "ends block in", GOOD),
    ("run", "exchange behind line", GOOD),
    ("run", "run right behind the guard", GOOD),
    ("run", "run to the 2 hole", GOOD),
    ("run", "24 trap", GOOD),
    ("run", "everybody block your man", GOOD),
    ("run", "handoff to fullback", GOOD),
    ("run", "wing reverse", FAIR),
    ("run", "halfback counter", GOOD),
    ("run", "guard traps first man past center", GOOD),
    ("run", "line blocks gap", GOOD),
    ("run", "backside end cutoff", GOOD),
    ("run", "wing goes in motion", GOOD),
    ("look", "everyone man to man", GOOD),
    ("look", "everybody rush", GOOD),
    ("look", "linebackers 4 yards back", GOOD),
    ("look", "2-1-3 defense", GOOD),
    ("dress", "both formations", GOOD),
    ("week", "first play Doubles Right Stick", GOOD),
    ("motion", "wing motions behind fullback", GOOD),
    ("motion", "A jets", GOOD),
    ("protection", "everybody stays in", GOOD),
    # Written after those rows, and not for them; those that no row knew gave the last rows of all.
    ("concept", "end goes out five yards", GOOD),
    ("concept", "center runs 5 and out", GOOD),
    ("concept", "back out of the backfield", GOOD),
    ("concept", "hail mary", POOR),
    ("run", "QB hands off and blocks", GOOD),
    ("run", "fullback carries up the middle", GOOD),
    ("run", "end around", GOOD),
    ("run", "pull the guard", GOOD),
    ("run", "line blocks left", GOOD),
    ("run", "R follows F", GOOD),
    ("run", "quarterback draw", GOOD),
    ("run", "blocking back leads", GOOD),
    ("run", "tackle trap", GOOD),
    ("formation", "wing on the right", FAIR),
    ("formation", "backs split", GOOD),
    ("formation", "X wide left", FAIR),
    ("formation", "T formation", GOOD),
    ("look", "6-2", GOOD),
    ("look", "safety deep middle", GOOD),
    ("look", "ends contain", GOOD),
    ("dress", "flip it", GOOD),
    ("dress", "use Doubles", GOOD),
    ("motion", "Z in motion to the left", GOOD),
    # A wrong order, a typo, a man who gets no ball.
    ("concept", "swing back", GOOD),
    ("concept", "alert Q", GOOD),
    ("concept", "mate runs 10 yd out", GOOD),
    ("run", "toward K", GOOD),
    ("look", "M rushes A and B, strong", GOOD),
    ("look", "F covers thrid, middle", GOOD),
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


@together(("kind", "line"), [(kind, line) for kind, line, _ in LINES[82:]])
def test_what_he_shall_type_is_read(kind: str, line: str) -> None:
    """Each line of an answer, or all that belong together; one for another block or code apart."""
    answer = printed(kind, line).partition("help: ")[2]
    typed = [t for t in re.findall(r"`([^`]+)`", answer) if t.split()[0] not in _ELSEWHERE]
    for lines in [typed] if " and " in answer else [[each] for each in typed]:
        found = [d for d in written(kind, *lines).definitions if d.span.source == FILE]
        assert not [d for d in found if d.is_error and FORMS.fullmatch(d.code)], lines


_ELSEWHERE = ("motion", "run", "QT", "protect", "A", "centre", "runs", "blocks", "join", "openers",
              "Doubles")  # fmt: skip
"""How a line begins that is for another block, or for six men."""


def test_nine_of_ten_are_good() -> None:
    assert len(LINES) >= 160
    assert len({(kind, line) for kind, line, _ in LINES}) == len(LINES)
    assert 10 * sum(judged == GOOD for *_, judged in LINES) >= 9 * len(LINES)
