"""Lines as coaches say them, and what the notation has for each: the table of `own_words`.

A row has the kinds of block it may stand in, a pattern for the whole line, and the answer: lines to
type with the coach's names in them, parted by ` & `, or a function of what the pattern found. The
first row that fits is taken. Common practice, no published source.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from stemline.football.offence.routes import LIBRARY
from stemline.read.read_routes import ALSO_CALLED
from stemline.read.read_runs import WAYS

Answer = str | Callable[[re.Match[str]], str]

_SIDE = r"left|right|strong|weak|call|away|field|boundary|playside|backside"
_PASSER = r"(?:the )?(?:qb|q|quarterback)"

_BLOCK_OF = {
    "pulls": "pull", "kicks": "kick", "traps": "trap", "leads": "lead", "wraps": "wrap",
    "cracks": "crack", "stalks": "stalk", "climbs": "climb", "reaches": "reach", "arcs": "arc",
    "sifts": "sift", "hinges": "hinge", "scoops": "scoop", "chips": "chip", "pins": "pin",
}  # fmt: skip
_LETTER_OF = {
    "nose": "N", "will": "W", "sam": "S", "mike": "M", "rover": "R", "free safety": "F",
    "strong safety": "S", "safety": "F", "corner": "C", "end": "E", "tackle": "T", "jack": "J",
}  # fmt: skip
_ROUTE_OF = {
    **ALSO_CALLED, "quick slant": "slant", "bench": "out", "skinny": "skinny post",
}  # fmt: skip
_SHOWN_BY = {"0": "man", "1": "man, middle closed", "2": "middle open", "3": "middle closed",
             "4": "middle open", "6": "middle open"}  # fmt: skip
_CODE_OF = {"12": "canadian amateur", "11": "high school", "9": "nine-man", "8": "eight-man",
            "6": "six-man"}  # fmt: skip
_POSITION_OF = {
    "wide receiver": "wideout", "wr": "wideout", "receiver": "wideout", "split end": "wideout",
    "flanker": "wideout", "running back": "back", "rb": "back", "tailback": "back", "tb": "back",
    "halfback": "back", "hb": "back", "fb": "fullback", "te": "tight end", "qb": "quarterback",
    "wingback": "wing", "wb": "wing", "center": "centre", "slot receiver": "slot",
}  # fmt: skip
_GAP_OF_HOLE = "AABBCCDD"
"""Holes 1 and 2 are the gaps beside the centre, and so on outward: odd left, even right."""
_BY_LETTER = {
    "x": "weak #1", "z": "strong #1", "y": "tight end", "h": "strong #2", "s": "strong #2",
    "w": "weak #2", "r": "back", "b": "back", "a": "wing", "f": "fullback", "q": "quarterback",
}  # fmt: skip
"""Where the man of a letter stands in most books."""


def rule_of_letter(letter: str) -> str:
    """The rule that mostly finds the man of a letter."""
    return _BY_LETTER.get(letter.casefold()[:1], "strong #2")


_MAN_OF = {
    "split end": ("weak #1",), "se": ("weak #1",), "flanker": ("strong #1",),
    "wide receiver": ("strong #1", "weak #1", "each #1"),
    "wr": ("strong #1", "weak #1", "each #1"),
    "halfback": ("back", "wing"), "hb": ("back", "wing"),
    "slot": ("strong #2",), "slot receiver": ("strong #2",),
    "inside receiver": ("strong inside",), "outside receiver": ("strong #1", "weak #1"),
    "fb": ("fullback", "back"), "rb": ("back", "fullback"), "tb": ("back", "fullback"),
    "te": ("tight end", "strong #2"), "wb": ("wing", "strong #2"),
}  # fmt: skip
"""Men whom coaches name by what they are and the notation by where they stand; of several the
coach has to say which."""


_LINEMEN = {
    "lt": "left tackle", "lg": "left guard", "c": "centre", "rg": "right guard",
    "rt": "right tackle",
}  # fmt: skip


def typed(*lines: str) -> str:
    """Lines to type, each between marks."""
    return " and ".join(f"`{' '.join(line.split())}`" for line in lines)


def _one_of(lines: list[str]) -> str:
    shown = " · ".join(typed(line) for line in lines)
    return shown if len(lines) == 1 else f"which man? {shown}"


def _block(found: re.Match[str]) -> str:
    rest = (found["rest"] or "").casefold()
    rest = re.sub(r"^(?:out )?(?:the )?end(?: man)?$", "end man on line", rest)
    rest = re.sub(r"^(?:through|in|into|for|up)\b.*|^out |^the ", "", rest)
    also = re.fullmatch(r"and (\w+)(.*)", rest)
    if also:
        rest = _BLOCK_OF.get(also[1], also[1]) + also[2]
    return typed(f"{found['who']} blocks {_BLOCK_OF[found['does'].casefold()]} {rest}")


def _fake(found: re.Match[str]) -> str:
    joined = typed(f"join run {found['run'].title()}")
    return f"{joined}, where a run of that name stands: its carrier fakes"


def hole_aimed_at(found: re.Match[str]) -> str:
    hole = int(found["hole"][-1]) or 2
    side = (found["side"] or ("right" if hole % 2 == 0 else "left")).casefold()
    gap = _GAP_OF_HOLE[min(hole, len(_GAP_OF_HOLE)) - 1]
    aims = typed(f"toward {side}", f"carrier aims playside {gap}")
    return f"{aims} (as holes are mostly counted: even right, odd left)"


def _gap(found: re.Match[str]) -> str:
    side = (found["side"] or "playside").casefold()
    if side in ("playside", "backside"):
        return typed(f"{found['who']} aims {side} {found['gap']}")
    return typed(f"toward {side}", f"{found['who']} aims playside {found['gap']}")


def _man(found: re.Match[str]) -> str:
    who = found["who"].casefold()
    men = _MAN_OF.get(who) or _MAN_OF[who.removesuffix("s")]
    does = re.sub(r"^run ", "runs ", found["does"])
    return _one_of([f"{man} {does}" for man in men])


def _role(found: re.Match[str]) -> str:
    return _one_of([f"{found['role']} is {man}" for man in _MAN_OF[found["who"].casefold()]])


def _letter(found: re.Match[str]) -> str:
    if found["who"].casefold() in _LINEMEN:
        return typed(f"{_LINEMEN[found['who'].casefold()]} {found['does']}")
    man = rule_of_letter(found["who"])
    does = re.sub(r"^runs (?:an?|the) ", "runs ", found["does"])
    does = re.sub(r"^runs (?:straight|long|deep)\b.*", "runs go", does)
    line = typed(f"{man} {does}")
    return f"no formation lines up a man {found['who']}: say where he stands, such as {line}"


def who_by_letter(letter: str, does: str, label: str = "") -> str:
    """A line for the man who mostly wears the letter; behind ``label`` where that stands first."""
    man = rule_of_letter(letter)
    line = typed(f"{label} {man} {does}".strip())
    return f"say where {letter} stands and what he does, such as {line}"


_STANDS_AS = {
    "wing": "A", "slot": "H", "fullback": "F", "halfback": "R", "tailback": "R", "tight end": "Y",
    "split end": "X",
}  # fmt: skip


def _line_in_a_pass(found: re.Match[str]) -> str:
    line = typed(f"{found['who']} blocks {found['does']}")
    named = typed("protect five", "protect six slide")
    return f"in a pass the protection says it: {named}, or one of yours that has {line}"


def _lettered(found: re.Match[str]) -> str:
    line = typed(f"{_STANDS_AS[found['who'].casefold()]} at {found['rest']}")
    return f"a man stands by the letter of his personnel, such as {line}"


def _defender(found: re.Match[str]) -> str:
    return typed(f"{_LETTER_OF[found['who'].casefold()]} {found['rest']}")


def _rusher(found: re.Match[str]) -> str:
    letter = _LETTER_OF.get(found["who"].casefold(), found["who"])
    gap, side = (found["gap"] or "A").upper(), (found["side"] or "either").casefold()
    return typed(f"{letter} rushes {gap}, {side}")


def _deep(found: re.Match[str]) -> str:
    letter = _LETTER_OF.get(found["who"].casefold(), found["who"])
    side = "weak" if (found["side"] or "").casefold() in ("weak", "left") else "strong"
    zones = (f"third, {side}", "third, middle", f"half, {side}", f"quarter, {side}")
    return "deep what? " + " · ".join(typed(f"{letter} covers {zone}") for zone in zones)


def _helper(found: re.Match[str]) -> str:
    does, who = found["does"].casefold(), "fullback" if found["who"][:1] in "fF" else "back"
    if re.match(r"(?:the )?(?:scan|check|man|slide|(?:\w+ )?edge)\b", does):
        return ""  # what is wrong in it is told
    side = next((word for word in does.split() if re.fullmatch(_SIDE, word)), "")
    if re.search(r"\b(?:end|edge|outside)\b", does):
        return typed(f"{who} blocks {side} edge".replace("  ", " "))
    whom = re.search(r"(?:near |middle |far )?linebacker|overhang|nose", does)
    return typed(f"{who} blocks scan {whom[0] if whom else ''}".rstrip())


def _numbered(found: re.Match[str]) -> str:
    position = {"q": "quarterback", "x": "wideout", "z": "wideout", "y": "tight end"}
    what = position.get(found["who"].casefold()[0], "back")
    return typed(f"{found['who']} is {what}, {found['n']}")


_USUAL = {"block": "edge", "run": "flat"}
"""What stands for a job that a line leaves out."""


def _either_side(found: re.Match[str], does: str) -> str:
    lines = " · ".join(typed(f"{found['who']} {does}, {side}") for side in ("strong", "weak"))
    return f"which side? {lines}"


def _routed(found: re.Match[str]) -> str:
    route = found["route"].casefold()
    return typed(f"{found['who']} runs {_ROUTE_OF.get(route, route)} {found['rest'] or ''}")


_LINE = rf"(?:(?:{_SIDE}|each|both) )?(?:centre|center|guard|tackle|line)"
_PLAYS, _LOOK, _DRESS, _FORMATION = "concept run tag", "look", "dress", "formation"
_WHO = r"(?P<who>[^>,]+?)"
_TAKERS = r"(?:tight end|[a-z]*back|wing|slot|[a-z]\d?|(?:strong|weak|call|away) #\d)"
"""Men by place or letter; any other word is a name, and may be a misspelt one."""
_ROUTES = "|".join(sorted(_ROUTE_OF, key=len, reverse=True))
_JOBS = r"(?P<does>(?:runs?|blocks?|aims|says|decides) .+)"

_KNOWN = "|".join(sorted((name for name in LIBRARY if name.isalpha()), key=len, reverse=True))
_JOB = "|".join(sorted(WAYS, key=len, reverse=True))

ROWS: tuple[tuple[str, str, Answer], ...] = (
    (_PLAYS, r"(?:the )?(?P<man>guard|tackle|end) (?:blocks )?pulls?", lambda m: _one_of(
        [f"{which} {m['man']} blocks pull" for which in ("playside", "backside", "each")])),
    (_PLAYS, r"(?:(?:both|the|all|each|two) )?(?P<man>guard|tackle|end)s? (?:blocks? )?pulls?",
     r"each \g<man> blocks pull"),
    (_PLAYS, rf"{_PASSER} (?P<does>roll|sprint|boot)s?(?: out)?(?: to)?(?: the)?"
             rf"(?P<side> (?:{_SIDE}))?(?: side)?", r"feet \g<does>\g<side>, set"),
    (_PLAYS, rf"(?:{_PASSER} )?(?:drops?|takes?|steps?)(?: back)?(?: a)? (?P<steps>[1357])"
             r"(?:[- ]steps?)?(?: drop)?", r"feet \g<steps>"),
    (_PLAYS, r"(?P<steps>[1357])[- ]step(?: drop)?", r"feet \g<steps>"),
    ("concept tag", rf"{_WHO} fakes(?: the| a)? (?P<run>.+)", _fake),
    ("concept tag", rf"{_WHO} fakes",
     lambda m: f"{typed('join run')} and the run's name: its carrier fakes"),
    (_PLAYS, r"(?P<order>read .+?) > (?:throw|get rid of)(?: it)?(?: away)?",
     r"\g<order> > throw away"),
    (_PLAYS, rf"(?P<order>read .+?) > (?:{_PASSER} )?(?:scrambles?|tucks?(?: it)?|runs?(?: it)?)",
     r"\g<order> > run"),
    (_PLAYS, r"throw(?: it| the ball)? away",
     lambda m: f"at the end of the order: {typed('read … > throw away')}"),
    ("run", rf"(?:read|{_PASSER} reads) (?:the )?end(?: man)?", "key end man on line"),
    (_PLAYS, r"check ?down(?: to)?(?: the)? (?P<man>.+)",
     lambda m: f"he is the last look of the order: {typed('read … > ' + m['man'])}"),
    (_PLAYS, rf"(?P<who>.+?) (?P<does>{'|'.join(_BLOCK_OF)})(?: (?P<rest>.+))?", _block),
    (_PLAYS, rf"{_WHO} (?:carries|gets|takes)(?: it| the ball)?", r"carrier is \g<who>"),
    ("run", rf"(?:{_PASSER} )?gives?(?: it| the ball)? to(?: the)? (?P<who>{_TAKERS}) if "
            r"(?P<when>.+)",
     lambda m: "first name who may get it: "
     + typed(f"taker is {m['who']}", f"give to taker if {m['when']}")),
    (_PLAYS, rf"(?:{_PASSER} )?(?:ball|gives?|hand ?off|hands?|hands off|tosses|pitches)"
             r"(?: it| the ball)? to(?: the)? (?P<who>(?!.* if ).+)",
     r"carrier is \g<who>"),
    (_PLAYS, rf"{_PASSER} throws(?: it| the ball)? to(?: the)? (?P<man>.+)", r"read \g<man>"),
    (_PLAYS, r"(?:the )?hot(?: route| man| read)? (?:is |to )?(?P<man>.+)", r"pressure \g<man>"),
    (_PLAYS, rf"(?P<who>(?:{_LINE}))s? blocks? (?P<does>slide|man|scan|edge|inside out|big on big"
             r"|set and release)(?: .+)?", _line_in_a_pass),
    (_PLAYS, r"every(?:one|body) blocks (?P<rest>.+)", r"line blocks \g<rest>"),
    ("run", r"(?P<does>trap|kick)(?: out)?(?: the)? (?P<whom>nose|end)", lambda m: _one_of(
        [f"{man} blocks {m['does']} {'end man on line' if m['whom'] == 'end' else m['whom']}"
         for man in ("backside guard", "fullback")])),
    (_PLAYS, rf"(?P<who>(?:{_SIDE}) (?:guard|tackle|end)) (?P<job>{_JOB})(?P<rest> .+)?",
     r"\g<who> blocks \g<job>\g<rest>"),
    (_PLAYS, rf"(?P<who>\w{{1,2}}) (?P<route>{_KNOWN})(?P<depth> \d+)?",
     lambda m: who_by_letter(m["who"], f"runs {m['route']}{m['depth'] or ''}")),
    (_PLAYS, r"(?:ball ?carrier|runner) is (?:the )?(?P<who>.+)", r"carrier is \g<who>"),
    (_PLAYS, rf"{_WHO} (?:runs|aims)(?: at| to| for| through)?(?: the)?(?: (?P<side>{_SIDE}))?"
             rf" (?P<gap>[ABCD])(?: gap)?(?: (?P<side2>{_SIDE}))?", _gap),
    (_PLAYS, r"(?:.+? )?aims(?: at| to| for)?(?: the)?(?: (?P<side>left|right))?(?: the)? "
             r"(?P<hole>\d{1,2})(?: ?hole)?", hole_aimed_at),
    (_PLAYS, rf"(?:{_PASSER} )?(?:checks?|audibles?|can|kills)(?: it)? to (?P<to>.+?),? "
             r"(?:when|if|on|against|vs) (?P<when>.+)", r"kill to \g<to> when \g<when>"),
    (_PLAYS, rf"{_WHO} goes(?: deep| long| vertical)", r"\g<who> runs go"),
    (_PLAYS, rf"(?:if|against|vs) (?P<when>press|off|zone|man|middle open|middle closed),? {_WHO} "
             r"(?P<does>runs .+)", r"\g<who> \g<does> when \g<when>"),
    (_PLAYS, r"(?P<line>.+ runs .+?) (?:vs|if|against|on|versus) (?P<when>press|off|zone|man)",
     r"\g<line> when \g<when>"),
    (_PLAYS, r"(?P<line>.+) (?:when|if|vs|against) cover ?(?P<cover>[012346])",
     lambda m: typed(f"{m['line']} when {_SHOWN_BY[m['cover']]}")),
    (_PLAYS, rf"{_WHO} runs(?: an?| the)?(?P<rest> \d+)[- ]?(?:yards?|yds?) (?:then |and )?"
             r"(?P<route>.+)", _routed),
    (_PLAYS, rf"{_WHO} runs(?: an?| the)? (?P<route>{_ROUTES})(?P<rest> .+)?", _routed),
    (_PLAYS, rf"{_WHO} runs (?:an?|the) (?P<route>.+)(?P<rest>)", _routed),
    (_PLAYS, r"#(?P<n>\d) (?P<does>(?:runs|blocks) .+)",
     lambda m: _one_of([f"{side} #{m['n']} {m['does']}" for side in ("strong", "weak", "each")])),
    (_PLAYS, r"line (?:zone blocks|blocks (?:inside )?zone)(?: .+)?", "line blocks on or climb"),
    (_PLAYS, r"line (?:outside zone blocks|blocks (?:outside zone|stretch))(?: .+)?",
     "line blocks reach or climb"),
    (_PLAYS, rf"{_WHO} is (?P<does>block|run)n?ing(?: an?| the)?(?P<what> .+)?",
     lambda m: typed(f"{m['who']} {m['does']}s {m['what'] or _USUAL[m['does'].casefold()]}")),
    (_PLAYS, r"protection (?:is )?(?P<name>.+)", r"protect \g<name>"),
    (_LOOK, rf"(?:the )?(?P<who>{'|'.join(_LETTER_OF)}) (?P<rest>(?:at|rushes) .+"
            r"|covers (?:man|flat|curl|hook|hole|third|half|quarter|robber|deep middle)\b.*)",
     _defender),
    (_LOOK, r"(?:the )?(?P<who>.+?) (?:blitz(?:es)?|rush|fires)(?: through| the)*"
            rf"(?: (?P<gap>[ABCD]))?(?: gap)?,?(?: (?P<side>{_SIDE}))?", _rusher),
    (_LOOK, rf"(?:the )?(?P<who>.+?) covers deep(?:,?(?: on)? (?P<side>{_SIDE}))?", _deep),
    (_LOOK, r"(?P<who>.+?) (?:covers )?man(?: on| to)? (?P<man>#\d)",
     r"\g<who> covers man, strong \g<man>"),
    (_LOOK, r"(?P<who>\w{1,2}) (?:is )?free", r"\g<who> covers deep middle"),
    (_LOOK, r"(?P<man>.+ at \w+)[- ]tech(?:nique)?(?P<rest>.*)", r"\g<man>\g<rest>"),
    (_LOOK, r"(?P<who>.+?) covers (?:the )?(?:deep )?(?P<zone>third|flat|curl|hook|half|quarter)",
     lambda m: _either_side(m, f"covers {m['zone']}")),
    (_LOOK, r"(?P<who>\w{1,2}) at (?P<over>over|inside|outside) (?:the )?(?:tight )?"
            r"(?P<place>end|tackle|guard)",
     lambda m: _either_side(m, f"at {m['over']} {m['place']}")),
    (_LOOK, r"(?P<who>\w{1,2}) at (?P<deep>\d+) (?:yards? )?deep,? (?P<over>over|inside|outside) "
            r"(?P<place>end|tackle|guard)",
     r"\g<who> at \g<over> \g<place>, strong, \g<deep> deep"),
    (_LOOK, r"\d-\d(?:-\d)?(?: front| defen[cs]e| look)?",
     lambda m: f"a front is a line a man, such as {typed('T in 3, strong')}"),
    (_LOOK, r"(?P<who>\w{1,2}) at (?P<deep>\d+)(?: yards?)? deep",
     r"\g<who> at middle, \g<deep> deep"),
    (_LOOK, r"(?P<who>\w{1,2})(?: is| in| plays)? press(?:ed)?",
     r"\g<who> at strong #1, 1 inside, 2 deep"),
    (_LOOK, r"cover ?\d|(?:two|three|four|quarters|[234])[ -]deep",
     lambda m: f"say what each man has, such as {typed('C covers third, strong')}"),
    (_DRESS, r"formations? (?:is |are )?(?P<name>.+)", r"in \g<name>"),
    (_DRESS, r"(?:run|call|use)(?: it)? (?:from|in) (?P<name>.+)", r"in \g<name>"),
    (_DRESS, r"(?:in )?(?:every|any|all|each)(?: the)? formations?", "in all"),
    (_DRESS, r"in (?P<name>(?:(?! to |,).)+?)(?: to the)? (?P<side>right|left)(?: side| only)?",
     lambda m: typed(f"in {m['name']} to {m['side'].casefold()}")),
    (_DRESS, r"(?:to )?(?:both|either|each)(?: ways?| sides?| directions?)?", "to both"),
    (_DRESS, r"(?P<ahead>(?:.+ )?with(?: .+,)?) (?:plane|plan)(?P<rest>(?:,| to ).+)?",
     r"\g<ahead> plain\g<rest>"),
    (_DRESS, r"(?:with no|no|without)(?: a)?(?: any)? tags?", "with plain"),
    (_DRESS, r"(?:not|except|but not|but|no)(?: in)? (?P<name>.+)", r"never in \g<name>"),
    (_DRESS, r"motion (?P<motion>.+?) in (?P<name>.+)", r"in \g<name> motion \g<motion>"),
    (_DRESS, r"against cover ?(?P<cover>[012346])",
     lambda m: typed(f"against {_SHOWN_BY[m['cover']]}")),
    (_FORMATION, r"(?P<who>\w{1,2}) (?:at )?(?:the )?tight end(?P<rest>.*)",
     r"\g<who> at call, end, on line"),
    (_FORMATION, r"(?P<who>\w{1,2}) (?:at |in )?(?:the )?slot(?P<rest>.*)",
     r"\g<who> at call, 4 outside tackle, off line"),
    (_FORMATION, r"(?P<who>\w{1,2}) (?:at )?i(?P<depth>,? \d+ deep)?", r"\g<who> at ball, 7 deep"),
    (_FORMATION, r"(?P<who>\w{1,2}) (?:at )?under(?: the)? cent(?:re|er)",
     r"\g<who> at ball, under centre"),
    (_FORMATION, r"(?P<who>\w{1,2}) (?:at |in )?(?:the )?(?:shot)?gun",
     r"\g<who> at ball, 5 deep"),
    (_FORMATION, r"(?P<who>\w{1,2}) (?:at )?behind (?:q|qb|the quarterback|centre|the ball)"
                 r"(?:, (?P<deep>\d+)(?: yards?)?(?: deep)?)?",
     lambda m: typed(f"{m['who']} at ball, {m['deep'] or 7} deep")),
    (_FORMATION, rf"(?:the )?(?P<who>{'|'.join(_STANDS_AS)}) at (?P<rest>.+)", _lettered),
    (_FORMATION, r"[\w ]+ (?:left|right)",
     lambda m: f"a set is written once, a line a man: {typed('X at call, numbers, on line')}"),
    ("motion", r"(?P<who>[\w# ]+?) (?:moves|goes|shifts) (?P<way>in|out) (?P<yards>\d+)"
               r"(?: yards?)?", r"\g<who> moves \g<yards> \g<way>side"),
    ("motion", r"(?P<who>[\w# ]+?) (?:moves|goes|jets|motions|shifts)(?: in motion| jet| to| the)*"
               r"(?: (?:left|right|across|over))?(?: the formation)?",
     lambda m: f"to where? such as {typed(m['who'] + ' moves to away, 2 outside tackle')}"),
    ("motion", r"(?P<who>[\w# ]+?) moves to (?P<place>[^,]+)",
     lambda m: "to which side? " + " · ".join(
         typed(f"{m['who']} moves to {side}, {m['place']}") for side in ("call", "away"))),
    ("motion", r"snap (?:when|if)(?: he is)? (?P<how>set|running)", r"snap \g<how>"),
    ("week", r"opener (?P<call>.+)",
     lambda m: f"{typed('openers')}, and under it, four spaces deeper, {typed(m['call'])}"),
    ("week", r"(?:1st|first)(?: down)?(?: and 10)?", "situation 1st and 10"),
    ("week", r"(?P<down>2nd|3rd|4th) (?:down )?(?:and )?long", r"situation \g<down> and 7 or more"),
    ("week", r"(?P<down>2nd|3rd|4th) (?:down )?(?:and )?short", r"situation \g<down> and 1 to 2"),
    ("week", r"(?P<where>red zone|green zone|goal line|2-point try|ahead|backed up)",
     r"situation \g<where>"),
    ("week", r"(?:vs|versus|against|opponent|at) (?P<whom>.+)",
     lambda m: f"the opponent stands in the first line: {typed('week 1 ' + m['whom'])}"),
    ("week", r"wristband", "wristband Skill for Q"),
    ("protection", r"(?:the )?(?P<who>(?:full)?back|[rft]b|tailback) blocks (?P<does>.+)",
     _helper),
    ("protection", r"(?:line )?(?P<how>man|big on big|slide|reach)"
                   r"(?: block(?:s|ing)?| protection)?", r"line blocks \g<how>"),
    ("protection", rf"(?:line )?slides?(?: line)?(?: to)?(?: the)? (?P<side>{_SIDE})",
     r"toward \g<side> & line blocks slide"),
    ("personnel", rf"(?P<who>\w{{1,2}}) (?:is )?(?:a |the )?(?P<what>{'|'.join(_POSITION_OF)})",
     lambda m: typed(f"{m['who']} is {_POSITION_OF[m['what'].casefold()]}")),
    ("personnel", r"\d linemen|linemen|line|o-?line",
     lambda m: "leave it out: the linemen of the code are always there"),
    ("personnel", r"#?(?P<n>\d{1,2}) is (?P<who>\w{1,2})", _numbered),
    ("playbook", r"(?:team|name|club|school) (?P<name>.+)",
     lambda m: f"the name stands in the block's first line: {typed('playbook ' + m['name'])}"),
    ("playbook", r"rules? (?P<code>.+)", r"code \g<code>"),
    ("playbook", r"code (?P<men>12|11|9|8|6)[- ]?(?:man|men)?",
     lambda m: typed(f"code {_CODE_OF[m['men']]}")),
)  # fmt: skip

MEN: tuple[tuple[str, str, Answer], ...] = (
    (_PLAYS, rf"(?:the )?(?P<who>(?:{'|'.join(_MAN_OF)})s?) {_JOBS}", _man),
    (_PLAYS, rf"(?P<role>.+?) is (?:the )?(?P<who>{'|'.join(_MAN_OF)})", _role),
    (_PLAYS, rf"(?P<who>[a-z]\d?|[a-z]{{2}}) {_JOBS}", _letter),
)
"""Rows for a man whom no line names: asked only where that is the mistake."""
