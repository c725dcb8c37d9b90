"""Lines as they are said at a clinic: men by their letters, a route with words for the way it has
anyhow, a side or a formation at the end. More rows of the table of `own_words`.

Common practice, no published source.
"""

from __future__ import annotations

import re

from stemline.read.coach_lines import Answer, rule_of_letter, typed

_SIDE = r"left|right|field|boundary|both"
_PLAYS = "concept run tag"
_SHORT_ROUTES = "swing|flat|slant|post|go|fade|hitch|out|in|curl|corner|wheel|seam|shoot|cross"
_LANDMARK = r"(?:ball|guard|tackle|end|hash|divide|numbers|sideline)"


def _by_rule(text: str) -> str:
    """The text with each letter, written large, as the rule of who mostly wears it."""
    return re.sub(r"(?<![\w#])[A-Z](?![\w])", lambda m: rule_of_letter(m[0]), text)


def _who(found: re.Match[str]) -> str:
    line = typed(f"{found['head']}{rule_of_letter(found['letter'])}{found['rest'] or ''}")
    return f"no formation lines up a man {found['letter']}: say where he stands, such as {line}"


def _order(found: re.Match[str]) -> str:
    return typed(f"{found['what']} {_by_rule(found['order'])}")


def _one_side(found: re.Match[str]) -> str:
    first = [f"in {found['first']}"] if found["first"] else []
    return typed(*first, f"in {found['last']} to {found['side']}")


def _in_a_set(found: re.Match[str]) -> str:
    named = found["set"][0].isupper()
    return typed(f"{found['line']} when {found['set']}") if named else typed(found[0])


def _outermost(found: re.Match[str], *sides: str) -> str:
    lines = " · ".join(typed(f"{side} {found['line']}") for side in sides)
    return f"which side? {lines}"


def _out_late(found: re.Match[str]) -> str:
    lines = typed(f"{found['who']} runs check"), typed(f"{found['who']} blocks chip")
    return f"he looks for a rusher before he goes, or strikes one: {lines[0]} · {lines[1]}"


def _blocks(found: re.Match[str]) -> str:
    if found.string.casefold().startswith(("line", "centre", "center")):
        return "leave the line out: they block as the protection says, `protect five slide`"
    return (
        "whom? those out wide " + typed("everyone else blocks stalk") + ", a man who stays in "
        + typed("back blocks inside out") + " or " + typed("protect max")
    )  # fmt: skip


CLINIC_ROWS: tuple[tuple[str, str, Answer], ...] = (
    (_PLAYS, r"(?:the )?hot(?: route| man| read)? (?:is |to )?(?P<man>.+?) (?:if|when) .+",
     r"pressure \g<man>"),
    (_PLAYS, rf"(?P<head>.+ runs (?:[a-z]+ )+?(?:\d+ )?)at (?P<place>(?:\d+ (?:inside|outside) )?"
             rf"{_LANDMARK})(?P<rest> .+)?", r"\g<head>to \g<place>\g<rest>"),
    (_PLAYS, r"(?P<line>.+ (?:runs|blocks|aims) .+?) (?:only )?(?:in|from) (?P<set>\w+(?: \w+)?)",
     _in_a_set),
    (_PLAYS, r"(?:all |the |wide )*receivers? (?P<does>block|run)s? (?P<what>.+)",
     r"everyone else \g<does>s \g<what>"),
    ("concept tag", rf"(?P<route>{_SHORT_ROUTES}) (?P<who>back|fullback|tight end|"
                    r"(?:strong|weak) (?:#\d|inside))", r"\g<who> runs \g<route>"),
    ("look", r"(?P<who>\w{1,2}) rush(?:es)? (?P<gap>[a-d])(?: gap)? (?:and|or) [a-d],? ?"
             r"(?P<side>strong|weak)",
     lambda m: "a man rushes one gap: "
               + typed(f"{m['who']} rushes {m['gap'].upper()}, {m['side']}")),
    ("concept tag", r"(?P<who>.+?) (?:blocks|helps|chips) (?:.+? )?(?:then|and) (?:runs? |goes )?"
                    r"(?:a |the )?(?!climb)\w+.*", _out_late),
    ("concept tag",
     r"(?:everyone|everybody|all)(?: else)? blocks?|(?:line|cent(?:re|er)) blocks?",
     _blocks),
    ("run", r"cent(?:re|er) blocks?", "centre blocks on or climb"),
    ("concept tag", r"(?P<who>.+?) blocks (?:the )?edge,? (?:on )?(?:the )?(?P<side>left|right|"
                    r"strong|weak|playside|backside|call|away)(?: side)?",
     r"\g<who> blocks \g<side> edge"),
    ("concept tag", r"(?P<who>.+?) blocks the (?P<side>left|right|strong|weak|playside|"
                    r"backside) edge",
     lambda m: f"he has the edge where he stands: {typed(m['who'] + ' blocks edge')}; "
               f"a protection says which: {typed('helper blocks backside edge')}"),
    ("protection", r"(?P<who>.+?) blocks .+? then (?:release|leak|get out|go)s?(?: out)?",
     r"\g<who> blocks check then release"),
    ("protection", r"(?P<who>.+) blocks edge,? (?P<side>playside|backside)",
     r"\g<who> blocks \g<side> edge"),
    ("protection", r"(?P<head>.+ blocks scan (?:(?!>).)+?) then (?P<rest>.+)",
     r"\g<head> > \g<rest>"),
    ("dress", rf"in (?:(?P<first>.+), *)?(?P<last>[^,]+?) only(?: to)?(?: the)? (?P<side>{_SIDE})",
     _one_side),
    ("look", r"(?P<who>\w{1,2}) (?:at|over)(?: the)? back(?P<deep>,.+)?",
     r"\g<who> at ball\g<deep>"),
)  # fmt: skip
"""Each row as those of `coach_lines`; asked before all others."""

LETTER_ROWS: tuple[tuple[str, str, Answer], ...] = (
    ("run", r"(?P<line>(?:outside|inside) (?:runs|blocks) .+)",
     lambda m: _outermost(m, "playside", "backside")),
    ("concept tag", r"(?P<line>(?:outside|inside) (?:runs|blocks) .+)",
     lambda m: _outermost(m, "strong", "weak")),
    (_PLAYS, r"(?P<head>.+ (?:snaps|hands|tosses|pitches|shovels|throws|fakes) to )"
             r"(?P<letter>\w{1,2})(?P<rest> .+)?", _who),
    (_PLAYS, r"(?P<what>read|pressure|alert) Q\w?(?: .+)?",
     lambda m: "the quarterback looks at a man who gets open: " + typed(f"{m['what']} strong #1")),
    (_PLAYS, r"(?P<what>read|pressure|alert) (?P<order>.+)", _order),
)  # fmt: skip
"""Rows for a letter where a role is meant: asked only where no line says who somebody is."""
