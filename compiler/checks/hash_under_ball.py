"""Does anybody who lines up by a hash mark stand behind his own centre?

With the ball on a hash the mark of that side is under the ball, and a man who is placed on it
stands behind the line: no receiver any more, and in nobody's count of one side.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.asked import When
from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.football.field import BallSpot, Side
from stemline.football.offence.landmarks import Landmark
from stemline.football.play import Man
from stemline.lineup.alignment import Alignment, line_up
from stemline.playbook.formations import Formation
from stemline.playbook.places import AtLandmark
from stemline.playbook.playbook import Playbook
from stemline.resolve.all_calls import Calls
from stemline.resolve.expand import Expander, field_of


class W418(Mistake):
    title = "the hash mark is under the ball"
    message = (
        "{man} stands behind the line of {formation} from the {spot}: his hash is under the ball"
    )
    label = "between the tackles there"
    help = (
        "say where he stands on that side: `{man} at {side}, 2 outside tackle, off line when into "
        "boundary`"
    )
    varies = ("spot",)

    man: str
    formation: str
    spot: str
    side: str


WHEN = When.BOOK


def check_hash_under_ball(book: Playbook, calls: Calls, maker: Expander) -> Iterator[Diagnostic]:
    """Each man once, from the first spot where he stands so."""
    for formation in book.formations.values():
        if formation.broken or not any(_on_hash(formation, label) for label in formation.men):
            continue
        told: set[str] = set()
        for spot in (BallSpot.LEFT_HASH, BallSpot.RIGHT_HASH):
            for side in Side:
                alignment, men, _ = line_up(book, formation, side, field_of(book, spot))
                for man in men:
                    if man.label not in told and _is_under(man, formation, alignment):
                        told.add(man.label)
                        yield W418(
                            man=man.label, formation=formation.name, spot=spot.value,
                            side=_side_word(formation, man.label),
                        ).at(man.span)  # fmt: skip


def _on_hash(formation: Formation, label: str) -> list[AtLandmark]:
    """Of his lines the places that a hash mark gives him."""
    places = [said.value.where for said in formation.men[label]]
    return [p for p in places if isinstance(p, AtLandmark) and p.landmark is Landmark.HASH]


def _is_under(man: Man, formation: Formation, alignment: Alignment) -> bool:
    """Whether a hash brings him between the tackles; his other lines lead him somewhere else."""
    if man.interior or man.label not in formation.men:
        return False
    inside = abs(man.at.x) < alignment.field.marks.tackle(1)
    return inside and any(
        abs(abs(man.at.x) - abs(place.outside)) < 0.01 for place in _on_hash(formation, man.label)
    )


def _side_word(formation: Formation, label: str) -> str:
    side = formation.men[label][0].value.side
    return side.value if side is not None else "call"


SAMPLES = """
### W418

From the hash on his side the mark is under the ball, and the slot would stand behind his centre.
Where his side is the short one, give him a place by the tackle.

```play fail W418
formation Hashes extends Three Two
    S at call, hash, off line
```

```play
formation Hashes extends Three Two
    S at call, hash, off line
    S at call, 2 outside tackle, off line when into boundary
```
"""
