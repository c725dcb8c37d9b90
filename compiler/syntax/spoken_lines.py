"""Lines whose verb is said as on the field: ``backside guard pulls``, ``back swings weak``, ``C, F
cover quarter, strong``.

Asked only about a line that turns on no word of its block, so no line that is read otherwise can
change: its words are put as the notation has them, each at its place in the text, and it is read on
from there. `format` writes what they are read as. Common practice, no published source.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise

from lark import Token

from stemline.syntax.checked_lines import LOOKS_FIRST, goes_out
from stemline.syntax.clinic_said import as_said
from stemline.syntax.talk_said import sided, talked

_PLAYS = frozenset(("concept", "run", "tag"))

_BLOCKS: Mapping[str, str] = {
    "arcs": "arc", "chips": "chip", "climbs": "climb", "cracks": "crack", "doubles": "double",
    "hinges": "hinge", "kicks": "kick", "leads": "lead", "pins": "pin", "pulls": "pull",
    "reaches": "reach", "scoops": "scoop", "sifts": "sift", "stalks": "stalk", "traps": "trap",
    "wraps": "wrap",
}  # fmt: skip
_BLOCK_OF = {**_BLOCKS, **{block: block for block in _BLOCKS.values()}}
_ROUTES: Mapping[str, str] = {
    "checks": "check", "crosses": "cross", "curls": "curl", "drags": "cross", "fades": "fade",
    "flares": "swing", "hitches": "hitch", "hooks": "hook", "leaks": "leak", "slants": "slant",
    "swings": "swing", "wheels": "wheel",
}  # fmt: skip
_AT_WHOM = frozenset(("climb", "kick", "lead", "pull", "trap", "wrap"))
_GOES_OUT = frozenset(("goes", "leaks", "releases", "slides", "slips", "sneaks"))
_INTO = frozenset(("in", "into", "out", "the", "to"))
_FAKED: Mapping[str, str] = {
    "dive": "playside A", "plunge": "playside A", "sweep": "outside the end",
    "toss": "outside the end",
}  # fmt: skip
"""Runs that a man fakes, and where he runs then as if he had the ball."""
NAMES_TOO = frozenset(("alert", "pick", "pitch", "pull", "throw"))
"""Labels that a coach also gives to a man as his name: ``throw is strong #1``."""
DOES = frozenset(("aims", "blocks", "is", "runs", "says"))
"""Verbs that follow such a name, and no label."""
_OF_LINE = frozenset(("center", "centre", "line"))
_ALL = frozenset(("everybody", "everyone"))
_SIDES = frozenset(("left", "right", "strong", "weak", "playside", "backside"))
_OF_MANY = frozenset(("aim", "block", "cover", "run", "rush"))
"""Verbs as they are said of several men: the notation has them with an s."""
_RUSHES = frozenset(("blitz", "blitzes", "rush"))

_HOW = frozenset(("along", "around", "down", "out", "outside", "through", "up", "upfield", "the"))
"""Words behind a block that say what it is anyhow: ``pulls around the end``."""
_WHERE = frozenset(("edge", "end", "hole", "line", "way"))
_OF_MEN = frozenset((
    "all", "away", "back", "backs", "backside", "both", "boundary", "call", "center", "centre",
    "each", "else", "end", "ends", "every", "everybody", "everyone", "field", "fullback", "guard",
    "guards", "inside", "left", "line", "linemen", "of", "other", "outside", "playside",
    "quarterback", "right", "strong", "tackle", "tackles", "the", "tight", "weak", "wing",
))  # fmt: skip
_HOLES = frozenset(("a", "b", "c", "d", "guard", "tackle"))
_READS = (["quarterback", "reads"], ["qb", "reads"])
_OF_TWO = frozenset(("guard", "tackle"))
"""Which of two is meant has to be asked."""
_BALL = frozenset(("ball", "c", "center", "centre", "the"))
_ONE_OF = {"guards": "guard", "tackles": "tackle", "ends": "end"}


def as_written(kind: str, line: Sequence[Token]) -> list[Token] | None:
    """The line as a block of ``kind`` has it; None for one that is not known to be said so."""
    if any(token.type == "STRING" for token in line):
        return _told(kind, line)
    said = talked(kind, line) or as_said(kind, line)
    if said is not None:
        return said
    line = _parted(line)
    if kind == "formation":
        return _stood(line)
    if kind in ("concept", "tag") and [t.casefold() for t in line[:2]] in _READS:
        return [_as(line[1], "read"), *line[2:]]
    for at, token in enumerate(line[1:], 1):
        word = token.casefold() if token.type == "WORD" else ""
        said = _rest(kind, word, token, line[at + 1 :])
        own = kind == "look" and not line[at + 1 :]
        if (
            said is not None
            and _men(line[:at])
            and not (own and any(len(t) > 2 for t in line[:at]))
        ):
            return [*_who(line[:at]), *said]
    return None


def _told(kind: str, line: Sequence[Token]) -> list[Token] | None:
    """``guards say "Set and hide."`` as ``each guard says "Set and hide."``."""
    if kind not in (*_PLAYS, "protection"):
        return None
    for at, (verb, words) in enumerate(pairwise(line)):
        if verb.casefold() == "say" and words.type == "STRING" and at and _men(line[:at]):
            return [*_who(line[:at]), _as(verb, "says"), *line[at + 1 :]]
    return None


def _checks_first(kind: str, line: Sequence[Token]) -> list[Token] | None:
    """``back checks edge then releases`` as ``back runs check edge``."""
    if kind not in ("concept", "tag", "protection"):
        return None
    for at, token in enumerate(line[1:], 1):
        if token.casefold() in LOOKS_FIRST:
            said = goes_out(kind, token, line[at + 1 :]) if _men(line[:at]) else None
            return [*_who(line[:at]), *said] if said is not None else None
    return None


def _parted(line: Sequence[Token]) -> Sequence[Token]:
    """``playside guard and centre block down`` with a comma between its men; two who double say so
    in a line each."""
    words = [token.casefold() for token in line]
    if "and" not in words[1:] or {"double", "doubles"} & set(words):
        return line
    at = words.index("and", 1)
    if not (set(words[:at]) <= _OF_MEN and words[at + 1] in _OF_MEN):
        return line
    comma = Token.new_borrow_pos("_AND", ",", line[at])
    return [*sided([*line[:at], comma, line[at + 1]]), *line[at + 2 :]]


def _rest(kind: str, word: str, verb: Token, rest: Sequence[Token]) -> list[Token] | None:
    """What stands behind the men, as the notation has it."""
    said = [token.casefold() for token in rest]
    out = said[-1:] == ["flat"] and 1 < len(said) == 1 + sum(w in _INTO for w in said)
    if kind in _PLAYS and word in _GOES_OUT and out:
        return [_as(verb, "runs"), rest[-1]]
    if kind in _PLAYS and word in _BLOCK_OF:
        return [_as(verb, "blocks"), *_block(verb, _BLOCK_OF[word], rest)]
    if kind in _PLAYS and word in _ROUTES:
        how = rest[1:] if rest and rest[0].casefold() in ("down", "out") else rest
        how = _then_routes(how) if word == "checks" else how
        return [_as(verb, "runs"), _as(verb, _ROUTES[word]), *how]
    if kind == "run" and word == "dives" and rest and rest[-1].casefold() in _HOLES:
        return [_as(verb, "aims"), *_without(rest, ("at", "through", "to", "the"))]
    side = [token for token in rest if token.casefold() not in ("side", "the", "to")]
    if kind == "run" and word == "dives" and len(side) == 1 and side[0].casefold() in _SIDES:
        return [_as(verb, "aims"), side[0], _as(side[0], "A")]
    if kind == "protection" and word in ("slide", "slides") and not rest:
        return [_as(verb, "blocks"), _as(verb, "slide")]
    if kind == "look" and word in _RUSHES:
        return [
            _as(verb, "rushes"),
            *(_gap(rest) if rest else (_as(verb, "own"), _as(verb, "gap"))),
        ]
    if kind == "look" and word in ("is", "plays") and [t.casefold() for t in rest] == ["free"]:
        return [_as(verb, "covers"), _as(verb, "deep"), _as(rest[0], "middle")]
    if word in _OF_MANY and rest and kind in (*_PLAYS, "protection", "look"):
        return [_as(verb, f"{word}s" if word != "rush" else "rushes"), *rest]
    return None


def _as(token: Token, word: str) -> Token:
    return Token.new_borrow_pos("WORD", word, token)


def _men(subject: Sequence[Token]) -> bool:
    """Whether this names men: each by one word, or by words that only men are named by."""
    names: list[list[Token]] = [[]]
    for token in subject:
        if token.type == "_AND":
            names.append([])
        else:
            names[-1].append(token)
    return all(names) and all(
        name[0].casefold() not in _OF_TWO
        if len(name) == 1
        else all(token.type == "RANK" or token.casefold() in _OF_MEN for token in name)
        for name in names
    )


def _who(subject: Sequence[Token]) -> list[Token]:
    """``both guards``, ``the back`` as ``each guard``, ``back``."""
    said = list(subject[1:] if subject[0].casefold() == "the" and len(subject) > 1 else subject)
    words = [token.casefold() for token in said]
    if len(said) == 2 and words[0] in ("both", "all", "each") and words[1] in _ONE_OF:
        return [_as(said[0], "each"), _as(said[1], _ONE_OF[words[1]])]
    if len(said) == 1 and words[0] in _ONE_OF:
        return [_as(said[0], "each"), _as(said[0], _ONE_OF[words[0]])]
    return said


def _block(verb: Token, block: str, rest: Sequence[Token]) -> list[Token]:
    """``pulls and kicks out the end`` as ``pull kick end man on line``."""
    said = [_as(verb, block)]
    left = list(rest)
    if len(left) > 1 and left[0].casefold() == "and" and left[1].casefold() in _BLOCKS:
        said.append(_as(left[1], _BLOCKS[left[1].casefold()]))
        left = left[2:]
    while left and left[0].type == "WORD" and left[0].casefold() in _HOW:
        left.pop(0)
    if len(left) == 1 and left[0].casefold() == "end" and said[-1].casefold() in ("kick", "trap"):
        return [*said, *(_as(left[0], word) for word in ("end", "man", "on", "line"))]
    if len(left) == 1 and left[0].casefold() in _WHERE:
        return said
    if left and left[0].type == "WORD" and said[-1].casefold() in _AT_WHOM:
        left = [token for token in left if token.casefold() != "the"]
    return [*said, *_or_blocks(left)]


def _or_blocks(rest: Sequence[Token]) -> list[Token]:
    """``reaches or climbs`` as ``reach or climb``."""
    before = ["", *(token.casefold() for token in rest)]
    return [
        _as(token, _BLOCKS.get(token.casefold(), str(token))) if word in ("or", "then") else token
        for token, word in zip(rest, before, strict=False)
    ]


def _gap(rest: Sequence[Token]) -> list[Token]:
    """``off the edge, strong`` as ``contain, strong``."""
    words = [token.casefold() for token in rest]
    for edge in (["off", "the", "edge"], ["off", "edge"], ["the", "edge"], ["edge"]):
        if words[: len(edge)] == edge:
            return [_as(rest[len(edge) - 1], "contain"), *rest[len(edge) :]]
    return _without(rest, ("in", "the", "through"))


def _without(rest: Sequence[Token], words: Sequence[str]) -> list[Token]:
    return [token for token in rest if token.casefold() not in words]


def _stood(line: Sequence[Token]) -> list[Token] | None:
    """``S behind H`` as ``S at behind H``."""
    words = [token.casefold() for token in line]
    if len(line) < 3 or line[0].type != "WORD" or words[2] in _BALL:
        return None
    # Behind the quarterback is so many yards from the ball.
    if words[1] == "beside" or (words[1] == "behind" and words[2][:1] != "q"):
        return [line[0], _as(line[1], "at"), *line[1:]]
    return None


def in_order(line: Sequence[Token]) -> list[Token]:
    """An order of looks with its commas and `then` as what they mean there, and the ball thrown
    away as it is written: ``read flat, curl``, ``> throw it away``."""
    end = next((n for n, token in enumerate(line) if token.type == "_WHEN"), len(line))
    marks = {token.type for token in line[:end]}
    if "_AND" in marks and any(_is_mixed(line, n) for n in range(1, end - 1)):
        return list(line)  # a comma between two of an order may be either
    made: list[Token] = []
    for token in line[:end]:
        if token.type not in ("_THEN", "_AND"):
            made.append(token)
        elif made[-1].type != "_ORDER":  # `read flat, then snag`
            made.append(Token.new_borrow_pos("_ORDER", ">", token))
    return [*made, *line[end:]]


def _is_mixed(line: Sequence[Token], at: int) -> bool:
    """Whether a `>` stands here alone, in an order that has commas too."""
    beside = {line[at - 1].type, line[at + 1].type}
    return line[at].type == "_ORDER" and not beside & {"_AND", "_THEN"}


_INTO_THE_GROUND = tuple(
    words.split()
    for words in (
        "throw it away", "throw the ball away", "throw it at his feet", "throw it in the dirt",
        "throw it into the ground", "throw it out of bounds", "dirt it", "ground it",
    )
)  # fmt: skip


def thrown_away(line: Sequence[Token]) -> list[Token]:
    """``throw it away``, ``or throw it at his feet`` as ``> throw away``."""
    words = [token.casefold() for token in line]
    for said in (*_INTO_THE_GROUND, ["throw", "away"]):
        at = len(words) - len(said)
        if words[at:] != said:
            continue
        made = list(line[:at])
        if words[at - 1] == "or" and words[at - 2] != "run":
            made[-1] = Token.new_borrow_pos("_ORDER", ">", made[-1])
        return [*made, _as(line[at], "throw"), _as(line[-1], "away")]
    return list(line)


def as_it_is_said(kind: str, line: Sequence[Token]) -> list[Token]:
    """A line that does turn on a word of its block, and means another."""
    words = [token.casefold() for token in line]
    if kind not in (*_PLAYS, "protection") or any(token.type == "STRING" for token in line):
        return talked(kind, line, turned=True) or list(line)
    said = _checks_first(kind, line) or talked(kind, line, turned=True)
    if said is not None:
        return said
    if words[1:] == ["else", "blocks"] and words[0] in _ALL and kind != "tag":
        return [*line, _as(line[-1], "stalk" if kind == "run" else "scan")]
    if kind == "concept" and len(words) == 2 and words[0] in _OF_LINE and words[1] == "blocks":
        return [*line, _as(line[-1], "scan")]
    if (
        kind == "run"
        and words[:2] in (["everyone", "blocks"], ["everybody", "blocks"])
        and words[2:]
    ):
        return [*_whole_line(line[0]), *line[1:]]
    if kind == "run" and words[-2:-1] == ["fakes"] and words[-1] in _FAKED and _men(line[:-2]):
        return [*line[:-2], *(_as(line[-1], word) for word in f"aims {_FAKED[words[-1]]}".split())]
    if "then" in words[3:] and words[1:2] == ["blocks"] and kind != "protection":
        at = words.index("then")
        if words[2:at] in (["inside", "out"], ["inside"], ["scan"]):
            checks = (_as(line[1], "runs"), _as(line[2], "check"))
            return [line[0], *checks, *_then_routes(line[at:])]
    if kind == "protection":
        return list(line)
    return _keyed_end(line, words) or _of_one_key(line, words)


def _then_routes(rest: Sequence[Token]) -> list[Token]:
    """``then swings weak`` as ``then swing weak``."""
    if len(rest) > 1 and rest[0].casefold() in ("then", "and"):
        route = rest[1].casefold()
        return [_as(rest[0], "then"), _as(rest[1], _ROUTES.get(route, route)), *rest[2:]]
    return list(rest)


def _whole_line(at: Token) -> list[Token]:
    """All who stand on the line over the ball."""
    made = [_as(at, "line")]
    for side in ("playside", "backside"):
        made += [Token.new_borrow_pos("_AND", ",", at), _as(at, side), _as(at, "end")]
    return made


def _keyed_end(line: Sequence[Token], words: Sequence[str]) -> list[Token] | None:
    """``key the backside end`` as ``key backside end man on line``."""
    between = set(words[1:-1]) <= {"the", "playside", "backside"}
    if words[0] != "key" or words[-1] != "end" or not between:
        return None
    said = [token for token in line[:-1] if token.casefold() != "the"]
    return [*said, *(_as(line[-1], word) for word in ("end", "man", "on", "line"))]


def _of_one_key(line: Sequence[Token], words: Sequence[str]) -> list[Token]:
    """``quarterback keeps if he widens`` as ``pull if he widens``: with `he` there is one key, and
    what is done off him has a line of its own."""
    if words[:1] in (["centre"], ["center"]) and words[1:3] == ["snaps", "and"]:
        return [line[0], *line[3:]]  # he snaps it in any case
    if words[:1] in (["keep"], ["keeps"], ["gives"]) and words[1:2] == ["if"]:
        return [_as(line[0], "give" if words[0] == "gives" else "pull"), *line[1:]]
    if words[:1] in (["quarterback"], ["qb"]) and words[2:4] == ["if", "he"]:
        does = {"gives": "give", "keeps": "pull", "pulls": "pull"}.get(words[1])
        return [_as(line[1], does), *line[2:]] if does else list(line)
    if words[:1] in (["quarterback"], ["qb"]) and words[1:3] == ["throws", "to"]:
        return [_as(line[1], "throw"), *line[3:]] if " if he " in " ".join(words) else list(line)
    return list(line)
