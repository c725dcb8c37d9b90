"""Lines as coaches of six men, of youth and of a wing set write them at first, and what there is
for each: more rows of the table of `own_words`, asked before those of every coach.

Common practice, no published source.
"""

from __future__ import annotations

import re

from stemline.football.offence.routes import LIBRARY
from stemline.read.coach_lines import Answer, hole_aimed_at, typed, who_by_letter

_MAN = (
    r"tight end|wing(?:back)?|full ?back|half ?back|tail ?back|back|(?:strong|weak|call|away) #\d"
)
_PASSER = r"(?:the )?(?:qb|q|quarterback)"
_ROUTE = "|".join(sorted((name for name in LIBRARY if name.isalpha()), key=len, reverse=True))
_ROUTE_VERB = {
    "drag": "cross", "shallow": "cross", "crosse": "cross", "hitche": "hitch", "streak": "go",
    "flie": "go", "flare": "swing",
}  # fmt: skip
_VERBS = "|".join((*_ROUTE_VERB, _ROUTE))
_AS_ROLE = {"wingback": "wing", "halfback": "back", "tailback": "back", "half back": "back",
            "tail back": "back", "full back": "fullback"}  # fmt: skip


def _role(who: str) -> str:
    return _AS_ROLE.get(who.casefold(), who)


def _runs(found: re.Match[str]) -> str:
    route = found["route"].casefold()
    return typed(f"{_role(found['who'])} runs {_ROUTE_VERB.get(route, route)}")


def _whose(found: re.Match[str]) -> str:
    lines = " · ".join(typed(f"{man} runs {found['route']}") for man in ("strong #1", "weak #1"))
    return f"which man? {lines}"


def _wide(found: re.Match[str]) -> str:
    who = found.groupdict().get("man")
    lines = [f"carrier is {_role(who)}"] if who else []
    lines += [f"toward {found['side'].casefold()}"] if found["side"] else []
    return typed(*lines, "carrier aims outside the end")


def _behind(found: re.Match[str]) -> str:
    lines = [f"toward {found['side'].casefold()}"] if found["side"] else []
    return typed(*lines, f"carrier aims playside {found['man'].casefold()}")


def _series(found: re.Match[str]) -> str:
    head = typed(f"run {found['name'].title()}")
    body = typed("carrier is fullback", "carrier aims playside B")
    return f"its name stands in the first line, {head}; under it say who carries it, such as {body}"


def _trapped(found: re.Match[str]) -> str:
    whom = re.sub("center", "centre", found["whom"], flags=re.IGNORECASE)
    whom = re.sub(r"^the ", "", whom)
    return typed(f"backside guard blocks {found['does'].casefold()} {whom}")


def _thrown(found: re.Match[str]) -> str:
    return f"say whom he looks at and in which order: {typed('read strong #1 > weak #1')}"


def _by_place(found: re.Match[str]) -> str:
    near = {"sideline": "3 inside sideline", "tackle": "1 outside tackle"}
    place = near.get(found["place"].casefold(), found["place"].casefold())
    return typed(f"{found['who']} at call, {place}, off line")


_RUN, _PASS, _FORMATION, _LOOK = "run", "concept tag", "formation", "look"
_SIDED = r"(?: (?:to )?(?:the )?(?P<side>left|right|strong|weak|field|boundary))?(?: side)?"

NEWCOMER_ROWS: tuple[tuple[str, str, Answer], ...] = (
    (_FORMATION, r"(?:the )?(?:cent(?:er|re)|guards?|tackles?|line(?:men)?) at .+",
     lambda _: f"the line is always there; line up the others: {typed('X at call, end, on line')}"),
    (_FORMATION, r"(?:the |both )?ends? (?:at|are) .*?(?P<n>\d+).*",
     r"X at away, \g<n> outside ball, on line & Y at call, \g<n> outside ball, on line"),
    (_FORMATION, r"(?P<who>\w{1,2}) at (?:the )?(?:left|right),? (?P<n>\d+)(?: yards?)?"
                 r"(?: out(?:side)?| wide| split)?",
     r"\g<who> at call, \g<n> outside tackle, off line"),
    (_FORMATION, r"(?P<who>\w{1,2}) (?:at |is |stands )?(?P<n>\d+)(?: yards?)? "
                 r"(?:back|behind|deep)", r"\g<who> at ball, \g<n> deep"),
    (_FORMATION, r"(?:two|2|double) tight(?: ends)?|everybody tight|tight",
     "X at away, end, on line & Y at call, end, on line"),
    (_FORMATION, r"spread|everybody wide|wide",
     "X at away, numbers, on line & Y at call, numbers, on line"),
    (_FORMATION, r"(?P<who>\w{1,2}) (?:by|near|on|in|next to)(?: the)? "
                 r"(?P<place>sideline|numbers|hash|tackle|end)", _by_place),
    (_FORMATION, r"(?P<who>q\w?) (?:is )?(?:at )?(?:right )?behind(?: the)? cent(?:er|re)",
     r"\g<who> at ball, under centre"),
    (_FORMATION, r"(?:the )?(?:wing(?:back)?|wb) (?:right|left|outside|next to|off)(?: of)?"
                 r"(?: the)? (?:tight end|te|end)", "A at call, 1 outside end, off line"),
    (_FORMATION, r"(?P<who>\w{1,2}) (?:is |at )?(?:a |the )?wing(?:back)?(?: left| right)?",
     r"\g<who> at call, 1 outside end, off line"),
    (_FORMATION, r"(?:foot[- ]to[- ]foot|tight|zero|no)(?: line)? splits", "splits 0.5"),
    (_PASS, r"(?:the )?cent(?:er|re) (?:goes out|releases|is eligible|eligible|runs a pass).*",
     lambda _: f"where the code lets him catch: {typed('centre runs hook 5')}"),
    (_PASS, r"(?P<side>left|right) end (?P<does>runs .+)", r"\g<side> #1 \g<does>"),
    (_PASS, r"(?:all|every(?:one|body))(?: men)? (?:go(?:es)?|runs?) (?:deep|long|vertical|out)",
     "each #1 runs go & everyone else runs seam"),
    (_PASS, r"(?:pitch|hand ?off|toss|handoff) (?:then|and)(?: a)? (?:pass|throw)",
     "out is strong #2 & quarterback tosses to out at 2 behind & out throws to strong #1 or run"),
    (_PASS, r"(?:.+ )?throws?(?: it)? to (?:the |whoever is )?open(?: man| receiver)?", _thrown),
    (_PASS, r"(?:the |both )?ends (?:run |go )?cross(?:ing)?(?: routes?)?",
     "strong #1 runs cross 6 & weak #1 runs cross 5"),
    (_PASS, rf"(?:the |both )?ends (?:run|go) (?P<route>{_ROUTE})s?", r"each #1 runs \g<route>"),
    (_PASS, r"(?P<who>\w{1,2}) (?:runs|goes) (?:straight|long|deep)(?: ahead| down the field)?",
     lambda m: who_by_letter(m["who"], "runs go")),
    (_PASS, rf"(?:run|go)(?: to)?(?: the| an?)? (?P<route>{_ROUTE})", _whose),
    (_PASS, r"(?P<who>.*?) ?(?:runs |run )?(?:a )?button ?hooks?",
     lambda m: typed(f"{_role(m['who'] or 'strong #1')} runs hook")),
    (_PASS, r"(?:throw|pass)(?: it| the ball)? to(?: the)? (?P<who>\w{1,2})",
     lambda m: who_by_letter(m["who"], "", "read")),
    (_PASS, rf"{_PASSER} (?P<does>roll|sprint|boot)s?(?: out)?{_SIDED} and (?:throws|passes).*",
     lambda m: typed(f"feet {' '.join(filter(None, (m['does'].casefold(), m['side'])))}, set")),
    (_PASS, r"play[- ]action(?: pass)?(?: off| from| on)?(?: the| of)? (?P<run>.+)",
     lambda m: typed(f"join run {m['run'].title()}")),
    (_PASS, rf"(?:waggle|bootleg|boot|roll ?out){_SIDED}",
     lambda m: typed(f"feet {' '.join(filter(None, ('boot', m['side'])))}, set")),
    (_PASS, rf"(?:the )?(?P<who>{_MAN}) (?P<route>{_VERBS})s?", _runs),
    (_RUN, rf"(?:{_PASSER} )?(?:keeps?|keeper|sneaks?|runs?)(?: it| the ball)?",
     "carrier is quarterback"),
    (_RUN, r"direct snap(?: to)?(?: the)?(?: .+)?", "centre snaps to carrier"),
    (_RUN, rf"(?:toss|sweep|pitch|jet sweep|outside){_SIDED}", _wide),
    (_RUN, rf"(?:the )?(?P<man>{_MAN}) (?:sweeps?|(?:runs|goes) (?:wide|outside)){_SIDED}", _wide),
    (_RUN, rf"(?:the )?(?P<who>{_MAN}) (?:dives?|plunges|runs up the middle)",
     lambda m: typed(f"carrier is {_role(m['who'])}", "carrier aims playside A")),
    (_RUN, r"(?P<name>spinner|spin|belly|buck|wedge|blast|iso|dive|counter|trap|power|veer)"
           r"(?: (?:series|play|left|right|strong|weak))?", _series),
    (_RUN, rf"(?:the )?(?P<who>{_MAN}) (?:reverse|around)",
     lambda m: typed(f"carrier is {_role(m['who'])}", "toward away")),
    (_RUN, rf"(?:the )?(?P<who>{_MAN}) counters?",
     lambda m: typed(f"carrier is {_role(m['who'])}", "carrier aims backside A then playside C")),
    (_RUN, r"(?:the |both )?ends? blocks? (?:in|down)(?:side)?", "each end blocks down or climb"),
    (_RUN, r"(?:exchange|hand it on|hand off)(?: behind)?(?: the)?(?: line)?",
     "first is fullback & first aims backside A & handoff first"),
    (_RUN, rf"(?:run|go)(?: it)?{_SIDED} (?:behind|off|over|inside|outside)(?: the)? "
           r"(?P<man>guard|tackle|end)", _behind),
    (_RUN, r"(?:run|hit|go)(?: it)?(?: to| through| at)?(?: the)?(?: (?P<side>left|right))?"
           r" (?P<hole>\d{1,2})(?: ?hole)?", hole_aimed_at),
    (_RUN, r"(?P<hole>\d{2})(?P<side>(?!))? [a-z ]+", hole_aimed_at),
    (_RUN, r"every(?:one|body) blocks? (?:your|his|their|a|the) man",
     "line blocks on or climb & everyone else blocks stalk"),
    (_RUN, r"(?:the )?(?:blocking|up|lead) ?back (?P<does>lead|kick|trap|sift)s?(?: .+)?",
     r"fullback blocks \g<does>"),
    (_RUN, r"(?:both|the|two) guards (?P<does>trap|kick|wrap|lead)s?",
     r"each guard blocks \g<does>"),
    (_RUN, rf"{_PASSER} fakes(?: it)?(?: to)?(?: the)? (?P<who>{_MAN})",
     lambda m: typed(f"{_role(m['who'])} aims playside A")),
    (_RUN, r"(?:the |a )?guard (?P<does>trap|kick)s(?: out)? (?P<whom>.+)", _trapped),
    (_RUN, r"line blocks (?:gap|gaps|gap scheme|inside)", "line blocks down or on or climb"),
    (_RUN, r"line blocks (?:to the )?(?:left|right|straight|hard|outside|everybody|up|forward)",
     "line blocks reach or climb"),
    (_RUN, r"(?P<who>(?:\w+ )?(?:guard|tackle|end)) cut ?off", r"\g<who> blocks cut off"),
    ("concept run tag", r"(?:the )?(?P<who>.+?) (?:goes|is|comes)(?: sent)? in(?:to)? motion.*",
     lambda m: f"a motion is a block of its own, {typed('motion Jet')} with such a line: "
               + typed(f"{m['who'] if len(m['who']) < 3 else 'A'} moves to away, "
                       "2 outside tackle")),
    (_LOOK, r"(?:every(?:one|body) )?(?:plays? |covers? |in )?man(?:[- ]to[- ]man| coverage)?",
     lambda _: f"a line a man, such as {typed('C covers man, strong #1')}"),
    (_LOOK, r"(?P<who>\w\w?) (?P<at>at|in) (?P<side>call|away)(?: side)?,? (?P<rest>.+)",
     lambda m: typed(f"{m['who']} {m['at']} "
                     f"{'strong' if m['side'].casefold() == 'call' else 'weak'}, {m['rest']}")),
    (_LOOK, r"(?P<who>\w\w?) at (?:[\d.]+ )?(?:outside|over|inside) (?!#)[a-z]\w?\b.*",
     lambda m: "a look knows no letters of the offence: "
               + " · ".join((typed(f"{m['who']} in outside end, strong"),
                             typed(f"{m['who']} at strong #1, 1 inside, 5 deep")))),
    (_LOOK, r"every(?:one|body) (?:rush(?:es)?|blitz(?:es)?)",
     lambda _: f"a line a man, such as {typed('M rushes A, either')}"),
    (_LOOK, r"(?:the )?(?:middle )?linebackers?(?: at| are)? (?P<n>\d+)(?: yards?)?"
            r"(?: deep| back| off)?", r"M in 10, strong, \g<n> deep"),
    ("protection", r"every(?:one|body) (?:stays?|blocks?).*",
     lambda _: f"in the concept {typed('protect max')}; here a man a line, such as "
               + typed("helper is back", "helper blocks scan")),
    ("dress", r"(?:in )?(?:both|all)(?: of)?(?: the)? formations", "in all"),
    ("week", r"(?:first play|1st play|start with) (?P<call>.+)",
     lambda m: f"{typed('openers')}, and under it, four spaces deeper, {typed(m['call'])}"),
    ("motion", r"(?:the )?(?:wing(?:back)?|slot|halfback) (?:motions|moves|goes|jets|runs)\b.*",
     lambda _: typed("A moves to away, 2 outside tackle")),
)  # fmt: skip
"""Each row as those of `coach_lines`."""


def _named(found: re.Match[str]) -> str:
    who = _role(found["who"].casefold())
    return {"end": "tight end", "center": "centre", "qb": "quarterback"}.get(who, who)


def _a_job(found: re.Match[str]) -> str:
    who = _named(found)
    if re.fullmatch(r"centre runs [a-z]+(?: \d+)?", found.string.casefold()):
        return ""  # well said: what the code has against it is told
    if who == "centre":
        return f"where the code lets him catch: {typed('centre runs hook 5')}"
    jobs = " · ".join(typed(f"{who} {does}") for does in ("runs flat", "blocks edge"))
    return f"say what he does with `runs` and a route or `blocks` and a rule: {jobs}"


def _a_job_in_a_run(found: re.Match[str]) -> str:
    who = _named(found)
    carried = " · ".join((typed(f"{who} blocks lead"), typed(f"carrier is {who}")))
    return f"say whom he blocks, or that he carries it: {carried}"


def _lineman_does(found: re.Match[str]) -> str:
    lines = " · ".join(typed(f"{w} {found['man']} blocks {found['does']}")
                       for w in ("playside", "backside", "each"))  # fmt: skip
    return f"which man? {lines}"


_ANY = rf"{_MAN}|end|center|centre|qb|quarterback"

LAST_ROWS: tuple[tuple[str, str, Answer], ...] = (
    (_RUN, r"(?P<does>pull|trap|kick)(?: out)?(?: with)?(?: the| a)? (?P<man>guard|tackle)",
     _lineman_does),
    (_RUN, r"(?:the )?(?P<man>guard|tackle) (?P<does>trap|pull|kick)", _lineman_does),
    (_RUN, rf"(?:the )?(?P<who>{_ANY}) .+", _a_job_in_a_run),
    (_RUN, r"(?P<who>\w{1,2}) (?:follows|leads|blocks for)\b.*",
     lambda m: who_by_letter(m["who"], "blocks lead")),
    (_PASS, rf"(?:the )?(?P<who>{_ANY}) .+", _a_job),
    (_FORMATION, r"(?:the )?(?:backs|full house|t|i)(?: formation| split| backs?)*",
     "F at ball, 4 deep & R at away, 2 outside ball, 4 deep"),
    ("motion", r"(?P<who>\w{1,2}) .+", r"\g<who> moves to away, 2 outside tackle"),
    ("dress", r"(?:use|run|call|from) (?P<name>.+)", r"in \g<name>"),
    ("dress", r"(?:flip|mirror|turn)(?: it)?(?: around| over)?", "to both"),
)  # fmt: skip
"""Rows for what no other row knows: whoever is named in the line, and what may be said of him."""

ANY_ROWS: tuple[tuple[str, str, Answer], ...] = (
    (_LOOK, r".+", lambda _: "a line a man, his letter first: where he stands, "
     + " · ".join((typed("F at middle, 12 deep"), typed("E in 5, strong"))) + ", and what he does, "
     + " · ".join((typed("F covers deep middle"), typed("E rushes contain, strong")))),
    (_FORMATION, r".+", lambda _: "a set is written a line a man, his letter first: "
     + " · ".join((typed("X at call, numbers, on line"), typed("R at ball, 5 deep")))),
)  # fmt: skip
"""How a block is written, for a line that no block has."""
