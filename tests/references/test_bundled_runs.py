"""Calls of the bundled playbooks against their own looks, as a line coach reads them.

The rules are those of the texts named in `line_answers`; the cells are worked through by hand for
the look as it stands: common practice, no published source, where no other source stands.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest
from together import together

from references.test_line_answers import agrees, taken
from stemline.football.defence.fronts import front_of
from stemline.football.defenders import Level
from stemline.football.play import Kind, Play
from stemline.geometry.paths import crossing
from stemline.session import Session
from stemline.source import Source

PLAYBOOKS = Path(__file__).parents[2] / "playbooks"
HERONS, LANTERNS = "saltmarsh-herons", "cedar-flats-lanterns"


@cache
def session(team: str) -> Session:
    texts = sorted((PLAYBOOKS / team).glob("*.play"))
    return Session([Source(path.name, path.read_text("utf-8")) for path in texts], team)


def against(team: str, call: str, look: str) -> Play:
    made = session(team)
    order = made.calls.by_name[call]
    drawn, _ = made.drawn(order)
    assert drawn is not None
    play, found = made.play(order, drawn.ball, look_key=look.casefold())
    assert play is not None and play.defence is not None, found
    return play


# One a line: the team's initial, call, look and answers, as in `line_answers`.
ROWS = """
# The kick with nobody on the edge takes the first to show outside the hole, the wrap the next:
# "Inside the Playbook: Blocking Power O"; where S hangs inside the tight end coaches differ.
L | I Right Power | Even Two Man | F S | LG M | RG T+RT>W | Y E
L | I Right Power | Zero | F S | LT N | RG M | RT T
H | Pro Right Power | Even Two Man | F H | LG S
# The wrap takes a backer in the hole, and no end who stands over a lineman.
L | Doubles Right Quarterback Power | Goal Line | RT E | LG M | B S
H | Quads Right Quarterback Power | Goal Line | RT E | LG M
H | Pistol Right Toss Sweep | Goal Line | RT E | RG M | H S
# A second puller stays on a man in his inside gap ("Run Game: Counter Trey": no gap of a puller
# is left open), and a fullback shuts the door behind them from inside out.
L | Doubles Right Counter | Zero | LT N | LG E | RT T
H | Trey Right Counter | Zero | LT N | LG S
L | I Right Counter | Over Three | F J | LT M | LG S
L | I Right Counter | Odd Two | F T | LT M | LG S
L | I Right Counter | Tite Quarters | F T | C N+RG>W | RG N+C>W | RT E+Y
L | I Right Counter | Even Two Man | F J | LT M | LG S | C N
H | Doubles Right Counter | Tite Quarters | F T | C N+RG>W | RT E
H | Doubles Right Counter | Goal Line | F N | C T | RT E | LG S
# "How to Install Buck Sweep": the wing the first free man inside him, the guard the first outside
# the wing, the other guard the near backer, the tackle down; the fullback where the guard was.
L | Wing Right Buck Sweep | Under Quarters | H S | RG C | LG W | RT M | Y E | LT T
L | Wing Right Buck Sweep | Tite Quarters | H S | RG C | LG W | RT E | Y M | LT T
L | Wing Right Buck Sweep | Odd Two | H S | RG C | LG W | RT M | Y E
L | I Right Buck Sweep | Odd Two | RG S | LG W / M | RT M | Y E
L | I Right Buck Sweep | Over Three | RG S | LG M | RT T | F W
L | I Right Buck Sweep | Goal Line | RG S | C T | F N | RT M
L | I Right Buck Sweep | Zero | RG S | RT T | C M | F W
# "Phrase of the Day: Toss Sweep": the tackle whose man is pinned pulls where the edge is nobody's.
L | Wing Right Toss | Even Two Man | RT C | RG T | H S
L | Wing Right Toss | Over Three | RT C | RG T | H S
L | Wing Right Toss | Bear One | H E+Y / E+Y>R | RG T+RT>M
# The far linebacker is the double team's on the nose, which is nearer to him than the tackle's.
L | I Right Toss | Tite Quarters | LG N+C>W | C N+LG>W | LT T | Y M | F S
L | Wing Right Toss | Tite Quarters | LG N+C>W | C N+LG>W | RG E | RT C | Y M | H S
H | Pro Right Toss Sweep | Tite Quarters | LG N+C>W | C N+LG>W | RG M | RT E+Y | Y E+RT | F S
# A crack stays on its side of the ball; with nobody inside to crack he stalks who is over him.
H | Pistol Right Toss Sweep | Tite Quarters | H S | RG M | RT E | LG N+C>W
# Of two receivers on one man the inside one has the man of the box over him.
H | Jumbo Right Power | Goal Line | H H | Z C | F S
# Who is left over is the farthest from the hole: the man over the tight end, not over the tackle.
H | Pro Right Split Zone | Zero | F J | RT E+Y>S | Y E+RT>S
# The fullback has the first from inside out, and nobody climbs in across him: "The Iso Study".
L | I Right Isolation | Even Two Man | F M | RT E+Y>S | LG N+C>W | RG T
# Who turns it in is the man at the box's depth before a deeper one over the tight end, and he is
# named where nobody has him.
H | Pro Right Toss Sweep | Over Three | F S | Y E | RT T | RG M | free -
H | Pistol Right Toss Sweep | Over Three | H E | RG M | free S
H | Pro Right Inside Veer | Over Three | Y H | RT M | key E S
# Zone: nobody of the backside chases past the ball; the uncovered tackle of an unbalanced line
# takes the backer of the next man, who helps inside.
L | Doubles Right Zone Keep | Even Two Man | LT - | C N+LG>M
H | Three Two Right Inside Zone Read | Even Two Man | LT - | C N+LG>M
L | Tackle Over Right Stretch | Tite Quarters | LG N+C>W | C N+LG>W | RG E+RT | RT E+RG | LT M
L | I Right Stretch | Odd Two | RG M | RT E | Y S
# "The Iso Study": the guard at the point doubles the nose, the other has the far backer.
L | I Right Isolation | Odd Two | C N+RG | RG N+C | LG W | F M
H | Pro Right Isolation | Odd Two | C N+RG | RG N+C | LG W | F M
H | Jumbo Right Isolation | Bear One | LT D | A J | F M
# "13 Variations of the Wing-T Trap Game": with a lead on the near backer the guard has the far
# one and the tackle goes on to the safety: they do not cross.
L | I Right Trap | Over Three | RG W | RT F | LG T | F M
H | Pro Right Trap | Under Quarters | RG W | RT H | LG N
# "The Count System": the second man is stacked behind the first.
L | I Right Veer | Stack Three | RT M | LG W | LT T
H | Pro Right Inside Veer | Stack Three | RT M | LG W | LT T
# A tight end away from the play blocks down on the end, and the tackle is free for his backer.
H | Ace Right Inside Zone | Over Three | A J+LT>W | LT J+A>W | C N+LG>M
H | Jumbo Right Power | Even Two Man | A D | LT J
"""


def rows() -> Iterator[tuple[str, str, str, dict[str, str]]]:
    for line in ROWS.strip().splitlines():
        if not line.startswith("#"):
            team, call, look, *cells = (part.strip() for part in line.split("|"))
            wanted = dict(cell.split(" ", 1) for cell in cells)
            yield HERONS if team == "H" else LANTERNS, call, look, wanted


@together(
    ("team", "call", "look", "wanted"),
    [*rows()],
    ids=[f"{call} against {look}" for _, call, look, _ in rows()],
)
def test_the_line_coach_agrees(team: str, call: str, look: str, wanted: dict[str, str]) -> None:
    play = against(team, call, look)
    men = {m.label for m in play.men}
    got = {man: taken(play, man) for man in wanted if man in men or man in ("free", "key")}
    assert not {m: (got[m], wanted[m]) for m in got if not agrees(got[m], wanted[m])}


@pytest.mark.parametrize("team", [HERONS, LANTERNS])
def test_the_pitch_key_is_stacked_behind_the_dive_key(team: str) -> None:
    call = "I Right Veer" if team == LANTERNS else "Pro Right Inside Veer"
    assert [k.man for k in against(team, call, "Stack Three").keys] == ["E", "S"]


@cache
def runs(team: str) -> tuple[Play, ...]:
    """Every run of a playbook against each of its looks."""
    made = session(team)
    assert made.book is not None
    drawn = [made.drawn(order)[0] for _, order in made.calls.orders]
    calls = [p.call.spoken for p in drawn if p is not None and p.kind is Kind.RUN]
    return tuple(against(team, call, look) for call in calls for look in made.book.looks)


EITHER_GOES = ("Inside Zone", "Zone", "Split Zone", "Duo", "Isolation")
"""Runs whose text sends either man of a double team on; others name the one."""
EVERY = together("team", [HERONS, LANTERNS])


@EVERY
def test_every_kick_has_its_man(team: str) -> None:
    """A back who is sent to kick never stands idle at the edge, whatever the front."""
    for play in runs(team):
        for a in play.assignments:
            if a.role == "kick":
                assert a.hits, (play.call.spoken, play.defence and play.defence.name)


@EVERY
def test_a_double_team_lets_the_nearer_man_go(team: str) -> None:
    """Over the top the outside man leaves, inside the inside man: "Base and Combination Blocks",
    coaching site."""
    for play in (p for p in runs(team) if p.call.concept in EITHER_GOES):
        front = (
            front_of(play.men, play.defence, play.toward) if play.defence and play.toward else None
        )
        line = {m.label for m in front.line} if front else set()
        for a in play.assignments:
            if a.man not in line or len(a.hits) < 2:
                continue
            others = [
                b for b in play.assignments
                if b.man in line and b.man != a.man and b.hits
                and b.hits[0].defender == a.hits[0].defender
            ]  # fmt: skip
            for b in others:
                away = abs(play.man(a.man).snap.x - a.hits[1].at.x)
                theirs = abs(play.man(b.man).snap.x - a.hits[1].at.x)
                assert away <= theirs + 0.3, (
                    play.call.spoken,
                    play.defence and play.defence.name,
                    a.man,
                    a.hits,
                )


@EVERY
def test_no_free_man_is_left_inside_of_a_second_puller(team: str) -> None:
    """A threat in the inside gap is left by nobody: common practice, no published source."""
    for play in runs(team):
        assert play.defence is not None and play.toward is not None
        for a in play.assignments:
            man = play.man(a.man)
            if not (man.interior and a.hits and a.hits[0].how == "wrap"):
                continue
            inside = [
                d.label for d in play.defence.defenders
                if d.level is Level.LINE and d.at.x * man.snap.x > 0
                and abs(d.at.x) <= abs(man.snap.x) + 0.25
                and abs(d.at.x) > abs(man.snap.x) - 1.3 + 0.25
            ]  # fmt: skip
            keys = {k.man for k in play.keys}
            free = set(inside) & set(play.unblocked) - keys
            assert not free, (play.call.spoken, play.defence.name, a.man, free)


@EVERY
def test_nobody_of_the_line_stands_idle_beside_a_free_linebacker(team: str) -> None:
    for play in runs(team):
        assert play.defence is not None
        free = [
            d for d in play.defence.defenders
            if d.label in play.unblocked and d.level is Level.SECOND
        ]  # fmt: skip
        for a in play.assignments:
            if play.man(a.man).interior and not a.hits:
                near = [d.label for d in free if abs(d.at.x - play.man(a.man).snap.x) <= 2.5]
                assert not near, (play.call.spoken, play.defence.name, a.man, near)


@EVERY
def test_nobody_who_turns_up_runs_back_for_a_far_backer(team: str) -> None:
    """A backer far behind the turn comes to the ball and is met at it: the guard "walls" him, in
    "How to Install Buck Sweep", coaching site."""
    walls = 0
    for play in runs(team):
        assert play.defence is not None and play.toward is not None
        for a in play.assignments:
            if a.path is None or not a.hits or a.hits[0].how not in ("wrap", "pull"):
                continue
            turn = max(p.x * play.toward.value for p in a.path.corners)
            end, who = a.path.end, play.defence.defender(a.hits[0].defender)
            back = turn - end.x * play.toward.value
            told = (play.call.spoken, play.defence.name, a.man, who.label)
            assert back <= max(3.6, 0.85 * end.y), told
            if who.at.distance(a.hits[0].at) > 1.5:
                walls += 1
                assert end.y < who.at.y and end.x * play.toward.value > who.at.x * play.toward.value
    assert walls > 3


@EVERY
def test_duo_leaves_no_man_of_the_front_and_one_backer_at_most_to_the_carrier(team: str) -> None:
    """He runs by whom he reads: Z. Dunn, "Duo/Double", blog, March 2017. Against six on the line
    and nobody deep every double is a block on one man, so the backer is the next in the hole."""
    seen = 0
    for play in (p for p in runs(team) if p.call.concept == "Duo"):
        assert play.defence is not None and play.toward is not None
        free = [play.defence.defender(label) for label in play.unblocked]
        told = (play.call.spoken, play.defence.name, play.unblocked)
        front = [d for d in free if d.level is Level.LINE and d.at.x * play.toward.value > 0]
        assert not front, told
        if play.defence.name == "Zero":
            seen += 1
            assert len(free) <= 1 and all(d.level is Level.SECOND for d in free), told
    assert seen > 1


@EVERY
def test_the_ball_goes_outside_of_a_man_who_is_blocked_down(team: str) -> None:
    """A 4i is blocked down on and the hole is outside of him: S. Davis, "Using the FAT Double Team
    to Block 4i's in Gap Schemes", X&O Labs."""
    seen = 0
    for play in runs(team):
        assert play.defence is not None and play.toward is not None
        side = play.toward.value
        carrier = next((a for a in play.assignments if a.role == "carrier"), None)
        if carrier is None or carrier.path is None:
            continue
        way = [(p.x * side, p.y) for p in carrier.path.corners]
        last = max(m.snap.x * side for m in play.men if m.interior)
        for d in play.defence.defenders:
            x, y = d.at.x * side, d.at.y
            blockers = [
                play.man(a.man).snap.x * side
                for a in play.assignments
                if a.hits and a.hits[0].defender == d.label
            ]
            if (
                d.level is not Level.LINE
                or not blockers
                or min(blockers) <= x
                or not 0.5 < x < last
            ):
                continue
            there = next((i for i, (_, deep) in enumerate(way) if deep >= y), len(way) - 1)
            (a, low), (b, high) = way[there - 1], way[there]
            at = a + (b - a) * (y - low) / (high - low) if high > low else b
            seen += 1
            told = (play.call.spoken, play.defence.name, d.label, round(x, 2), round(at, 2))
            assert not 0 < x - at < 0.9, told
    assert seen > 10


@EVERY
def test_who_kicks_a_man_off_the_line_goes_outside_of_the_ball(team: str) -> None:
    """The ball runs inside of the kick: "Counter Trey: Down, Kickout and Wrap". Where his man
    leaves him room, a lineman who pulls for it does not turn up on the carrier's line."""
    seen = 0
    for play in runs(team):
        assert play.defence is not None and play.toward is not None
        side = play.toward.value
        carrier = next((a.path for a in play.assignments if a.role == "carrier"), None)
        if carrier is None or len(carrier.corners) < 3:
            continue
        hole = carrier.corners[-2].x * side
        for a in play.assignments:
            if not a.hits or a.hits[0].how != "kick" or not play.man(a.man).interior:
                continue
            assert a.path is not None
            man = play.defence.defender(a.hits[0].defender)
            if man.level is Level.LINE or man.at.x * side < hole + 1.3:
                continue
            seen += 1
            turn = max(p.x * side for p in a.path.corners if p.y < 0)
            told = (play.call.spoken, play.defence.name, a.man, hole, turn)
            assert turn >= hole + 0.6, told
    assert seen > 3


def test_around_the_end_the_ball_stays_inside_of_the_kick() -> None:
    """The back runs "outside the wing's block and inside the kick": "How to Install Buck Sweep",
    coaching site. Whoever turns the run in is met outside of the ball, wherever he stood."""
    seen = 0
    for play in (p for p in runs(LANTERNS) if p.call.concept == "Buck Sweep"):
        assert play.defence is not None and play.toward is not None
        side = play.toward.value
        way = next(a.path for a in play.assignments if a.role == "carrier")
        assert way is not None
        hole = way.corners[-2].x * side
        for a in play.assignments:
            if not a.hits or a.hits[0].how != "kick":
                continue
            man, met = play.defence.defender(a.hits[0].defender), a.hits[0].at
            if man.level is Level.LINE:
                continue
            seen += 1
            told = (play.call.spoken, play.defence.name, man.label)
            ball = crossing(way, met.y)
            assert ball is not None and ball * side <= met.x * side - 0.7, told
            if man.at.x * side > hole:
                there = crossing(way, min(man.at.y, way.end.y)) or way.end.x
                assert there * side <= man.at.x * side - 0.6, told
    assert seen > 10


@EVERY
def test_a_jet_man_takes_the_ball_as_flat_as_he_came(team: str) -> None:
    """His coach says "flat": to the ball and past the quarterback he never runs deeper."""
    seen = 0
    for play in (p for p in runs(team) if p.call.concept == "Jet Sweep"):
        way = next(a.path for a in play.assignments if a.role == "carrier")
        assert way is not None
        seen += 1
        assert min(p.y for p in way.corners) == way.start.y, play.call.spoken
    assert seen > 10


OFF_TACKLE = """
run Off Tackle
    carrier is back
    carrier aims playside B
    playside tackle blocks down or climb to near linebacker
    playside guard blocks down or on
    centre blocks back or on
    backside guard blocks kick end man on line
    backside tackle blocks hinge
    everyone else blocks stalk

dress Off Tackle
    in Doubles, Trey
"""


@pytest.mark.parametrize("call", ["Doubles Right Off Tackle", "Trey Right Off Tackle"])
def test_of_two_outside_the_last_down_block_the_inner_one_is_kicked(call: str) -> None:
    """ "Counter Trey: Down, Kickout and Wrap", coaching blog: a free end beside the one who is
    kicked stands at the hole."""
    texts = sorted((PLAYBOOKS / LANTERNS).glob("*.play"))
    sources = [Source(path.name, path.read_text("utf-8")) for path in texts]
    made = Session([*sources, Source("own.play", OFF_TACKLE)], LANTERNS)
    order = made.calls.by_name[call]
    drawn, _ = made.drawn(order)
    assert drawn is not None
    play, _ = made.play(order, drawn.ball, look_key="goal line")
    assert play is not None
    assert taken(play, "LG") == "E" and "S" in play.unblocked and "E" not in play.unblocked
