"""Lines of a coach who half remembers the notation: a place, a side or a second choice behind a
comma that the line does not have, and a depth said as another kind of line says it. More rows of
the table of `own_words`, asked before all others.

Common practice, no published source.
"""

from __future__ import annotations

import re

from stemline.football.offence.routes import LIBRARY
from stemline.read.coach_lines import Answer, typed
from stemline.read.read_runs import WAYS

_SIDE = r"left|right|strong|weak|call|away|field|boundary|playside|backside"
_PLAYS = "concept run tag"


def _one_way(found: re.Match[str]) -> str:
    line, side = typed(f"toward {found['side']}"), found["side"].casefold()
    if side.endswith("tight end"):
        return f"{line}: where none stands, or one on each side, it goes by the strong side"
    return line


def _deep_in_a_route(found: re.Match[str]) -> str:
    """`deep` is a depth of men who line up; a route's is a number, behind the line said so."""
    ends = re.search(r" (?:to|over|across|decides) |^decides", found["head"])
    at = found["at"] if ends and found["at"] else ""
    lines = " · ".join(
        typed(f"{found['head']} {at}{found['n']}{behind}{found['rest']}")
        for behind in ("", " behind")
    )
    return f"past the line, or behind it? {lines}"


def _at_a_depth(found: re.Match[str]) -> str:
    """A route's depth stands behind it without `at`."""
    rest = re.sub(r" (?:coverage|defen[cs]e)$", "", found["rest"] or "")
    rest = re.sub(r"\bthen (?:turns|goes|breaks) ", "then ", rest)
    return typed(f"{found['head']} {found['n']}{rest}")


def _strokes(found: re.Match[str]) -> str:
    """Strokes follow each other behind `then`."""
    pieces = re.split(r"\s*(?:,| and then | and | then )\s*", found["path"])
    return typed(f"{found['head']} {' then '.join(p for p in pieces if p)}")


def _quoted(found: re.Match[str]) -> str:
    return f"""put a coach's words in quotes: `{found["head"]} "{found["text"]}"`"""


def _sided(found: re.Match[str]) -> str:
    """A defender's place that is on both sides of the ball."""
    lines = " · ".join(
        typed(f"{found['head']} {side} {found['rest']}" if "#" in found["rest"]
              else f"{found['head']} {found['rest']}, {side}")
        for side in ("strong", "weak")
    )  # fmt: skip
    return f"on which side? {lines}"


def _job(found: re.Match[str]) -> str:
    does = "blocks" if found["job"].casefold() in _RECEIVER_BLOCKS else "runs"
    return typed(f"{found['who']} {does} {found['job']}")


_SHOWS = {"0": "man", "1": "middle closed", "2": "middle open", "3": "middle closed",
          "4": "middle open", "6": "middle open"}  # fmt: skip
_RECEIVER_BLOCKS = ("stalk", "crack", "arc", "edge", "lead")
_ROUTES = "|".join(sorted((name for name in LIBRARY if name.isalpha()), key=len, reverse=True))
_RULE = (
    r"(?:strong|weak|call|away) (?:#\d|inside|outside)|(?:strong |weak )?(?:back|tight end|wing)"
    r"|fullback|quarterback|nobody"
)
_BLOCKS = "|".join(sorted(WAYS, key=len, reverse=True))
_BEHIND = r",? (?P<n>\d+(?:\.\d+)?)(?: yards?)? (?:behind|back)(?: the (?:line|ball))?"
_GIVES = "hands|tosses|pitches|throws|shovels"
_HERE = r"left|right|mid|hash|goal"

COORDINATOR_ROWS: tuple[tuple[str, str, Answer], ...] = (
    ("run concept tag", r"toward (?:the )?(?P<side>[^,]+?)(?: or |, ?).+", _one_way),
    (_PLAYS, r"kill to (?P<to>[^,]+), ?(?P<side>away|call|left|right) when (?P<when>.+)",
     r"kill to \g<to> \g<side> when \g<when>"),
    (_PLAYS, rf"(?P<who>.+?) aims outside(?: the)?(?: tight)? ends?,? (?P<side>{_SIDE})(?: side)?",
     r"\g<who> aims \g<side> outside the end"),
    (_PLAYS, rf"(?P<who>.+?) aims (?P<point>[ABCD]|guard|tackle|end)(?: gap)?, ?"
             rf"(?P<side>{_SIDE})(?: side)?", r"\g<who> aims \g<side> \g<point>"),
    (_PLAYS, rf"(?P<head>.+? (?:{_GIVES}) to .+ at \d+)(?: yards?)? (?:deep behind|deep back|back)",
     r"\g<head> behind"),
    (_PLAYS, rf"(?P<who>.+?) (?P<does>{_GIVES}) (?!to )(?P<to>.+? (?:at|or|after) .+)",
     r"\g<who> \g<does> to \g<to>"),
    (_PLAYS, r"(?P<head>.+ blocks (?:kick|trap|sift)) (?:out |to )?(?:the )?end(?: man)?",
     r"\g<head> end man on line"),
    ("concept run tag route", r"(?P<head>(?:.+ runs|stroke|.* then|decides) .*?)(?P<at>at )?"
     r"(?P<n>\d+(?:\.\d+)?)(?: yards?)? deep(?P<rest>.*)", _deep_in_a_route),
    ("formation motion look", rf"(?P<head>.+? (?:at|in|to|from) \S.*?){_BEHIND}(?P<rest> then .+)?",
     r"\g<head>, \g<n> deep\g<rest>"),
    (_PLAYS, r"(?P<head>(?:read|pressure) .*?) at (?P<foot>\w+)(?P<rest>.*)",
     r"\g<head> on \g<foot>\g<rest>"),
    (_PLAYS, rf"(?P<who>\w+) (?P<rule>{_RULE})", r"\g<who> is \g<rule>"),
    (_PLAYS, rf"(?P<who>everyone else(?: strong| weak)?|every other back) "
             rf"(?P<job>{'|'.join(_RECEIVER_BLOCKS)}|{_ROUTES})s?", _job),
    (_PLAYS, rf"(?P<head>.+ blocks [^,]+?)(?: then|,) (?P<job>{_BLOCKS})",
     r"\g<head> or \g<job>"),
    (_PLAYS, r"(?P<does>give|pull|quarterback (?:gives|keeps|(?:throws|pitches) to .+?))"
             r" (?:when|as|on) (?P<what>.+)", r"\g<does> if \g<what>"),
    (_PLAYS, r"(?P<head>.+ runs (?:(?! to | over | up )[a-z ])+?) at (?P<n>\d+)(?: yards?)?"
             r"(?P<rest> .*)?", _at_a_depth),
    (_PLAYS, r"(?P<head>.+ when (?:.*[ ,])?(?:man|zone)) (?:coverage|defen[cs]e)",
     r"\g<head>"),
    (_PLAYS, r"(?P<head>.+) when (?:they|he|the defen[cs]e) (?:plays?|is|are)(?: in)? "
             r"(?P<look>zone|man|press|off)", r"\g<head> when \g<look>"),
    (_PLAYS, r"spot (?P<name>\w+) (?P<place>(?:low|high|deep|over|\d+ deep)\b.*)",
     r"spot \g<name> is \g<place>"),
    (_PLAYS, r"pair (?P<high>.+?) (?:over|on top of|and) (?P<low>.+)",
     r"pair \g<high> above \g<low>"),
    ("run", r"pitch(?: it| the ball)? (?P<rest>if .+)", r"pitch to back \g<rest>"),
    ("tag", r"swap (?P<one>[^,]+?)(?:,| and| for) (?P<other>.+)", r"swap \g<one> with \g<other>"),
    ("route", r"(?P<head>stroke) (?P<n>\d+) (?P<way>up|in|out|back)", r"stroke \g<way> \g<n>"),
    ("route", r"(?P<head>stroke) (?P<path>.+?(?:,| and ).+)", _strokes),
    ("route", r"depth (?:of|is|at) (?P<n>\d+)", r"depth \g<n>"),
    ("formation", r"(?P<who>\w{1,2}) at (?:the )?(?:shot)?gun,? (?P<n>\d+)(?: deep| yards?)?",
     r"\g<who> at ball, \g<n> deep"),
    ("formation", r"(?P<who>\w{1,2}) at (?:the )?(?:left|right) of (?:the )?(?P<of>\w{1,2})"
                  r"(?P<rest>,.*)?", r"\g<who> at beside \g<of>\g<rest>"),
    ("motion", r"(?P<who>[\w# ]+?) moves across(?: the)? formation",
     r"\g<who> moves to away, 2 outside tackle"),
    ("motion", r"(?P<head>.+? moves .+) then (?:returns?|comes back|goes back|home)",
     r"\g<head> then back"),
    ("protection", r"point (?:the )?(?:mike|mac|m)", "point middle linebacker"),
    ("protection", r"toward (?:the )?(?P<man>back|tight end|launch) away",
     r"toward away from \g<man>"),
    ("protection", r"(?P<who>.+) blocks (?:scan )?(?:from )?inside to out(?:side)?",
     r"\g<who> blocks scan inside out"),
    ("look", r"(?P<head>.+ (?:at|in) .+), (?P<n>\d+) (?:yards?|yds?)(?: off)?",
     r"\g<head>, \g<n> deep"),
    ("look", r"(?P<who>\w{1,2}) covers man,? on (?P<whom>.+)",
     r"\g<who> covers man, \g<whom>"),
    ("formation", r"line (?P<men>\w{1,2}(?: \w{1,2})+)",
     lambda m: typed(f"line {', '.join(m['men'].split())}")),
    ("look", r"(?P<head>\w{1,2} in) (?:an? |the )?(?P<what>\w+)[- ]tech(?:nique)?(?P<rest>,.*)?",
     r"\g<head> \g<what>\g<rest>"),
    ("look", r"(?P<head>\w{1,2} in) (?P<rest>\d\d?i?|[ABCD](?: gap)?)", _sided),
    ("look", r"(?P<head>\w{1,2} at) (?P<rest>#\d.*)", _sided),
    ("look", r"shows cover ?(?P<cover>[012346])", lambda m: typed(f"shows {_SHOWS[m['cover']]}")),
    ("dress", rf"never (?P<what>.+) from (?P<name>(?!{_HERE}).+)",
     r"never \g<what> in \g<name>"),
    ("dress", rf"only from (?:the )?(?P<spots>(?:{_HERE}).*)", r"from \g<spots>"),
    ("dress", r"(?P<head>(?:best |never )?from .+?) or (?P<other>.+)", r"\g<head>, \g<other>"),
    ("dress", rf"with (?P<who>\w{{1,2}}|(?:strong|weak) #\d) (?P<route>(?:{_ROUTES})(?: \d+)?)",
     r"with \g<who> runs \g<route>"),
    ("dress", r"call (?P<call>(?:(?! as ).)+) (?P<name>\w+)", r"call \g<call> as \g<name>"),
    ("playbook", r"house (?P<what>numbers|gun) (?P<n>\d+(?:\.\d+)?)", r"house \g<what> is \g<n>"),
    ("personnel", r"(?P<who>\w{1,2}) is (?P<n>#?\d{1,2})",
     lambda m: typed(f"{m['who']} is slot, {m['n'].lstrip('#')}")),
    ("install", r"(?P<head>(?:day|week) \d+),? (?P<date>\d{4}-\d\d?-\d\d?)",
     r"\g<head>, \g<date>"),
    ("week", r"openers (?P<call>.+)", lambda m: "on a line of its own "
     f"{typed('openers')}, and under it, four spaces deeper, {typed(m['call'])}"),
    ("concept run tag formation motion route protection look dress week install playbook personnel",
     r"(?P<head>say|idea|caution|signal|[\w #]+ says) (?P<text>[^\"]+)", _quoted),
)  # fmt: skip
"""Each row as those of `coach_lines`."""
