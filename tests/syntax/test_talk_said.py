"""Sentences of a coach's talk are read as the lines of the notation that they mean.

What they mean is common practice; no published source.
"""

from __future__ import annotations

import pytest

from syntax.said_lines import read

TALK = {
    "run": (
        ("centre and backside guard double the nose to Mike",
         "centre blocks double with backside guard then Mike"),
        ("playside guard and tackle double to the far linebacker",
         "playside guard blocks double with tackle then far linebacker"),
        ("playside guard and centre double", "playside guard blocks double with centre"),
        ("backside guard pulls through the hole for the near linebacker",
         "backside guard blocks wrap to near linebacker"),
        ("playside guard pulls around the tight end to the linebacker",
         "playside guard blocks pull to linebacker"),
        ("backside guard pulls and walls off the near linebacker",
         "backside guard blocks wrap to near linebacker"),
        ("backside guard and tackle scoop", "backside guard, backside tackle blocks scoop"),
        ("playside tackle goes inside the read to the linebacker",
         "playside tackle blocks leave to linebacker or climb to linebacker"),
        ("backside tackle leaves the end", "backside tackle blocks leave"),
        ("backside line cuts off", "backside line blocks cut off"),
        ("playside tackle gap, down, backer", "playside tackle blocks down or climb"),
        ("line reaches playside", "line blocks reach"),
        ("center sets then climbs to Mike", "center blocks climb to Mike"),
        ("H fills backside B", "H blocks hinge"),
        ("receivers block stalk", "everyone else blocks stalk"),
        ("slots block the men over them", "everyone else blocks stalk"),
        ("everybody else stalks", "everyone else blocks stalk"),
        ("carrier steps backside A, then hits playside B",
         "carrier aims backside A then playside B"),
        ("quarterback boots away", "feet fake, boot away"),
        ("quarterback fakes the keep away", "feet fake, boot away"),
        ("line blocks on, or doubles to the linebacker", "line blocks on or climb"),
        ("center blocks on, away", "center blocks on or back"),
        ("centre blocks back for the puller", "centre blocks back"),
        ("guards block the man on them", "each guard blocks on"),
        ("tight end blocks the near safety", "tight end blocks climb to near safety"),
        ("Y blocks the corner", "Y blocks stalk corner"),
        ("fullback blocks the end", "fullback blocks kick end man on line"),
        ("W is the carrier", "carrier is W"),
        ("read the 3 technique", "key first man outside guard"),
        ("read first man outside the guard", "key first man outside guard"),
        ("pitch to trail if the force takes quarterback",
         "pitch to trail off force if he takes the quarterback"),
        ("give unless he closes", "give if he stays"),
        ("quarterback hands to W at the mesh", "quarterback hands to W"),
        ("W throws to Z or runs", "W throws to Z or run"),
        ("B tosses back to Q", "B tosses to Q"),
        ("carrier aims one yard outside the tackle", "carrier aims outside tackle"),
        ("carrier aims outside Y", "carrier aims outside the end"),
        ("carrier follows the guard", 'carrier says "Follow the guard."'),
    ),
    "concept": (
        ("fake run Inside Zone", "join run Inside Zone"),
        ("H runs a drag behind it", "H runs drag"),
        ("H runs flat at 4", "H runs flat 4"),
        ("Y blocks one count then runs corner", "Y runs check then corner"),
        ("Y blocks then leaks", "Y runs leak"),
        ("Y blocks down and leaks out away", "Y blocks down then leak away"),
        ("Y blocks down, then runs a corner", "Y blocks down then corner"),
        ("B chips and runs flat weak", "B blocks chip then flat weak"),
        ("throw B", "read B"),
        ("quarterback drops 5 and drifts", "feet 5"),
    ),
    "look": (
        ("N heads up on the centre", "N in over centre"),
        ("M stacks behind N", "M in behind N"),
        ("C presses #1 strong", "C at #1 strong, press"),
        ("B off #1 weak", "B at #1 weak, off"),
        ("F in the middle, 14 deep", "F at middle, 14 deep"),
        ("F on the hash, strong, 12 deep", "F at hash, strong, 12 deep"),
        ("H over #2 strong, 7 yards", "H at #2 strong, 7 deep"),
        ("corners cover deep thirds", "corners covers thirds"),
        ("S comes off the edge", "S rushes contain"),
        ("J comes around to contain", "J rushes contain"),
        ("N slants to A weak", "N rushes A weak"),
        ("C bails to third", "C covers third"),
        ("F rotates to middle", "F covers deep middle"),
        ("M covers the hole", "M covers hole"),
        ("S covers hook to curl", "S covers hook"),
    ),
}  # fmt: skip
PLAIN = {
    "run": ("carrier aims outside tackle", "read hitch > slant", "line blocks on or climb",
            "tight end blocks down", "back runs swing", "fullback blocks lead"),
    "concept": ("a runs seam to hash at 18", "a runs post 12 up numbers by 6",
                "throw slant if he fits", "a runs check then swing weak"),
    "look": ("S at strong #3, 5 deep", "M in 10, strong", "F covers deep middle"),
}  # fmt: skip


@pytest.mark.parametrize("kind", TALK)
def test_a_sentence_of_the_talk_is_read_as_its_line(kind: str) -> None:
    for said, line in TALK[kind]:
        assert read(kind, said) == line, said
        assert read(kind, line) == line, line


@pytest.mark.parametrize("kind", PLAIN)
def test_a_line_of_the_notation_is_left_as_it_is(kind: str) -> None:
    for line in PLAIN[kind]:
        assert read(kind, line) == line
