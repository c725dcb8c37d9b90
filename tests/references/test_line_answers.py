"""Both playbooks' runs against eight fronts, by the line coach's answers of `line_answers`."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from pathlib import Path

from together import together

from references.line_answers import NAMES, TABLES
from stemline.diagnostics.render import render
from stemline.football.field import BallSpot, Way
from stemline.football.play import Play
from stemline.playbook.playbook import Playbook
from stemline.resolve.expand import expand
from stemline.resolve.order import Order
from stemline.session import Session
from stemline.source import NOWHERE, Source

PLAYBOOKS = Path(__file__).parents[2] / "playbooks"
TEAMS = ("saltmarsh-herons", "cedar-flats-lanterns")

SETS = """
personnel All
    Q is quarterback
    B is back
    F is fullback
    X, Z is wideout
    H, S is slot
    W is slotback
    Y, U is tight end
    P is wing

formation One
    X at away, numbers, on line
    S at away, 6 outside tackle, off line
    H at call, 6 outside tackle, off line
    Z at call, numbers, on line
    B at away, 2 outside ball, 5 deep
    Q at ball, 5 deep

formation One Tight
    X at away, numbers, on line
    S at away, 6 outside tackle, off line
    Y at call, end, on line
    Z at call, numbers, off line
    B at away, 2 outside ball, 5 deep
    Q at ball, 5 deep

formation Two
    X at away, numbers, on line
    H at call, 6 outside tackle, off line
    Z at call, numbers, on line
    F at call, 2 outside ball, 5 deep
    B at ball, 7 deep
    Q at ball, 4 deep

formation Two Tight
    X at away, numbers, on line
    Y at call, end, on line
    Z at call, numbers, off line
    F at call, 2 outside ball, 5 deep
    B at ball, 7 deep
    Q at ball, 4 deep

formation Wing
    X at away, numbers, on line
    Y at call, end, on line
    P at call, 1.5 outside Y, off line
    F at ball, 4 deep
    B at ball, 7 deep
    Q at ball, under centre

formation One Wing
    X at away, numbers, on line
    Y at call, end, on line
    P at call, 1.5 outside Y, off line
    Z at call, numbers, off line
    B at ball, 7 deep
    Q at ball, 4 deep

formation Goal
    U at away, end, on line
    Y at call, end, on line
    Z at call, numbers, off line
    F at call, 2 outside ball, 4 deep
    B at ball, 7 deep
    Q at ball, 4 deep
"""

# The fronts as coaches draw them, the run to the right; S stands on the line outside a tight end.
FRONTS = """
look Over
    strength call
    J at 5, weak
    N at 1, weak
    T at 3, strong
    E at 5, strong
    W at 30, weak
    M at 10, strong
    S at outside end, strong, 5 deep
    C at strong #1, 7 deep
    K at weak #1 or outside end, weak, 7 deep
    R at hash, strong, 12 deep
    A at hash, weak, 12 deep

look Under
    strength call
    J at 5, weak
    T at 3, weak
    N at 1, strong
    E at 5, strong
    W at 30, weak
    M at 30, strong
    S at outside end, strong, 5 deep
    C at strong #1, 7 deep
    K at weak #1 or outside end, weak, 7 deep
    R at hash, strong, 12 deep
    A at hash, weak, 12 deep

look Under Tight extends Under
    S at 9, strong

look Odd
    strength call
    J at outside end, weak, 1 deep
    D at 5, weak
    N at 0
    E at 5, strong
    S at outside end, strong, 1 deep
    W at 20, weak
    M at 20, strong
    C at strong #1, 7 deep
    K at weak #1 or outside end, weak, 7 deep
    R at hash, strong, 12 deep
    A at hash, weak, 12 deep

look Odd Tight extends Odd
    S at 9, strong

look Apex extends Odd
    S at apex or outside end, strong, 4 deep

look Tite extends Odd
    D at 4i, weak
    E at 4i, strong

look Tite Tight extends Tite
    S at 9, strong

look Stack
    strength call
    D at 5, weak
    N at 0
    E at 5, strong
    W at 50, weak
    M at 00
    S at 50, strong
    B at outside end, weak, 2 outside, 6 deep
    O at outside end, strong, 2 outside, 6 deep
    C at strong #1, 8 deep
    K at weak #1 or outside end, weak, 8 deep
    A at middle, 13 deep

look Bear
    strength call
    J at 9, weak
    TL at 3, weak
    N at 0
    TR at 3, strong
    E at 9, strong
    W at 30, weak
    M at 30, strong
    C at strong #1, 7 deep
    K at weak #1 or outside end, weak, 7 deep
    R at hash, strong, 10 deep
    A at hash, weak, 12 deep

look Even
    strength call
    J at 5, weak
    TL at 2i, weak
    TR at 2i, strong
    E at 5, strong
    W at 30, weak
    M at 30, strong
    S at apex or outside end, strong, 5 deep
    C at strong #1, 7 deep
    K at weak #1 or outside end, weak, 7 deep
    R at hash, strong, 12 deep
    A at hash, weak, 12 deep

look Mug extends Over
    N at 3, weak
    W at A gap, weak, 1.5 deep
    M at A gap, strong, 1.5 deep

look Goal
    strength call
    J at 9, weak
    D at 7, weak
    NL at 1, weak
    NR at 1, strong
    T at 7, strong
    E at 9, strong
    W at B gap, weak, 3 deep
    M at B gap, strong, 3 deep
    S at over end, strong, 3 deep
    C at strong #1, 4 deep
    K at weak #1 or outside end, weak, 4 deep
"""

# A run of neither playbook, as a coach writes it.
OWN = """
run Pin and Pull
    carrier is back
    carrier aims outside the end
    playside end blocks pin or reach or climb to overhang
    playside tackle blocks pin or kick end man on line
    playside guard blocks pin or kick end man on line or pull to near linebacker
    centre blocks reach or pull to near linebacker
    backside guard blocks scoop or climb to far linebacker
    backside tackle blocks scoop or climb to far linebacker
    everyone else blocks stalk

run Insert Zone
    carrier is back
    carrier aims playside A
    fullback blocks lead on near linebacker
    playside line blocks on or climb
    centre blocks on or double with backside guard then far linebacker
    backside guard blocks on or double with centre then far linebacker
    backside tackle blocks on or out
    everyone else blocks stalk

run Arc Read
    carrier is back
    carrier aims playside A
    playside line blocks on or climb
    centre blocks on or double with playside guard or double with backside guard then linebacker
    backside guard blocks on or double with backside tackle then far linebacker
    backside tackle blocks climb to far linebacker
    fullback blocks arc to backside force defender
    key end man on line, backside
    give if he stays
    pull if he chases the back
    everyone else blocks stalk

run Counter Fill
    carrier is back
    carrier aims playside B
    playside end blocks down or double with tackle then far linebacker
    playside tackle blocks down or double with guard or climb to far linebacker
    playside guard blocks down or on or double with centre then far linebacker
    centre blocks back or double with playside guard or on
    backside guard blocks kick end man on line
    fullback blocks wrap to near linebacker
    backside tackle blocks hinge
    everyone else blocks stalk

run Counter Trey
    carrier is back
    carrier aims playside B
    playside end blocks down or double with tackle then far linebacker
    playside tackle blocks down or double with guard or climb to far linebacker
    playside guard blocks down or on or double with centre then far linebacker
    centre blocks back or on or double with playside guard
    backside guard blocks kick end man on line
    backside tackle blocks wrap to near linebacker
    fullback blocks hinge
    everyone else blocks stalk

run Quarterback Draw
    carrier is quarterback
    carrier aims playside A
    back blocks lead
    each tackle blocks on or out
    playside guard blocks on or climb to near linebacker
    centre blocks on or climb
    backside guard blocks on or climb to far linebacker
    everyone else blocks stalk

run Down and Kick
    carrier is back
    carrier aims outside the end
    playside wing blocks down or climb to near linebacker
    playside end blocks down or climb to near linebacker
    playside tackle blocks down or climb to near linebacker
    playside guard blocks down or on
    centre blocks back or on
    backside guard blocks kick end man on line
    backside tackle blocks hinge
    everyone else blocks stalk
"""


@cache
def book(team: str) -> Playbook:
    """The playbook's own runs with the sets and fronts of this test."""
    text = (PLAYBOOKS / team / "runs.play").read_text("utf-8")
    blocks = text.split("\n\n")
    # a kill is seen in the book's own fronts
    runs = "\n\n".join(b for b in blocks if not b.startswith(("dress", "tag Kill")))
    runs = "".join(ln for ln in runs.splitlines(True) if not ln.startswith("    kill to"))
    sets, fronts, code = SETS, FRONTS, "high school"
    if team == TEAMS[0]:
        code = "canadian amateur"
        sets = "\n\n".join(
            b + "\n    W at call, 14 outside tackle, off line" if b.startswith("formation") else b
            for b in SETS.strip().split("\n\n")
        )
        fronts = "\n\n".join(
            b if " extends " in b else b + "\n    H at strong #2 or middle, 10 deep"
            for b in FRONTS.strip().split("\n\n")
        )
    head = f"playbook Answers\n    version 1\n    code {code}\n"
    sources = [Source(n, t) for n, t in
               (("head.play", head), ("sets.play", sets), ("fronts.play", fronts),
                ("runs.play", runs), ("own.play", OWN))]  # fmt: skip
    result = Session(sources, "answers")
    errors = [d for d in result.diagnostics if d.is_error]
    assert not errors and result.book, render(errors, {s.name: s for s in sources})
    return result.book


def against(team: str, run: str, formation: str, front: str) -> Play:
    base, _, tag = NAMES[run][TEAMS.index(team)].partition(" + ")
    order = Order(
        formation.casefold(),
        Way.RIGHT,
        "",
        base.casefold(),
        (tag.casefold(),) if tag else (),
        "",
        NOWHERE,
        NOWHERE,
    )
    looks = book(team).looks
    if front.casefold() not in looks or formation == "Goal":
        front = "goal"
    play, found = expand(book(team), order, BallSpot.MIDDLE, (), front.casefold())
    assert play is not None, found
    return play


def hits(play: Play, man: str) -> list[str]:
    assigned = play.assignment(man)
    return [h.defender for h in assigned.hits]


def taken(play: Play, man: str) -> str:
    """Whom a man blocks, as the tables write it; who is free, and who is read."""
    if man == "free":
        return " ".join(play.unblocked) or "-"
    if man == "key":
        return " ".join(key.man for key in play.keys)
    mine = hits(play, man)
    if not mine:
        return "-"
    others = [
        a.man for a in play.assignments if a.man != man and a.hits and a.hits[0].defender == mine[0]
    ]
    climbs = [hits(play, m)[1] for m in (man, *others) if len(hits(play, m)) > 1]
    return "+".join([mine[0], *others]) + "".join(f">{c}" for c in climbs)


def agrees(got: str, answers: str) -> bool:
    """Whether one of the answers is what came out; a double without a backer may climb, and a
    tight end with nobody on him may help on the man inside him on his way to the force."""
    for answer in (a.strip() for a in answers.split(" / ")):
        helped = (f"{answer}+Y", f"{answer}+Y>S", f"{answer}+Y>O")
        if got == answer or ("+" not in answer and got in helped):
            return True
        if "+" in answer and ">" not in answer and got.partition(">")[0] == answer:
            return True
    return False


def rows() -> Iterator[tuple[str, str, str, dict[str, str]]]:
    """Run, set, front, and the answers by man."""
    for run, (table, sets) in TABLES.items():
        found: dict[tuple[str, str], dict[str, str]] = {}
        for line in table.strip().splitlines():
            head, *cells = (part.strip() for part in line.split("|"))
            front, _, only = head.partition(" ")
            wanted = dict(cell.split(" ", 1) for cell in cells)
            for formation in sets if front != "goal" else ("Goal",):
                tight = formation.endswith("Tight")
                if (only == "tight" and not tight) or (only == "open" and tight):
                    continue
                found.setdefault((formation, front), {}).update(wanted)
        for (formation, front), wanted in found.items():
            look = front
            if formation.endswith(("Tight", "Wing")) and front in ("under", "odd", "tite"):
                look = f"{front} tight"
            yield run, formation, look, wanted


CASES = [
    (team, run, formation, front, wanted)
    for run, formation, front, wanted in rows()
    for team, name in zip(TEAMS, NAMES[run], strict=True)
    if name
]


@together(
    ("team", "run", "formation", "front", "wanted"),
    CASES,
    ids=[f"{t.split('-')[-1]}: {r} from {f} against {x}" for t, r, f, x, _ in CASES],
)
def test_the_line_coach_agrees(
    team: str, run: str, formation: str, front: str, wanted: dict[str, str]
) -> None:
    play = against(team, run, formation, front)
    got = {man: taken(play, man) for man in wanted}
    wrong = {m: (got[m], wanted[m]) for m in wanted if not agrees(got[m], wanted[m])}
    assert not wrong


def test_there_are_enough_pairs() -> None:
    pairs = {(run, front) for run, _, front, _ in rows()}
    assert len(pairs) >= 80
    for front in ("tite", "stack", "bear", "goal"):
        assert sum(x.startswith(front) for _, x in pairs) >= 6
