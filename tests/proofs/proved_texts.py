"""A small playbook with something of everything that a proof reads, and edits of it at random."""

from __future__ import annotations

import random
import re

from test_facing import TEXT as PASSES

Texts = dict[str, str]


RUNS = """
run Dive
    family Base
    carrier is back
    carrier aims playside A
    line blocks on or double with centre then far linebacker
    centre blocks on or double with playside guard or double with backside guard then linebacker
    outside, second, third is strong outside
    outside, second, third blocks stalk
    slot is weak #2
    slot runs bubble
    lone is weak #1
    lone runs slant
    key backside overhang
    give if he runs out to the bubble
    throw slot if he fits the run
    feet catch

tag Orbit for Dive
    slot runs hitch

tag Never for Hitches
    first runs out
    keeps read, feet

dress Dive
    in Three Two
    with plain, Orbit
"""
MORE = """
concept Sticks
    family Quick
    feet quick
    read first
    protect Ours
    first is strong #1
    say "Spread them out."
    first runs hitch
    first says "Sit down and show your numbers."
    other is weak #1
    other runs hitch

tag Deep for Sticks
    other runs go
    other says "Win outside."
    keeps read

dress Sticks
    in Empty
    with plain, Deep
    from middle, left hash
    against zone, off
    against Zero

formation Empty
    X at away, 1 inside numbers, on line
    W at away, 2 outside tackle, off line
    H at call, 2 outside tackle, off line
    S at call, between H and Z, off line
    Z at call, numbers, on line
    R at away, 3 outside tackle, 1 deep
    Q at ball, 5 deep
"""
WEEK = """
week 1 Larch Bay
    faces Zero
    openers
        Three Two Right Crossers
        Three Two Right Hitches
    situation 1st and 10
        Three Two Left Crossers Wheel, left hash
        Empty Right Sticks Deep, right hash
    situation 2nd and 7 or more
        Three Two Right Dive
        Three Two Right Dive Orbit
"""


def texts() -> Texts:
    return {"book.play": PASSES, "runs.play": RUNS, "more.play": MORE, "week.play": WEEK}


_SWAPS = {
    "strong": "weak", "weak": "strong", "call": "away", "away": "call", "on": "off", "off": "on",
    "left": "right", "right": "left", "hitch": "slant", "slant": "hitch", "go": "out", "out": "go",
    "quick": "3", "zone": "man", "slide": "man", "canadian": "american", "Wheel": "Deep",
    "Deep": "Wheel", "Zero": "Front", "hook": "flat", "back": "wideout", "middle": "right hash",
}  # fmt: skip
_WORD = re.compile(rf"\b(\d+|{'|'.join(_SWAPS)})\b")


def edited(texts: Texts, dice: random.Random) -> Texts:
    """The texts with a word changed, lines put in or taken out, or blocks in another order."""
    name = dice.choice(sorted(texts))
    kinds = _word, _word, _word, _remark, _remark, _blank, _gone, _moved, _named, _said
    text = dice.choice(kinds)(texts[name], dice)
    return {**texts, name: text}


def _word(text: str, dice: random.Random) -> str:
    at = dice.choice(list(_WORD.finditer(text)))
    word = at[0]
    new = str(max(1, int(word) + dice.choice((-2, -1, 1, 2)))) if word.isdigit() else _SWAPS[word]
    return text[: at.start()] + new + text[at.end() :]


def _remark(text: str, dice: random.Random) -> str:
    """A remark above some line, of a block or inside it."""
    lines = text.split("\n")
    at = dice.randrange(len(lines))
    margin = " " * (len(lines[at]) - len(lines[at].lstrip()))
    return "\n".join((*lines[:at], f"{margin}// a remark", *lines[at:]))


def _blank(text: str, dice: random.Random) -> str:
    """Lines above everything, or a remark behind some line."""
    if dice.random() < 0.5:
        return "\n" * dice.randrange(1, 4) + text
    lines = text.split("\n")
    at = dice.choice([n for n, line in enumerate(lines) if line.strip()])
    return "\n".join((*lines[:at], f"{lines[at]}  // so", *lines[at + 1 :]))


def _gone(text: str, dice: random.Random) -> str:
    """A line less."""
    lines = text.split("\n")
    at = dice.choice([n for n, line in enumerate(lines) if line.startswith(" ")])
    return "\n".join((*lines[:at], *lines[at + 1 :]))


def _moved(text: str, dice: random.Random) -> str:
    """The blocks in another order: nothing means another thing, but what comes first is another."""
    blocks = re.split(r"\n(?=\S)", text.strip("\n"))
    dice.shuffle(blocks)
    return "\n".join(blocks) + "\n"


def _named(text: str, dice: random.Random) -> str:
    """A word for the coach alone behind a block's first line, or another family."""
    return re.sub(r"family \w+", lambda at: dice.choice((at[0], "family Other")), text)


def _said(text: str, dice: random.Random) -> str:
    """A coach's sentence of other words."""
    return re.sub(r'(says? )".*"', lambda at: f'{at[1]}"Yard {dice.randrange(9)}."', text)
