"""Does a coach's sentence put a head, helmet, face or neck into a block or a tackle?

It goes by words and by where they stand to each other, so it can be wrong both ways: it is a
reminder and no ruling. Words that only sound so (head up on the guard, across his face, turn your
head, the neck of the field) are passed by. English only.
"""

from __future__ import annotations

import re
from functools import cache

_PARTS = r"(?:head|helmet|face ?mask|face|forehead|chin|neck|throat|hat|crown)"
_OWN = rf"(?:{_PARTS}|ear)"
_HIS = rf"(?:{_PARTS}|jaw|ear ?hole)"
_BODY = (
    r"(?:ribs?|rib ?cage|chest|sternum|breast ?plate|numbers?|hips?|thighs?|knees?|legs?|belly|"
    r"stomach|gut|belt|armpits?|arm|shoulders?|pads?|back|side|body|jersey|bow|ball)"
)
_OF_HIM = (
    r"(?:(?:his|her|the|their|a|an|[a-z]+'s)\s+)?(?:(?:near|far|inside|outside|upfield|downfield|"
    r"play ?side|back ?side|left|right|front|back|thigh|ball)\s+){0,2}"
)
_MAN = r"(?:him|them|somebody|(?:the|their|a)\s+(?:man|defender|end|nose|linebacker|runner))"
_PUT = (
    r"(?:put|puts|putting|get|gets|keep|keeps|stick|sticks|bury|buries|place|places|work|works|"
    r"drive|drives|shove|shoves|plant|plants|slide|slides)"
)
_STRIKE = (
    r"(?:hit|hits|hitting|strike|strikes|punch|punches|jab|club|slap|slaps|butt|butts|ram|rams|"
    r"smash|drill|block|blocks|blocking|tackle|tackles|tackling|grab|grabs|drive|drives|lift)"
)
_NOT_TURNED = (
    r"(?!\s+(?:up|out|back|around|turned|high|away|behind|coach|first down|start|count|set|"
    r"phones?|gear))"
)

_RULES = (
    # head in his ribs, head on his upfield side, head across his bow
    rf"(?<![\w'])(?<!his )(?<!her )(?<!their )(?<!'s )\b{_OWN}\s+"
    rf"(?:in|on|across|through|under|inside)\s+{_OF_HIM}{_BODY}\b",
    # face to his outside number: no man "heads" so, but a helmet or a face does
    rf"(?<![\w'])(?<!his )(?<!her )(?<!their )(?<!'s )\b(?:helmet|face ?mask|face|chin|hat)\s+"
    rf"(?:to|into|at|against)\s+{_OF_HIM}{_BODY}\b",
    # put your head on him, get your face into his chest
    rf"\b{_PUT}\s+(?:your|the|a|his|their|my)\s+{_OWN}\s+"
    rf"(?:in|on|into|onto|to|at|against|across|through|under|inside)\s+"
    rf"(?:{_MAN}|{_OF_HIM}{_BODY})\b",
    # hit him in the head, punch under the chin, block him with your helmet
    rf"\b{_STRIKE}\s+(?:(?:him|them|it|up|high|hard|a|man|the|defender|end|runner|linebacker|"
    rf"nose|hands?|in|on|at|to|under|into|around|across|with|his|their|your)\s+){{0,5}}"
    rf"(?:the|his|their|your|a)\s+{_HIS}\b{_NOT_TURNED}",
    # hands to the face, forearm under his chin, shoulder into the neck
    rf"\b(?:hands?|fore ?arms?|arms?|fists?|elbows?|shoulders?|pads?|punch)\s+"
    rf"(?:to|on|under|into|onto|around|against|through|at)\s+(?:the|his|their|a)\s+{_HIS}\b"
    rf"{_NOT_TURNED}",
    # lead with the head, head first
    rf"\b(?:lead|leads|leading|go|goes|first)\s+(?:in\s+)?with\s+(?:your|the|his)\s+{_OWN}\b"
    rf"{_NOT_TURNED}",
    r"\b(?:head|face|helmet)[ -]first\b(?! down)",
    r"\bhelmet[ -](?:to|on)[ -]helmet\b",
    # words that have no other meaning
    r"\bspear(?:s|ing)?\s+(?:him|them|the|a|his)\b",
    r"\b(?:butt[ -]?block|face[ -]?tackle|head[ -]?butt|head[ -]?hunt|head[ -]?shot)\w*\b",
    r"\bear[ -]?hole\s+(?:him|them|the|a)\b",
    r"\b(?:take|takes|knock|knocks|rip|rips)\s+(?:his|their)\s+(?:head|helmet)\s+off\b",
)

_SPOKEN_OF = re.compile(
    r"\b(?:head|helmet|face|forehead|chin|neck|throat|hat|crown|ear|jaw|spear|butt)", re.IGNORECASE
)
"""How a word of every rule begins: most sentences hold none."""

_BEFORE = re.compile(
    r"\b(?:(?:not|never|no|nobody|don't|cannot|can't|without|instead|turn|turns|snap|whip|swivel)"
    r"(?:\W+[\w']+){0,3}|(?:across|cross|crosses|past|over|behind)(?:\W+[\w']+)?)\W*$",
    re.IGNORECASE,
)
"""What just before the words turns them round: a "never", a head that is turned, a face that is
run across."""

_THROWN = re.compile(r"\b(?:ball|throw|thrown|pass|catch|lob)\b", re.IGNORECASE)
"""A ball may be thrown at a helmet; nobody is hit."""
_CLAUSE = re.compile(r"[^.,;:!?]+")


@cache
def _rules() -> tuple[re.Pattern[str], ...]:
    """Most playbooks have no sentence that has to be held against them."""
    return tuple(re.compile(rule, re.IGNORECASE) for rule in _RULES)


def head_contact(sentence: str) -> tuple[int, int] | None:
    """Where the words begin and end, as places in the text; None where it has none such."""
    if not _SPOKEN_OF.search(sentence):
        return None
    for clause in _CLAUSE.finditer(sentence):
        words = clause.group()
        for rule in _rules():
            hit = rule.search(words)
            if hit is None or _BEFORE.search(words[: hit.start()]):
                continue
            if _THROWN.search(words) and _STRIKES.match(hit.group()):
                continue
            return clause.start() + hit.start(), clause.start() + hit.end()
    return None


_STRIKES = re.compile(rf"{_STRIKE}\b", re.IGNORECASE)
