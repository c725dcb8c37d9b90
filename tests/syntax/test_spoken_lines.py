"""Lines whose verb is said as on the field are the lines that the notation writes."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from stemline.source import Source
from stemline.syntax.parser import parse
from syntax.said_lines import read

SAID = {
    "run": (
        ("backside guard pulls and kicks out the end",
         "backside guard blocks pull kick end man on line"),
        ("backside tackle pulls and wraps to near linebacker",
         "backside tackle blocks pull wrap to near linebacker"),
        ("both guards pull", "each guard blocks pull"),
        ("playside tackle, centre block down or back",
         "playside tackle, centre blocks down or back"),
        ("playside guard pulls around the end", "playside guard blocks pull"),
        ("fullback leads up on middle linebacker", "fullback blocks lead on middle linebacker"),
        ("the fullback kicks end", "fullback blocks kick end man on line"),
        ("fullback dives playside A", "fullback aims playside A"),
        ("fullback dives to the right", "fullback aims right A"),
        ("fullback fakes dive", "fullback aims playside A"),
        ("back fakes sweep", "back aims outside the end"),
        ("everyone else blocks", "everyone else blocks stalk"),
        ("quarterback keeps if he widens", "pull if he widens"),
        ("quarterback throws to slant if he fits the run", "throw slant if he fits the run"),
        ("keep if he takes the back", "pull if he takes the back"),
    ),
    "concept": (
        ("everyone else stalks", "everyone else blocks stalk"),
        ("flat slides to the flat", "flat runs flat"),
        ("throw is strong #1", "throw is strong #1"),
        ("throw runs slant", "throw runs slant"),
        ("back checks down", "back runs check"),
        ("weak #2 drags 4", "weak #2 runs cross 4"),
        ("X, Z run go when press", "X, Z runs go when press"),
        ("read flat on quick, curl on 3 then throw it away",
         "read flat on quick > curl on 3 > throw away"),
        ("read flat with drag, over on 3 when 3x1, press",
         "read flat with drag > over on 3 when 3x1, press"),
        ("quarterback reads flat, curl", "read flat > curl"),
    ),
    "look": (
        ("C, F cover quarter, strong", "C, F covers quarter, strong"),
        ("M blitzes through the A gap, weak", "M rushes A gap, weak"),
        ("S blitzes off the edge, strong", "S rushes contain, strong"),
        ("F is free", "F covers deep middle"),
    ),
    "protection": (("backside guard, backside tackle block man",
                    "backside guard, backside tackle blocks man"),),
    "formation": (("S behind H", "S at behind H"),),
}  # fmt: skip


@pytest.mark.parametrize("kind", SAID)
def test_it_is_read_as_the_notation_writes_it(kind: str) -> None:
    for said, line in SAID[kind]:
        assert read(kind, said) == read(kind, line) == line


VERBS = {"pull": "pulls", "kick": "kicks", "lead": "leads", "wrap": "wraps", "stalk": "stalks",
         "crack": "cracks", "sift": "sifts", "climb": "climbs", "arc": "arcs"}  # fmt: skip
BOOKS = Path(__file__).parents[2] / "playbooks"


def test_the_blocks_of_the_bundled_runs_may_be_said_so() -> None:
    """A line of men and one rule says the same with the rule as its verb."""
    found = 0
    for path in sorted(BOOKS.glob("*/*.play")):
        for line in path.read_text("utf-8").splitlines():
            said = re.fullmatch(r" +((?:(?:playside|backside) (?:guard|tackle|end)|centre|fullback"
                                rf"|everyone else)(?: or .+)?) blocks ({'|'.join(VERBS)})( .+)?",
                                line)  # fmt: skip
            if said:
                found += 1
                spoken = f"{said[1]} {VERBS[said[2]]}{said[3] or ''}"
                assert read("run", spoken) == " ".join(line.split())
    assert found > 20


@pytest.mark.parametrize(
    ("kind", "line"),
    [
        ("run", "tackle traps"),  # which of two?
        ("run", "far second pulls"),  # a name of two words may be half of another sentence
        ("run", "carrier follows lead blocker"),
        ("run", 'fullback pulls "hard"'),
        ("formation", "R behind Q"),
        ("route", "stem pulls"),
    ],
)
def test_what_may_mean_two_things_is_not_read(kind: str, line: str) -> None:
    _, found = parse(Source("t.play", f"{kind} A\n    {line}\n"))
    assert [d for d in found if d.code.startswith("E22")]
