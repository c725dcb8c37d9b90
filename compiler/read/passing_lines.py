"""Lines of passes as they are talked through at a board, which no line of the notation can mean
safely: a man under or behind another, an order with its reasons, one word for a call. More rows of
the table of `own_words`, asked before all others.

Common practice, no published source.
"""

from __future__ import annotations

import re

from stemline.football.blocking.block_names import DEFENDERS
from stemline.football.offence.routes import LIBRARY
from stemline.read.coach_lines import Answer, typed

_PASS = "concept tag"
_AS_SIDE = {"backside": "weak", "playside": "strong", "frontside": "strong", "front": "strong"}
_OF_NAMED = r"under(?:neath)?|beneath|below|behind|above|(?:inside|outside|ahead) of"
_SHORT = r"(?:(?! (?:then|to|over|up) )[\w ])+?"
"""A route with a depth at most: where it ends in a place, what stands behind belongs to that."""
_PLACES = "ball|guard|tackle|end|hash|divide|numbers|sideline|middle|line"
_NEAR = rf"{_OF_NAMED}|over|off|inside|outside"
_FIRST = {"sets": "set", "set": "set", "keeps": "keep", "holds": "hold", "gets": "get",
          "looks": "look", "works": "work", "stays": "stay", "finds": "find"}  # fmt: skip


def _beside_a_man(found: re.Match[str]) -> str:
    """Who goes under whom is said by the depths."""
    line = typed(f"{found['who']} runs {found['route']}")
    depth = "" if re.search(r"\d", found["route"]) else ", with a depth behind it"
    return f"the depths say who goes {found['way'].split()[0]}: {line}{depth}"


def _told(found: re.Match[str]) -> str:
    first, _, rest = found["said"].partition(" ")
    said = f"{_FIRST[first.casefold()].capitalize()} {rest}"
    return f"""write {typed(found["line"])} and `{found["who"]} says "{said}."`"""


def _by_side(found: re.Match[str]) -> str:
    side = _AS_SIDE[found["side"].casefold().split()[0]]
    place = found["place"].casefold().replace("receiver", "#1").replace("man", "#1")
    place = "inside" if place == "slot" else place
    return typed(f"{side} {place} {found['does']}")


def _two_ways(found: re.Match[str]) -> str:
    line = typed(f"read {found['first']} > {found['second']}")
    return f"he looks at men, not at a defender: {line}, and on the page {typed('say')} with why"


def _of_a_call(found: re.Match[str]) -> str:
    name = found["name"]
    return f"one word for the concept stands there, {typed('word ' + name)}; for one call " + typed(
        f"call Trey Right Stick as {name}"
    )


def _at_rest(found: re.Match[str]) -> str:
    line = typed("keeps read, feet")
    return f"say what of it shall be proved: {line}; all that a tag does not say stays anyhow"


def _one_or_both(found: re.Match[str]) -> str:
    lines = (f"{found['first']} {mark} {found['rest']}" for mark in (">", "with"))
    return f"one after the other, or in one glance? {' · '.join(map(typed, lines))}"


def _stays(found: re.Match[str]) -> str:
    who = found["who"]
    lines = typed(f"{who} blocks inside out"), typed(f"{who} blocks stalk")
    return f"whom? a man who stays in {lines[0]}, one out wide {lines[1]}"


def _no_option(found: re.Match[str]) -> str:
    lines = " · ".join(
        typed(f"{found['who']} runs {route} when {word}")
        for route, word in (("sit 6", "zone"), ("out 6", "man"))
    )
    return f"a line for each thing he may do: {lines}"


def _opposite(found: re.Match[str]) -> str:
    lines = " · ".join(typed(f"{found['line']} {side}") for side in ("weak", "strong"))
    return f"which way? {lines}"


def _may_not_catch(found: re.Match[str]) -> str:
    line = typed(f"strong #2 runs {found['route']}")
    return f"by this code the centre may not catch a pass: let another man run it, such as {line}"


def _beside_a_landmark(found: re.Match[str]) -> str:
    """A place stands behind `to`; a number before it may be how deep, or how far beside it."""
    head, place, yards = f"{found['head']} to", f"{found['way']} {found['mark']}", found["yards"]
    if yards is None:
        return typed(f"{head} 1 {place}")
    deep = typed(f"{head} 1 {place} at {yards}")
    return deep if int(yards) >= 10 else f"{typed(f'{head} {yards} {place}')} · {deep}"


def _by_leverage(found: re.Match[str]) -> str:
    """He sees it himself, after the snap: one way is drawn, and the rule is said."""
    who = found["who"]
    whom = "He is" if found["whom"].casefold() in ("he", "man") else found["whom"].capitalize()
    said = f'`{who} says "{whom} {found["way"].casefold()}: {found["route"]}."`'
    line = typed(found["line"])
    return f"write {line}, the way that is drawn, and {said}: his man's leverage is his to see"


_MAN = r"\w{1,2}|back|(?:call|away) #\d"
_ROUTE = "|".join(sorted(LIBRARY, key=len, reverse=True))
_JET = r"(?: in| on| into| a| the)*(?: \w+)?(?: motion)?(?: across)? (?:to|toward|into)"

PASSING_ROWS: tuple[tuple[str, str, Answer], ...] = (
    (_PASS, r"(?P<line>(?P<who>.+?) runs (?P<route>.+?)) (?:when|if|vs|against) (?:the |his )?"
            r"(?P<whom>man|he|corner|safety|overhang|linebacker|defender)(?: is| plays| stands)? "
            r"(?P<way>inside|outside)", _by_leverage),
    (_PASS, rf"(?P<who>.+?) blocks (?:the )?(?P<whom>{'|'.join(DEFENDERS)}),? (?:then|and) "
            rf"(?:runs? |goes )?(?:a |the )?(?P<route>(?:{_ROUTE})\b.*)",
     r"\g<who> runs check \g<whom> then \g<route>"),
    (_PASS, r"join (?:run )?(?:the )?(?P<first>.+?) and (?:the )?(?P<second>.+)",
     lambda m: f"a pass joins one run: {typed('join run ' + m['first'])} or "
               + typed(f"join run {m['second']}")),
    (_PASS, rf"(?P<who>{_MAN}) fakes(?: to)?(?: the)? (?P<side>call|away|strong|weak|left|right"
            r"|field|boundary)(?: side)?",
     lambda m: f"the carrier of the run that is joined fakes: {typed('join run Inside Zone')} with "
               f"the run's name, and to which side, {typed('toward ' + m['side'])}"),
    (_PASS, r"(?P<who>.+?) leads(?: the way| the play| out)*,? and (?:then )?(?P<does>blocks .+)",
     r"\g<who> \g<does>"),
    (_PASS, r"(?P<who>.+?) runs (?:an? )?pivot(?P<rest> .+)?", r"\g<who> runs whip\g<rest>"),
    (_PASS, rf"(?P<head>.+? runs (?:{_ROUTE}))(?: (?P<yards>\d+))? (?P<way>inside|outside) "
            r"(?:the )?(?P<mark>tackle|end|hash|divide|numbers|sideline)", _beside_a_landmark),
    (_PASS, rf"(?:c|cent(?:re|er)) runs (?P<route>(?:{_ROUTE})(?: \d+)?)", _may_not_catch),
    (_PASS, rf"(?P<who>.+?) runs (?P<route>{_SHORT}) (?P<way>{_NEAR}) (?:the |a )?(?:him|it|[A-Z]"
            r"|(?:strong|weak) #\d)", _beside_a_man),
    (_PASS, rf"(?P<who>.+?) runs (?P<route>{_SHORT}) (?P<way>{_OF_NAMED}) (?:the |a )?"
            rf"(?!{_PLACES})[a-z]+", _beside_a_man),
    (_PASS, rf"(?P<line>(?P<who>.+?) runs .+?)(?:,| and) (?P<said>(?:{'|'.join(_FIRST)}) .+)",
     _told),
    (_PASS, r"(?P<side>backside|playside|front ?side) (?P<place>slot|inside|outside|receiver|man"
            r"|#\d) (?P<does>(?:runs|blocks) .+)", _by_side),
    (_PASS, r"read (?:the )?[\w ]+?(?:defender|corner|safety|linebacker|overhang)[:,]? "
            r"(?:throw )?(?:the )?(?P<first>\w+) if [^,]+, (?:throw )?(?:the )?(?P<second>\w+)"
            r" if .+", _two_ways),
    (_PASS, r"(?:if|when) [^,]+?,? throw (?:it to |to )?(?:the )?(?P<first>\w+)",
     lambda m: f"the order of his looks says it: {typed('read ' + m['first'])}"),
    (_PASS, rf"(?P<who>{_MAN}) (?:moves|jets|motions|shifts|trades|orbits|flies)(?: .+)?",
     lambda m: f"a motion is a block of its own, {typed('motion Jet')} with such a line: "
               + typed(f"{m['who']} moves to away, 2 outside tackle")
               + ", and a dress-up calls it: " + typed("in Trips motion Jet")),
    ("dress tag concept", r"(?:one|1) word (?:is )?(?P<name>\w+)", _of_a_call),
    ("tag", r"keeps (?:all |the )*(?:rest|all|everything)(?: the same)?", _at_rest),
    (_PASS, r"(?:nobody|no one)(?: else)? blocks.*|(?:five|5)[- ]man protection", "protect five"),
    (_PASS, r"(?P<who>[^ ]+|.+ #\d) blocks", _stays),
    (_PASS, r"(?P<who>.+) blocks the (?P<whom>corner|safety|overhang)",
     r"\g<who> blocks stalk \g<whom>"),
    (_PASS, r"(?P<first>(?:read|pressure) [^,>]+), ?(?P<rest>[^,>]+>.+)", _one_or_both),
    (_PASS, r"(?P<who>.+?) runs (?:an? )?(?:\d+[- ]yard )?option(?: route)?(?: \d+)?", _no_option),
    (_PASS, r"(?P<who>.+?) (?:breaks|decides|reads)(?: off| on)? (?:the )?"
            r"(?P<whom>linebacker|corner|safety|overhang)",
     r"\g<who> decides at 6 on \g<whom>"),
    (_PASS, r"(?P<line>.+ runs .+?) (?:opposite|the other way|to the other side)", _opposite),
    (_PASS, r"dino|(?P<name>\w+) is (?P<route>[a-z ]+) route",
     lambda m: f"a route of your own is a block: {typed('route ' + (m['name'] or 'Dino'))}"),
    ("protection", r"(?:the )?(?P<who>(?:full)?back|tight end) (?:has|takes|is on)(?: the)?"
                   r" (?P<whom>will|sam|mike|linebacker)",
     lambda m: typed(f"{m['who']} blocks scan "
                     f"{'middle' if m['whom'].casefold() == 'mike' else 'near'} linebacker")),
    (_PASS, r"(?P<line>protect .+) when (?P<man>tight end|fullback|wing)",
     lambda m: f"a man is no condition: say the formation, {typed(m['line'] + ' when Trips')}, or "
               f"{typed('helper is ' + m['man'] + ' or nobody')} in the protection"),
    ("motion", r"(?P<who>\w{1,2}|.+ #\d) (?:goes|moves|comes|steps) (?P<way>in|out)"
               r"(?: and| then)*(?: comes| goes)? back(?: out| in)?",
     r"\g<who> moves 3 \g<way>side then back"),
    ("motion", rf"(?P<who>\w{{1,2}}|.+ #\d)(?: goes| comes| moves)?{_JET} (?:the )?"
               r"(?P<side>call|away|field|boundary|left|right)(?: side)?",
     r"\g<who> moves to \g<side>, 2 outside tackle"),
    ("motion", r"(?P<who>\w{1,2}|.+ #\d) (?:goes|moves|comes|runs) (?:\w+ )*?behind (?:the )?"
               r"(?:quarterback|qb|q)",
     r"\g<who> moves to ball, 7 deep then to away, 4 outside tackle"),
)  # fmt: skip
"""Each row as those of `coach_lines`."""

TWICE_ROWS: tuple[tuple[str, str, Answer], ...] = (
    ("concept", r"(?P<line>read .+)",
     lambda m: "one line holds what he looks at, with `>` between: the other side behind the one "
               f"that he picks; or each for its formation, {typed(m['line'] + ' when 3x1')}"),
    (_PASS, r"(?P<who>.+) blocks chip",
     lambda m: "he has a route too: the route alone, or, where he looks for a rusher first, "
               + typed(f"{m['who']} runs check then swing")),
)  # fmt: skip
"""Rows for a line that says a man's job a second time."""
