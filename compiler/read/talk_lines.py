"""Sentences of a coach's talk that no line can mean, or that may mean two: the line to type, or
what is asked back. More rows of the table of `own_words`.

Common practice, no published source.
"""

from __future__ import annotations

import re

from stemline.read.coach_lines import Answer, typed

_PLAYS = "concept run tag"
_MAN = r"(?P<who>(?:(?:playside|backside|strong|weak|left|right|each|both) )?[\w#]+)"
_COMES = r"(?:peel\w*|spy|spies|mirrors?)"


def _note(found: re.Match[str]) -> str:
    """What a man of a defence is told beside what he does."""
    told = found["told"].rstrip(".").capitalize()
    lines = typed(f"{found['who']} covers {found['zone']}"), f'`{found["who"]} says "{told}."`'
    return f"what he does, and what he is told: {lines[0]} and {lines[1]}"


def _either_block(found: re.Match[str]) -> str:
    him = re.sub(r"^the ", "", found["him"])
    lines = " · ".join(
        typed(f"{found['who']} blocks {how} {him}") for how in ("crack", "kick", "stalk")
    )
    return f"from outside in, from inside out, or whoever is over him? {lines}"


def _let_by(found: re.Match[str]) -> str:
    who = re.sub(r"^(?:the )?(guard|tackle|end)s$", r"each \1", found["who"])
    line = typed(f"{who} blocks out")
    return f"""the man outside him is his: {line}, and `{who} says "Let him go upfield."`"""


def _walks_up(found: re.Match[str]) -> str:
    lines = typed(f"{found['who']} in over {found['on']}, strong, 1 deep",
                  f"{found['who']} covers {found['zone'] or 'hole'}")  # fmt: skip
    return f"where he stands and what he does are a line each: {lines}"


def _twist(found: re.Match[str]) -> str:
    first, second = found["first"].upper(), found["second"].upper()
    lines = typed(f"{first} rushes B, strong", f"{second} rushes A, strong behind {first}")
    return f"each man's gap, and who waits for whom: {lines}"


def _late(found: re.Match[str]) -> str:
    lines = typed(f"{found['who']} aims {found['at']}", "feet 3")
    return f"how late he goes is said by the feet: {lines}"


def _how_deep(found: re.Match[str]) -> str:
    rest = re.sub(r"^ (?:across|opposite|over|behind) .*", "", found["rest"] or "")
    line = typed(f"{found['who']} runs {found['route']} 16{rest}")
    return f"how deep is a number: {line}"


def _spy(found: re.Match[str]) -> str:
    lines = typed(f"{found['who']} covers hole"), f'`{found["who"]} says "He is yours."`'
    return f"nobody of a look has the quarterback; the hole is under all: {lines[0]} and {lines[1]}"


def _leverage(found: re.Match[str]) -> str:
    stands = f"{found['who']} at strong #1, 1 {found['how'].casefold()}, 5 deep"
    lines = typed(stands, f"{found['who']}{found['more']} covers man")
    return f"where each stands, then whom he has: {lines}"


def _over_end(found: re.Match[str]) -> str:
    rest = found["rest"] or ", 4 deep"
    lines = (typed(f"{found['who']} at {side} tight end{rest}") for side in ("strong", "weak"))
    return f"on which side? {' · '.join(lines)}"


TALK_ROWS: tuple[tuple[str, str, Answer], ...] = (
    (_PLAYS, r"(?:the )?pitch (?:key|read) is .+",
     lambda _: "who is read for the pitch stands in its line: "
               + typed("pitch to back off second man outside tackle if he takes the quarterback")),
    ("run", r"(?P<who>.+?) aims (?P<at>.+?) after .+",
     _late),
    (_PLAYS, r"(?:the )?(?:qb|q|quarterback) fakes (?!to )(?:\w+ )+?to (?:the "
             r")?(?P<to>\w+)(?: .+)?",
     r"quarterback fakes to \g<to>"),
    ("run", rf"{_MAN} folds? (?:inside |in |under )*(?:on|for|to) .+",
     lambda m: "from the front: " + typed(f"{m['who']} blocks crack near linebacker")),
    (_PLAYS, r"(?P<who>(?:the )?[\w# ]+?) lets? (?:the |his |their )?(?:ends?|man|men|"
             r"rush|rusher)\b.*? (?:go|rush|come|by)\b.*",
     _let_by),
    (_PLAYS, rf"{_MAN} pulls? back .+", r"\g<who> blocks hinge"),
    (_PLAYS, rf"{_MAN} blocks? (?P<him>(?:the )?(?:first|second) man outside (?:the "
             r")?tackle|(?:the )?(?:defensive )?end(?: man)?)",
     _either_block),
    ("motion", r"(?P<who>.+?) moves (?:to )?behind the (?P<man>\w+)(?: .+)?",
     lambda m: f"behind a man by his letter: {typed(m['who'] + ' moves to behind R')}"),
    ("concept tag", r"(?P<who>.+?) runs? (?:an? |the )?(?:deep|long) (?P<route>\w+)(?P<rest> "
             r".+)",
     _how_deep),
    (_PLAYS, r"(?P<who>.+?) (?:runs|keeps)(?: it)? if (?:nobody|no one|no-?one|they|he|"
             r"it)\b.*",
     lambda m: f"who throws may keep it: {typed(m['who'] + ' throws to strong #1 or run')}"),
    ("look", rf"(?P<who>\w\w?) (?:{_COMES})(?: on)?(?: the)?(?: \w+)?",
     _spy),
    ("look", r"(?P<who>\w\w?) covers (?P<zone>[a-z]+)(?: ,|,| and) (?P<told>(?:carries|"
             r"carry|walls?|takes|re-?routes?) .+)",
     _note),
    ("look", r"(?P<who>\w\w?)(?P<more>(?:, \w\w?)*) (?:covers? |has |have )?man,? "
             r"(?P<how>inside|outside)(?: leverage| technique)?",
     _leverage),
    ("look", r".+ (?:is|are) (?:taken|covered|peeled|handled) by .+",
     lambda _: "a line a man, his letter first, and `or` for who else he has: "
               + typed("E covers man, tight end or back")),
    ("look", r"(?P<first>\w\w?)(?: and|,|/) ?(?P<second>\w\w?) (?:stunt|twist|game|"
             r"exchange)\b.*", _twist),
    ("look", r"shows? .*(?:pressure|blitz|rush|man|front).*",
     lambda _: "a rush is shown by where its men stand: "
               + typed("M in over guard, strong, 1 deep")),
    ("look", r"(?P<who>\w\w?) (?:walks?|comes|creeps?|moves) up (?:to |over |on "
             r")*(?:the )?(?P<on>guard|tackle|end|cent(?:re|er))"
             r"(?:,? ?(?:then|and|but) (?:drops?|bails?|covers?|gets?)(?: (?:in|back|"
             r"out))?(?: to| into)?(?: the)? (?P<zone>\w+))?.*",
     _walks_up),
    ("look", r"(?P<who>\w\w?) outside (?:the )?(?:tight end|te|y)(?P<rest>,.+)?",
     r"\g<who> in outside end, strong\g<rest>"),
    ("look", r"(?P<who>\w\w?) (?:at|over) (?:the )?(?:tight end|te|y)(?P<rest>,.+)?",
     _over_end),
    ("look", r"(?:(?:everybody|everyone|all) (?:up front|on the line|in front)|(?:the )?front) "
             r"(?:penetrates?|gets? upfield|rush(?:es)?|comes?|goes?|shoots?).*",
     lambda _: "leave the line out: who is in a technique rushes his own gap"),
    ("look", r"(?P<head>only|never) for (?P<what>goal line|short yardage|red zone|"
             r"passing downs?|base)",
     lambda m: "a look is for sets, by their names or what they have: "
               + typed(f"{m['head']} for two backs") + " · " + typed(f"{m['head']} for empty")),
    (_PLAYS, r"(?:the )?(?:(?:strong|weak|left|right|playside|backside) )?(?:guards?|"
             r"tackles?|line(?:men)?|cent(?:re|er))\b.*\b(?:lets?|releases?|peels?|"
             r"alley)\b.*",
     lambda _: "the line of a screen gets out by its protection: " + typed("protect screen")),
    ("concept tag", r"(?P<who>back|fullback|tight end|[a-z]\w?) (?:sets?|blocks?|shows?|"
             r"waits?)\b.*(?:then|and) (?:slips?|leaks?|releases?|gets?|goes) "
             r"(?:out)?(?: to)?(?: the)?(?P<side> (?:weak|strong|left|right|call|away|"
             r"field|boundary))?",
     r"\g<who> runs slow screen\g<side>"),
)  # fmt: skip
"""Each row as those of `coach_lines`; asked before all others."""
