"""How a label or verb of a line goes on in the mouth, and words that ask for an article."""

from __future__ import annotations

import re

from stemline.diagnostics.in_words import together

LABELS = {
    "at": "lines up at", "toward": "it goes toward", "kill": "we kill it",
    "extends": "it extends", "season": "the season is", "code": "the code is",
    "level": "the clock is set to",
    "against": "we draw against", "draw": "we draw", "quarterback": "the quarterback's hand is",
    "scramble": "on a scramble", "theme": "the theme is", "contact": "full contact is",
    "lower": "we count and do not print", "sections": "the book's sections are",
    "line": "the line is", "splits": "the splits are", "people": "the personnel is",
    "signal": "the signal is", "word": "the word is", "depth": "its depth is",
    "stroke": "it goes", "decides": "he decides", "family": "its family is", "suits": "it suits",
    "feet": "the feet are", "read": "we read", "pressure": "under pressure we read",
    "spot": "the spot", "claims": "it claims", "pair": "we pair", "needs": "it needs",
    "pick": "we pick", "alert": "we are alert to", "protect": "the protection is",
    "handoff": "the handoff goes to", "give": "we give", "pull": "we pull", "throw": "we throw",
    "pitch": "we pitch", "join": "it joins", "install": "it is put in on", "point": "the point is",
    "hot": "the hot throw is", "league": "the league's", "strength": "the strength is",
    "only": "it is lined up only against",
    "never": "it is never lined up against", "shows": "it shows", "keeps": "it keeps",
    "swap": "it swaps",
    "tempo": "the tempo is", "date": "it is on", "move": "we move",
    "short": "the short name of", "number": "the number of", "numbers": "the numbers are",
    "practice": "practice is", "quiz": "we quiz",
}  # fmt: skip
"""Labels and verbs that are short in a text and longer in the mouth."""
DOING = {
    "runs": "running", "blocks": "blocking", "aims": "aiming for", "covers": "covering",
    "rushes": "rushing", "in": "standing in", "at": "lining up at", "snaps": "snapping",
    "hands": "handing", "tosses": "tossing", "pitches": "pitching", "throws": "throwing",
    "shovels": "shovelling", "gives": "giving", "keeps": "keeping",
}  # fmt: skip
"""How a verb goes on behind "instead of", where a man now does another thing."""
AS_VERBS = {
    "slide": "sliding", "reach": "reaching", "hinge": "hinging", "scan": "scanning",
    "release": "releasing", "chip": "chipping", "stalk": "stalking", "crack": "cracking",
    "arc": "arcing",
}  # fmt: skip
"""Jobs of blockers that are verbs themselves, a line does not "block slide"; and how each goes on
"instead of"."""
_LOOK = r"(?:press|man|zone)"
_WHEN = (
    (re.compile(r"(\d+ or (?:more|fewer) in) box"), r"with \1 the box"),
    (re.compile(rf"({_LOOK}(?: or {_LOOK})*)"), r"against \1"),
    (re.compile(r"off"), "against off coverage"),
    (re.compile(r"middle (open|closed)"), r"when the middle is \1"),
    (re.compile(r"(\dx\d(?: or \dx\d)*)"), r"in \1"),
    (re.compile(r"motion to (strong|weak)"), r"when motion goes to the \1 side"),
    (re.compile(r"motion (across|in|out)"), r"when motion goes \1"),
)  # fmt: skip
"""Conditions that have a shorter way into a sentence than "when"."""
WHOLE = ("line", "feet", "lower")
"""Lists whose order counts or that are short: what was is said whole."""
_DUTY = re.compile(r"([\w -]+), (strong|weak|middle)((?: behind \w+)?(?: after .+)?)")
"""A zone or a gap, its side, and how he goes there."""
_HOUSE = {
    "numbers is": "the numbers are at {} yards",
    "gun is": "in the gun the quarterback is at {} yards",
    "middle field is": "from the middle we take the {} side as the field",
}
_ARTICLES = (
    (re.compile(r"\bover ball\b"), "over the ball"),
    (re.compile(r"\bup 1 (inside|outside) "), r"on a line a yard \1 "),
    (re.compile(r"\bup ([\d.]+) (inside|outside) "), r"on a line \1 yards \2 "),
    (re.compile(r"\bafter 0\.5 seconds?\b"), "after half a second"),
    (re.compile(r"\bmiddle (open|closed)\b"), r"the middle \1"),
    (re.compile(r"\bleft hash, right hash\b"), "either hash"),
    (re.compile(r"\bon (hitch|reset|line)\b"), r"on the \1"),
    (re.compile(r"\boff line\b"), "off the line"),
    (re.compile(r"\b(in) (box|middle)\b"), r"\1 the \2"),
    (re.compile(r"\b(to|into) (right|left|field|boundary|carrier|quarterback)\b"), r"\1 the \2"),
    (re.compile(r"\b(inside|outside) (numbers|hash|tackle|guard|sideline)(?! gap)\b"),
     r"\1 the \2"),
    (re.compile(r"\b(playside|backside) edge\b"), r"the \1 edge"),
    (re.compile(r"\bto the (right|left|field|boundary), (right|left|field|boundary)\b"),
     r"to the \1 and the \2"),
    (re.compile(r"\bfrom (left hash|right hash|middle)\b(?! closed| open)"), r"from the \1"),
    (re.compile(r"\bgoal line 1\b"), "goal line, a yard out"),
    (re.compile(r"\bgoal line (\d+)\b"), r"goal line, \1 yards out"),
)  # fmt: skip


def value_aloud(value: str) -> str:
    """A value as it is read aloud; a coach's own sentence as it is written."""
    if '"' in value:
        return value
    value = value.replace(" > ", ", then ")
    for found, said in _ARTICLES:
        value = found.sub(said, value)
    return value


def when_aloud(guard: str, verb: str = "") -> str:
    """What must be true of a line with this verb, as a part of a sentence: "in 3x1 and against
    press"."""
    return together([_condition(part, verb) for part in guard.split(", ")])


def _condition(text: str, verb: str) -> str:
    for found, said in _WHEN:
        if whole := found.fullmatch(text):
            return whole.expand(said)
    if verb == "kill" and text[:1].isupper():
        return f"against {text}"
    return f"when {value_aloud(text)}"


def duty_aloud(verb: str, value: str) -> str:
    """What a defender covers or rushes: "the weak flat", "the strong B gap behind T"."""
    found = _DUTY.fullmatch(value)
    if found is None:
        return value_aloud(value)
    what, side, rest = found.groups()
    gap = " gap" if verb == "rushes" and len(what) == 1 else ""
    return f"the {side} {what}{gap}{value_aloud(rest)}"


def label_words(verb: str, value: str) -> tuple[str, str]:
    """A line's label and its value, in words."""
    if verb == "kill" and value.startswith("word "):
        return "what kills a call is the", value
    if verb == "house":
        figure, _, said = value.rpartition(" ")
        if figure in _HOUSE:
            return "", _HOUSE[figure].format(said).replace("the none", "neither")
    if verb in ("only", "never"):
        return LABELS[verb], value.removeprefix("for ")
    if verb == "suits":
        return LABELS[verb], together(value.split(", ")).replace("red zone", "the red zone")
    if verb == "snap":
        return "the ball is snapped" if value.startswith("to ") else "at the snap:", value
    if verb == "key":
        return "the key" if " is " in value else "the key is", value
    return LABELS.get(verb, verb), value
