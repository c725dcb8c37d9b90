"""Every form of a line, from the table of forms, beside one that says another thing: what a coach
may change, one thing at a time."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from stemline.syntax.lines import KINDS, BlockKind

OTHERWISE = {
    "version": "version 2", "code": "code high school", "season": "season 2027",
    "house": "house numbers is 10", "league": "league hash is 20", "lower": "lower W651",
    "quarterback": "quarterback left", "level": "level college",
    "scramble": "scramble short comes back", "picture": "draw from left hash",
    "draw": "draw from middle", "sections": "sections Crossing, Quick, Deep",
    "theme": "theme plain", "contact": "contact 20 minutes a day, 60 minutes a week",
    "say": 'say "Other."', "caution": 'caution "Other."', "idea": 'idea "Other."',
    "says": 'over says "Other."', "line": "line LG, LT, C, RG, RT", "splits": "splits 1.5",
    "people": "people Big", "signal": 'signal "a fist"', "word": "word Oak", "snap": "snap to S",
    "moves": "Z moves to away, 4 outside tackle", "starts": "Z starts 2 seconds",
    "depth": "depth 14", "stroke": "stroke up 14 then in 8", "family": "family Quick",
    "read": "read flat on quick > near with dig on 3",
    "pressure": "pressure flat on quick > near with dig", "feet": "feet quick, 5, reset",
    "spot": "spot near is deep, away from settle",
    "claims": "claims high-low dig above near on flat defender",
    "pair": "pair dig above near on flat defender",
    "needs": "needs under within 8 of tackle at snap",
    "pick": "pick boundary", "alert": "alert clear on near safety",
    "kill": "kill to Stick when 7 or more in box", "protect": "protect big on big",
    "is": "settle is strong #3", "runs": "settle runs sit 6 over ball",
    "blocks": "flat blocks inside out", "decides": "clear decides at 8 on corner",
    "toward": "toward away", "handoff": "handoff second",
    "key": "key end is first man outside tackle, backside", "give": "give if he stays",
    "pull": "pull if he comes down", "throw": "throw slant if he comes up",
    "pitch": "pitch off end man on line if he comes at you", "aims": "carrier aims playside A",
    "snaps": "centre snaps to back", "hands": "carrier hands to taker at 6 deep, backside guard",
    "tosses": "quarterback tosses to taker", "pitches": "quarterback pitches to back",
    "throws": "quarterback throws to out at 3 behind", "shovels": "quarterback shovels to back",
    "fakes": "quarterback fakes to back", "gives": "quarterback gives if end widens",
    "keeps": "quarterback keeps if end drops", "scrambles": "weak #2 scrambles deep",
    "point": "point near linebacker", "hot": "hot slant if two come inside",
    "strength": "strength weak", "shows": "shows middle closed", "covers": "S covers curl, strong",
    "rushes": "T rushes C, strong behind E", "swap": "swap over with flat", "tempo": "tempo slow",
    "join": "join run Power", "suits": "suits 2nd and 4 to 6", "install": "install day 3",
    "with": "with Wheel", "to": "to right", "motion": "motion Tuck", "from": "from left hash",
    "best": "best from right hash in Trips", "call": "call Quads Crossers Wheel as Meteor",
    "date": "date 2026-10-18", "faces": "faces Odd Two, Bear", "drop": "drop all from red zone",
    "move": "move Trey Right Stick to red zone", "short": "short Inside Zone is ZI",
    "number": "number Quads Right Crossers is 8", "numbers": "numbers apart",
    "practice": "practice Thursday at 1600", "quiz": "quiz H, S on Friday",
    "playbook against": "against Odd", "playbook kill": 'kill word "Rio"',
    "personnel is": "X is slot", "formation at": "X at call, 3 inside numbers, on line",
    "motion snap": "snap set", "route decides": "decides at 8 on corner",
    "concept moves": "under moves in", "run moves": "under moves in", "tag moves": "under moves in",
    "protection toward": "toward launch", "protection is": "helper is fullback",
    "protection blocks": "centre, playside guard blocks man", "look only": "only for Trey",
    "look never": "never for Trey", "look in": "T in 4i, strong",
    "look at": "S at strong #3, 6 deep", "dress in": "in Quads, Trips motion Tuck",
    "dress against": "against zone", "dress never": "never Wheel in Trey",
    "keeps read, feet": "keeps read, pressure", "only": "Wheel + Return only to left",
    "only in Quads with Wheel": "only in Trips with Wheel",
}  # fmt: skip
"""What each form of line says otherwise, by its word, by its kind of block and its
word, or whole."""
ROWS = {
    "openers": ('Trey Right Power, left hash, "First look only."', 'Trey Right Power, left hash'),
    "situation 2nd and 7 or more": ("Trey Right Power, fast", "Trey Right Power, slow"),
    "wristband Skill for Q, R, X": ("windows 2", "windows 3"),
    "scout Wednesday": ("Trey Right Power against Odd", "Trey Right Power against Bear"),
    "period Inside Run, 12 minutes, thud, Wednesday": (
        "Trey Right Power against Odd, 3 reps", "Trey Right Power against Odd, 4 reps",
    ),
    "day 2, 2026-08-15": ("Wheel for Crossers", "Wheel for Crossers, Ferry"),
    "week 6": ("again Stick", "again Snag"),
}  # fmt: skip
"""A row under each line that opens rows, and what it says otherwise."""
OTHER_WAYS = (
    ("concept A", "a runs go", "a blocks edge"),
    ("concept A", "over runs post 12", "over runs post 12 when off"),
    ("concept A", 'a says "In." when off', 'a says "Out." when off'),
    ("concept A", "read a on quick > run or throw away", "read a on quick > throw away"),
    ("run A", "quarterback hands to carrier", "quarterback tosses to carrier"),
    ("run A", "carrier tosses to quarterback after 1.5 seconds",
     "carrier tosses to quarterback after 2 seconds"),
    ("run A", "out throws to strong #1 or run", "out throws to strong #1"),
    ("run A", "quarterback keeps if end chases", "quarterback gives if end chases"),
    ("run A", "key end man on line, backside", "key first man outside tackle, backside"),
    ("tag A for B", "kill to Stick when 8 or more in box", "kill to Snag when 8 or more in box"),
    ("look A", "W covers hook, strong", "W rushes B, strong"),
    ("look A", "M in 10, strong", "M at strong #3, 5 deep"),
    ("formation A", "X at away, divide", "X at away, divide when into boundary"),
    ("dress A", "in Trey with X runs fade", "in Trey with X runs slant"),
    ("dress A", "from goal line 5", "from goal line 3"),
    ("dress A", "only in Quads", "only in Trips"),
    ("playbook A", "draw every call", "draw strong to field"),
    ("week 1 A", "openers\n        Stick when Bear", "openers\n        Stick when Zero"),
    ("week 1 A", "period Team, 12 minutes, thud", "period Team, 10 minutes, thud"),
    ("week 1 A", "period Team, 12 minutes, Tuesday\n    period Walk, 9 minutes, Tuesday",
     "period Walk, 9 minutes, Tuesday\n    period Team, 12 minutes, Tuesday"),
    ("install A", "day 1\n        Trey, Stick, Snag", "day 1\n        Trey, Snag, Stick"),
    ("install A", "day 1\n        Trey\n        Stick", "day 1\n        Stick\n        Trey"),
    ("install A", "day 1\n        Trey\n    week 2\n        Stick",
     "week 2\n        Stick\n    day 1\n        Trey"),
    ("week 1 A", "move Stick to openers\n    move Trey Snag from red zone to openers",
     "move Trey Snag from red zone to openers\n    move Stick to openers"),
    ("week 1 A", 'situation "Last play"\n        Stick\n    situation "Kneel"\n        Snag',
     'situation "Kneel"\n        Snag\n    situation "Last play"\n        Stick'),
    ("week 1 A", "wristband Eyes\n        windows 2\n    wristband Hands\n        windows 2",
     "wristband Hands\n        windows 2\n    wristband Eyes\n        windows 2"),
    ("week 1 A", "scout Friday\n        Snag\n    scout Monday\n        Snag",
     "scout Monday\n        Snag\n    scout Friday\n        Snag"),
    ("week 1 A", "period Team, 9 minutes, air, Friday\n    period Team, 9 minutes, air, Monday",
     "period Team, 9 minutes, air, Monday\n    period Team, 9 minutes, air, Friday"),
    ("week 1 A", "quiz H, S on Friday\n    quiz Q on Monday",
     "quiz Q on Monday\n    quiz H, S on Friday"),
    ("concept A", 'a says "In."\n    a says "Out."', 'a says "Out."\n    a says "In."'),
    ("run A", 'caution "Low."\n    caution "Wet."', 'caution "Wet."\n    caution "Low."'),
    ("concept A", "alert a on corner\n    alert b on near safety",
     "alert b on near safety\n    alert a on corner"),
    ("run A", "key end is end man on line, backside\n    key edge is corner, playside",
     "key edge is corner, playside\n    key end is end man on line, backside"),
    ("run A", "quarterback gives if end stays\n    quarterback keeps if end chases",
     "quarterback keeps if end chases\n    quarterback gives if end stays"),
    ("run A", "give if he stays\n    pull if he comes down",
     "pull if he comes down\n    give if he stays"),
    ("concept A", "claims triangle a, b, c\n    pair a above b on corner",
     "pair a above b on corner\n    claims triangle a, b, c"),
    ("tag A for any run", "kill to Stick when 6 in box\n    kill to Zone when Bear",
     "kill to Zone when Bear\n    kill to Stick when 6 in box"),
    ("protection A", "hot a if a sixth comes\n    hot b", "hot b\n    hot a if a sixth comes"),
    ("dress A", 'say "Low."\n    say "High."', 'say "High."\n    say "Low."'),
    ("personnel A", "X is wideout\n    Z is wideout", "Z is wideout\n    X is wideout"),
    ("formation A", "X at away\n    Z at call", "Z at call\n    X at away"),
)  # fmt: skip
"""Lines that may be said in more than one way, and another verb for what is one thing."""


class Form(NamedTuple):
    """A line under its heading, and the same line saying another thing."""

    head: str
    was: str
    now: str


def forms() -> Iterator[Form]:
    """A change of each form that a kind of block knows, those that several kinds share once."""
    seen = set()
    for kind, block in KINDS.items():
        for word, example in _words(block):
            named = (example, f"{kind} {word}", word)
            now = next(OTHERWISE[name] for name in named if name in OTHERWISE)
            if (example, now) not in seen:
                seen.add((example, now))
                yield Form(block.header, example, now)
        for opener in block.openers.values():
            rows = ROWS[opener.line.example]
            yield Form(block.header, *(f"{opener.line.example}\n        {row}" for row in rows))
    yield from (Form(*way) for way in OTHER_WAYS)


def _words(block: BlockKind) -> Iterator[tuple[str, str]]:
    for lines in (block.labels, block.verbs):
        yield from ((word, line.example) for word, line in lines.items())
