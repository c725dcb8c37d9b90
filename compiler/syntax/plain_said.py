"""Lines of passes, protections, motions and dress-ups with the small words of a talk in them:
``join Dive``, ``to right only``, ``S goes in motion across to away, 4 outside tackle``.

Each is put as the notation has it, before the line is read. A line that is read without that is
left alone: what is looked for here is a mistake anywhere else. Common practice, no published
source.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from lark import Token

_PASSES = frozenset(("concept", "tag"))
_SHAPES = frozenset(("high-low", "triangle", "stretch"))
_NOTES = (["coaching", "point"], ["coaching", "points"], ["note"], ["point"], ["coach"])
_BACKS = frozenset(("back", "fullback", "strong back", "weak back", "every other back"))
_IN_MOTION = frozenset(
    ("comes", "flies", "goes", "jets", "motions", "moves", "runs", "shifts", "trades")
)
"""How a coach has a man leave his place before the snap."""
_BY_THE_WAY = frozenset(
    ("across", "all", "flying", "formation", "full", "in", "jet", "motion", "out", "over", "speed",
     "the", "way")
)  # fmt: skip
"""Words before `to` that say no more than where he ends."""
_BEHIND_HIM = ("to", "ball", ",", "7", "deep", "then")
"""Behind the quarterback, be he under centre or in the gun: two yards and more."""
_IN_PROTECTION: Mapping[str, str] = {
    "scans": "scan", "scan": "scan", "reaches": "reach", "reach": "reach", "hinges": "hinge",
    "hinge": "hinge", "slides": "slide", "slide": "slide",
}  # fmt: skip
_LINE_RULES = (["big", "on", "big"], ["man"], ["slide"], ["reach"])
_OF_A_LINE = frozenset(("reach", "slide"))
"""What a whole side of the line does; so does who hinges."""
_SIDES = frozenset(("playside", "backside"))
_EDGE = frozenset(("and", "blocks", "edge", "has", "in", "on", "stays", "takes", "the"))
_OF_MANY = frozenset(("block", "run"))
_UNDER = frozenset(("center", "centre", "the", "under"))
_GUN = frozenset(("gun", "in", "shotgun", "the"))

_LABELS = frozenset(("say", "signal", "snap", "word"))
"""Of a motion: behind them stand a coach's own words."""

Line = Sequence[Token]


def plainly(kind: str, line: Line) -> Line:
    """A line that turns on a word of its block, without what it need not say."""
    words = [token.casefold() for token in line]
    for kinds, said in _TURNING:
        if kind in kinds and (found := said(line, words)) is not None:
            return found
    return line


def as_talked(kind: str, line: Line) -> list[Token] | None:
    """A line that turns on no word of its block, as that block has it; None for any other."""
    words = [token.casefold() for token in line]
    for kinds, said in _UNPLACED:
        if kind in kinds and (found := said(line, words)) is not None:
            return found
    return None


def _as(token: Token, *words: str) -> list[Token]:
    kinds = {",": "_AND", "then": "WORD"}
    return [
        Token.new_borrow_pos("NUM" if word.isdigit() else kinds.get(word, "WORD"), word, token)
        for word in words
    ]


def _listed(line: Line) -> list[Token]:
    """The line with a comma for each `and`, and for a comma with one behind it."""
    made: list[Token] = []
    for token in line:
        if token.casefold() != "and":
            made.append(token)
        elif not made or made[-1].type != "_AND":
            made.append(Token.new_borrow_pos("_AND", ",", token))
    return made


# Lines that turn on a word.


def _motion_behind(line: Line, words: Sequence[str]) -> list[Token] | None:
    """``in Quads with motion Zip``: a motion stands behind its own word."""
    if words[0] == "in" and "motion" in words[2:-1]:
        at = words.index("motion", 2)
        return [*line[: at - 1], *line[at:]] if words[at - 1] == "with" else None
    return None


def _to_one(line: Line, words: Sequence[str]) -> list[Token] | None:
    """``to right only``."""
    return list(line[:-1]) if words[0] == "to" and words[2:] == ["only"] else None


def _joins(line: Line, words: Sequence[str]) -> list[Token] | None:
    """``join Dive`` as ``join run Dive``: a pass joins nothing else."""
    if words[0] == "join" and len(words) > 1 and words[1] != "run":
        rest = line[2:] if words[1] == "the" and len(words) > 2 else line[1:]
        return [line[0], *_as(line[0], "run"), *rest]
    return None


def _stays_to_block(line: Line, words: Sequence[str]) -> list[Token] | None:
    """``back blocks`` as ``back blocks inside out``: he stands beside the quarterback."""
    if words[-1] != "blocks" or not _all_backs(words[:-1]):
        return None
    return [*line, *_as(line[-1], "inside", "out")]


def _scans(line: Line, words: Sequence[str]) -> list[Token] | None:
    if words[-1] != "blocks" or not _all_backs(words[:-1]):
        return None
    return [*line, *_as(line[-1], "scan")]


def _all_backs(words: Sequence[str]) -> bool:
    men = " ".join(words).removeprefix("the ").split(" , ")
    return bool(words) and all(man.removeprefix("the ") in _BACKS for man in men)


def _of_one_side(line: Line, words: Sequence[str]) -> list[Token] | None:
    """``weak side runs go`` as ``everyone else weak runs go``."""
    if words[:1] in (["strong"], ["weak"]) and words[1:3] in (["side", "runs"], ["side", "blocks"]):
        return [*_as(line[0], "everyone", "else"), line[0], *line[2:]]
    return None


def _slot(line: Line, words: Sequence[str]) -> list[Token] | None:
    """``weak slot runs drag`` as ``weak inside runs drag``."""
    if words[0] in ("strong", "weak") and words[1:3] in (["slot", "runs"], ["slot", "blocks"]):
        return [line[0], *_as(line[1], "inside"), *line[2:]]
    return None


def _pair(line: Line, words: Sequence[str]) -> list[Token] | None:
    """``slots are each #2`` as ``slots is each #2``."""
    if words[1:3] == ["are", "each"]:
        return [line[0], *_as(line[1], "is"), *line[2:]]
    return None


def _sets_up(line: Line, words: Sequence[str]) -> list[Token] | None:
    """``back sets up then slow screen weak`` as ``back runs slow screen weak``."""
    for at in range(1, len(words) - 3):
        if words[at : at + 2] == ["sets", "up"] and words[at + 2] in ("then", "and"):
            rest = at + 4 if words[at + 3] in ("runs", "goes") else at + 3
            return [*line[:at], *_as(line[at], "runs"), *line[rest:]]
    return None


def _slide(line: Line, words: Sequence[str]) -> list[Token] | None:
    """``slide to the call`` of a protection: the line does."""
    rest = [token for token in line[1:] if token.casefold() not in ("to", "the")]
    if words[0] in ("slide", "slides") and len(rest) == 1:
        return [*_as(line[0], "line", "blocks", "slide"), *rest]
    return None


def _line_is(line: Line, words: Sequence[str]) -> list[Token] | None:
    """``the line is big on big`` as ``line blocks big on big``."""
    at = 1 if words[0] == "the" else 0
    if words[at : at + 2] == ["line", "is"] and words[at + 2 :] in _LINE_RULES:
        return [line[at], *_as(line[at + 1], "blocks"), *line[at + 2 :]]
    return None


def _point(line: Line, words: Sequence[str]) -> list[Token] | None:
    """``point Mike``: the middle linebacker by his name of the trade."""
    if words in (["point", "mike"], ["point", "the", "mike"]):
        return [line[0], *_as(line[-1], "middle", "linebacker")]
    return None


def _goes_to(line: Line, words: Sequence[str]) -> list[Token] | None:
    """``S moves across to away, …`` as ``S moves to away, …``; behind the quarterback on the way is
    a place of it."""
    if words[0] in _LABELS:
        return None
    for at, word in enumerate(words[1:], 1):
        if word in _IN_MOTION or (word == "in" and "motion" in words[at + 1 : at + 3]):
            return _way(line, words, at)
    return None


def _way(line: Line, words: Sequence[str], verb: int) -> list[Token] | None:
    moved = [*line[:verb], *_as(line[verb], "moves")]
    for at in range(verb + 1, len(words)):
        if words[at] == "to" and "," in words[at:]:
            changed = at > verb + 1 or words[verb] != "moves"
            return [*moved, *line[at:]] if changed else None
        if words[at] == "behind" and (end := _behind_quarterback(words, at)):
            rest = line[end:]
            if words[end : end + 1] == ["to"] and "," in words[end:]:
                return [*moved, *_as(line[at], *_BEHIND_HIM), *rest]
            return None
        if words[at] not in _BY_THE_WAY:
            return None
    return None


def _behind_quarterback(words: Sequence[str], at: int) -> int:
    """Where the words end that name him behind `behind`; 0 where they name another."""
    at += 2 if words[at + 1 : at + 2] == ["the"] else 1
    return at + 1 if words[at : at + 1] in (["quarterback"], ["qb"], ["q"]) else 0


def _rolling(line: Line, words: Sequence[str]) -> list[Token] | None:
    """``H, S start 8 yards deep`` as ``H, S moves from 8 deep``."""
    if words[0] in _LABELS:
        return None
    for at, word in enumerate(words[1:], 1):
        if word in ("start", "starts") and words[-1] in ("deep", "back"):
            number = [token for token in line[at + 1 :] if token.type in ("NUM", "RANGE")]
            said = set(words[at + 1 : -1]) - {"from", "at", "yards", "yard"}
            if len(number) == 1 and len(said) == 1:
                return [*_listed(line[:at]), *_as(line[at], "moves", "from"), *number,
                        *_as(line[-1], "deep")]  # fmt: skip
    return None


def _on_the_run(line: Line, words: Sequence[str]) -> list[Token] | None:
    """``snap on the run`` as ``snap running``."""
    if (
        words[1:] in (["on", "the", "run"], ["on", "the", "move"], ["moving"])
        and words[0] == "snap"
    ):
        return [line[0], *_as(line[-1], "running")]
    return None


# Lines that turn on none.


def _shape(line: Line, words: Sequence[str]) -> list[Token] | None:
    """``high-low dig above near`` as ``claims high-low dig above near``."""
    return [*_as(line[0], "claims"), *line] if words[0] in _SHAPES and len(words) > 2 else None


def _noted(line: Line, words: Sequence[str]) -> list[Token] | None:
    """``coaching point "…"`` as ``say "…"``."""
    if words[:-1] in _NOTES and line[-1].type == "STRING":
        return [*_as(line[0], "say"), line[-1]]
    return None


def _two_men(line: Line, words: Sequence[str]) -> list[Token] | None:
    """``X and Y run seams`` as ``X, Y runs seams``; ``back and fullback block``."""
    at = next((n for n, word in enumerate(words) if n > 2 and word in _OF_MANY), 0)
    men = _listed(line[:at])
    parts = " ".join(token.casefold() for token in men).split(" , ")
    if not at or "and" not in words[:at] or any(len(part.split()) > 3 for part in parts):
        return None
    verb = _as(line[at], f"{words[at]}s")
    if at < len(words) - 1 or _all_backs([token.casefold() for token in men]):
        return [*men, *verb, *line[at + 1 :]]
    return None


def _both_backs(line: Line, words: Sequence[str]) -> list[Token] | None:
    """``backs stay in`` as ``back, fullback blocks``, which is read on from there."""
    said = [word for word in words if word not in ("the", "both")]
    if said in (["backs", "stay", "in"], ["backs", "block"], ["backs", "stay", "home"]):
        first, rest = _as(line[0], "back", ","), _as(line[-1], "fullback", "blocks")
        return [*first, *rest]
    return None


def _not_in(line: Line, words: Sequence[str]) -> list[Token] | None:
    """``not in Trips to left`` as ``never in Trips to left``."""
    if words[:2] == ["not", "in"] and len(words) > 2:
        return [*_as(line[0], "never"), *line[1:]]
    return None


def _called_route(line: Line, words: Sequence[str]) -> list[Token] | None:
    """``X runs dig`` of a dress-up as ``with X runs dig``."""
    if "runs" in words[1:3] and words[-1] != "runs" and line[0].type == "WORD":
        return [*_as(line[0], "with"), *line]
    return None


def _named(line: Line, words: Sequence[str]) -> list[Token] | None:
    """``Trey Right Stick is Viper`` as ``call Trey Right Stick as Viper``."""
    if "is" not in words[1:-1] or not {"left", "right", "field", "boundary"} & set(words):
        return None
    at = words.index("is", 1)
    name = line[at + 2 :] if words[at + 1] in ("called", "now") else line[at + 1 :]
    call = line[1:at] if words[0] == "call" else line[:at]
    if not name or len(call) < 2:
        return None
    return [*_as(line[0], "call"), *call, *_as(line[at], "as"), *name]


def _protects(line: Line, words: Sequence[str]) -> list[Token] | None:
    """``the back scans inside out``, ``playside reaches``, ``tight end stays in on the edge``."""
    start = 1 if words[0] == "the" else 0
    for at, word in enumerate(words[start + 1 :], start + 1):
        if word == "stays" and "edge" in words and set(words[at:]) <= _EDGE:
            return [*line[start:at], *_as(line[at], "blocks", "edge")]
        rule = _IN_PROTECTION.get(word)
        if rule is None:
            continue
        side = words[start:at] in (["playside"], ["backside"])
        if side and words[at + 1 :] == []:
            return [line[start], *_as(line[at], "line", "blocks", rule)]
        if rule == "scan" or (words[start:] == ["line", word] and rule in _OF_A_LINE):
            return [*line[start:at], *_as(line[at], "blocks", rule), *line[at + 1 :]]
        return None
    return None


def _hot_if(line: Line, words: Sequence[str]) -> list[Token] | None:
    """``if both come, hot slant`` as ``hot slant if both come``."""
    if words[0] != "if" or "," not in words[2:]:
        return None
    at = words.index(",", 2)
    if words[at + 1 : at + 2] != ["hot"] or len(words) < at + 3:
        return None
    return [*line[at + 1 :], *line[:at]]


def _passer_stands(line: Line, words: Sequence[str]) -> list[Token] | None:
    """``Q in the gun`` as ``Q at ball``, as deep as the house has it; ``Q under center``."""
    if words[0][:1] != "q" or len(words[0]) > 2 or len(words) < 3:
        return None
    if words[1] == "in" and set(words[1:]) <= _GUN:
        return [line[0], *_as(line[1], "at", "ball")]
    if words[1] == "under" and set(words[1:]) <= _UNDER:
        return [line[0], *_as(line[1], "at", "ball", ",", "under", "centre")]
    return None


_Said = Callable[[Line, Sequence[str]], "list[Token] | None"]
_Rows = tuple[tuple[frozenset[str], _Said], ...]
_DRESS, _MOTION = frozenset(("dress",)), frozenset(("motion",))
_PROTECTION = frozenset(("protection",))
_TURNING: _Rows = (
    (_DRESS, _motion_behind),
    (_DRESS, _to_one),
    (_PASSES, _joins),
    (_PASSES, _stays_to_block),
    (_PASSES, _of_one_side),
    (_PASSES, _slot),
    (_PROTECTION, _scans),
    (_PROTECTION, _line_is),
    (_PROTECTION, _point),
    (_MOTION, _rolling),
    (_MOTION, _goes_to),
    (_MOTION, _on_the_run),
)
_UNPLACED: _Rows = (
    (_PASSES, _pair),
    (_PASSES, _sets_up),
    (_PASSES, _shape),
    (frozenset(("concept", "run", "protection", "look")), _noted),
    (_PASSES | _PROTECTION, _two_men),
    (_PASSES | _PROTECTION, _both_backs),
    (_DRESS, _not_in),
    (_DRESS, _called_route),
    (_DRESS, _named),
    (_PROTECTION, _protects),
    (_PROTECTION, _hot_if),
    (_PROTECTION, _slide),
    (_MOTION, _rolling),
    (_MOTION, _goes_to),
    (frozenset(("formation",)), _passer_stands),
)
