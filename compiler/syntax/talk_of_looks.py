"""Sentences of a coach's talk about looks, each with the line it means: the tables of `talk_said`.

A row has the kinds of block, a pattern for the whole line in lower case, and the line, with the
pattern's groups as they were written. Common practice, no published source.
"""

from __future__ import annotations

from stemline.syntax.talk_of_plays import SIDE

_MEN = r"(?P<who>[a-z]\w?(?: , [a-z]\w?)*)"
"""Defenders by their letters."""
_SLANTS = r"(?:slants?|pinches|pinch|knifes?|angles?|crosses|stunts?)"

LOOKS: tuple[tuple[str, str, str], ...] = (
    # A defence.
    (
        "look",
        rf"{_MEN} (?:is )?(?:lines? up )?(?:heads? ?up|nose up|straight up) (?:on|over|"
        r"with) (?:the )?"
        r"(?P<on>guard|tackle|end|cent(?:re|er)|c)(?P<rest> ,.+)?",
        "{who} in over {on}{rest}",
    ),
    (
        "look",
        rf"{_MEN} (?:is )?stack(?:s|ed)?(?: up)? (?:behind|over|on) (?:the "
        r")?(?P<on>\w\w?)(?P<rest> ,.+)?",
        "{who} in behind {on}{rest}",
    ),
    (
        "look",
        rf"{_MEN} (?:is )?(?:(?:up |in )?press(?:es)?|jams?|bumps?)(?: up)?(?: on| "
        r"over)? (?:the )?(?P<on>.+)",
        "{who} at {on} , press",
    ),
    (
        "look",
        rf"{_MEN} (?:is |plays )?off(?: on| of| over)? (?:the )?(?P<on>(?:(?:{SIDE}) "
        r")?#\d.*)",
        "{who} at {on} , off",
    ),
    (
        "look",
        rf"{_MEN} (?:is |lines up )?on (?:the )?(?P<on>hash|numbers|divide)(?P<rest> ,.+)?",
        "{who} at {on}{rest}",
    ),
    (
        "look",
        rf"{_MEN} (?:is |lines up )?in (?:the )?(?:deep )?middle(?: of the "
        r"field)?(?P<rest> ,.+)?",
        "{who} at middle{rest}",
    ),
    (
        "look",
        rf"{_MEN} (?:(?:comes|rushes|blitzes|loops|goes) )?(?:around |out |outside )*"
        rf"(?:(?:to|and|for) )?contains?(?P<side>(?: ,)? (?:{SIDE}))?(?: side)?",
        "{who} rushes contain{side}",
    ),
    (
        "look",
        rf"{_MEN} (?:comes|blitzes|rushes|loops|goes) (?:around |off |from )+(?:the "
        r")?(?:edge|outside|end|corner)"
        rf"(?P<side>(?: ,)? (?:{SIDE}))?",
        "{who} rushes contain{side}",
    ),
    (
        "look",
        rf"{_MEN} {_SLANTS} (?:down|inside)",
        "{who} rushes inside gap",
    ),
    (
        "look",
        rf"{_MEN} (?:slants?|loops?|crosses|stunts?|comes|goes|shoots?|knifes?|"
        r"angles?)(?: down| inside| in| out| outside| across)*"
        r"(?: (?:in|to|into|through))?(?: the)? (?P<gap>[abcd])(?: gap)?(?: "
        r",)?(?P<rest> .+)?",
        "{who} rushes {gap}{rest}",
    ),
    (
        "look",
        rf"{_MEN} (?:bails?|rotates?|sinks?|runs|spins?|rolls?)(?: back| down| over)* "
        r"(?:to|into)"
        r"(?: the)?(?: deep)? middle(?: third| of the field)?",
        "{who} covers deep middle",
    ),
    (
        "look",
        rf"{_MEN} (?:bails?|rotates?|sinks?|bounces?|runs|spins?|rolls?|buzzes)(?: "
        r"back| down| over| out| up)*"
        r" (?:to|into)(?: the)?(?: deep)? (?P<zone>.+)",
        "{who} covers {zone}",
    ),
    (
        "look",
        rf"{_MEN} (?:plays|takes|has) (?:the )?(?:deep )?middle(?: of the field)?"
        r"(?: and .+)?",
        "{who} covers deep middle",
    ),
    (
        "look",
        rf"{_MEN} (?:takes?|has|gets?|covers?) (?:the )?(?P<whom>(?:(?:{SIDE}) "
        rf")?(?:tight end|back|backs|#\d)(?: (?:{SIDE}))?)"
        r"(?: man(?: to man)?)?",
        "{who} covers {whom}",
    ),
)
"""Of a line that turns on no word of its block."""

LOOKS_TURNED: tuple[tuple[str, str, str], ...] = (
    ("look", rf"{_MEN} {_SLANTS} (?:down )?in(?:side)?", "{who} rushes inside gap"),
    (
        "look",
        rf"{_MEN} in (?:the )?(?:deep )?middle(?: of the field)?(?P<rest> ,.+)?",
        "{who} at middle{rest}",
    ),
    (
        "look",
        r"(?P<head>\w\w? (?:at|in|over) .+ ,) (?P<n>\d+) (?:yards?|yds?)(?: off| back|"
        r" deep)?",
        "{head} {n} deep",
    ),
    (
        "look",
        r"(?P<who>.+) covers the (?P<what>hole|flat|hook|curl|robber|back|tight end|"
        r"middle third)(?P<rest>.*)",
        "{who} covers {what}{rest}",
    ),
    (
        "look",
        r"(?P<who>.+) covers (?P<zone>curl|hook)s? to (?:the )?(?:curl|flat|"
        r"hook)s?(?P<rest>.*)",
        "{who} covers {zone}{rest}",
    ),
    (
        "look",
        r"(?P<who>.+) covers deep (?P<zone>thirds|halves|quarters|third|half|"
        r"quarter)(?P<rest>.*)",
        "{who} covers {zone}{rest}",
    ),
    ("look", r"(?P<who>.+ covers .+) man to man", "{who}"),
)
"""Of a line that does, and holds words that no such line has."""
