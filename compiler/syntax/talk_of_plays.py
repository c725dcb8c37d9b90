"""Sentences of a coach's talk about plays, each with the line it means: the tables of `talk_said`.

A row has the kinds of block, a pattern for the whole line in lower case, and the line, with the
pattern's groups as they were written. Common practice, no published source.
"""

from __future__ import annotations

_PLAYS = "concept run tag"
_MAN = (
    r"(?:the )?(?:[a-z]\w?|(?:(?:strong|weak|call|away|each) )?#\d|(?:playside |"
    r"backside |left |right |each |both |strong |weak )?"
    r"(?:guards?|tackles?|ends?|tight end|line|cent(?:re|er)|fullback|back|wing|"
    r"carrier|inside|"
    r"outside|slot))"
)
_WHO = rf"(?P<who>{_MAN}(?:(?: ,| and) {_MAN})*)"
_HIM = r"(?P<him>(?!ball\b|line\b)[a-z0-9][\w ]*?)"
_FOR = r"(?:to|for|onto|on|at|and blocks?|and gets?)(?: the)?"
_AROUND = r"(?:the )?(?:tight end|end|edge|corner|y)"
_PULLS_TO_SEAL = r"pulls? (?:and |to )?(?:walls?(?: off)?|seals?|logs?|hooks?)(?: the)?"
_END = r"(?:edge|(?:defensive )?end(?: man)?(?: on (?:the )?line)?)"
_LB = r"(?:then )?(?:climbs? )?(?:up )?(?:to|for|onto)(?: the)?"
_EVERYBODY = (
    r"(?P<all>(?:the |all |all the )?(?:receivers|wide receivers|wideouts|wide "
    r"outs|wides|slots|"
    r"slotbacks|slot receivers|pass catchers))"
)
_OVER_THEM = r"(?: (?:the |their )?(?:men|man|defenders?|guys?)(?: over (?:them|him))?)?"
SIDE = r"playside|backside|strong|weak|call|away|left|right|field|boundary"

PLAYS: tuple[tuple[str, str, str], ...] = (
    (
        _PLAYS,
        rf"{_WHO} blocks? (?:(?:for )?(?:one|two|a|1|2|three) counts? )?(?:,? ?(?:and "
        r")?then|and) leaks?(?: out)?"
        r"(?P<rest>(?: .+)?)",
        "{who} runs leak{rest}",
    ),
    # Who double.
    (
        _PLAYS,
        rf"(?P<who>{_MAN}) (?:and|,) (?:the )?(?P<mate>(?:(?:playside|backside|left|"
        r"right) )?\w+|tight end) "
        rf"doubles?(?: ?team)?s?(?:(?! to | then | for ) [\w#]+)*? {_LB} {_HIM}",
        "{who} blocks double with {mate} then {him}",
    ),
    (
        _PLAYS,
        rf"(?P<who>{_MAN}) (?:and|,) (?:the )?(?P<mate>(?:(?:playside|backside|left|"
        r"right) )?\w+|tight end) "
        r"doubles?(?: ?team)?s?(?:(?! to | then | for ) [\w#]+)*",
        "{who} blocks double with {mate}",
    ),
    (
        "run",
        r"(?P<who>(?:the )?carrier) follows (?:behind )?(?P<whom>(?:the "
        r")?(?:(?:playside|backside) )?(?:guard|tackle|fullback|wing|puller))",
        '{who} says "Follow {whom}."',
    ),
    (
        _PLAYS,
        r"(?P<s>playside|backside) side blocks? (?P<what>.+)",
        "{s} line , {s} end blocks {what}",
    ),
    (
        "concept tag",
        r"(?:the )?(?:qb|q|quarterback) drops?(?: back)? (?P<n>[1357])(?: steps?)?(?: "
        r"and .+)?",
        "feet {n}",
    ),
    # Who pull.
    (
        _PLAYS,
        rf"{_WHO} pulls? (?:around|outside) {_AROUND} (?:and up )?{_FOR} {_HIM}",
        "{who} blocks pull to {him}",
    ),
    (
        _PLAYS,
        rf"{_WHO} pulls? (?:and (?:goes |leads )?)?(?:up )?(?:through|into|in|inside|up)"
        rf"(?: (?:the )?(?:hole|kick|inside|gap))* {_FOR} {_HIM}",
        "{who} blocks wrap to {him}",
    ),
    (
        _PLAYS,
        rf"(?P<who>(?:the )?playside (?:guard|tackle)) {_PULLS_TO_SEAL} (?:far|other) {_END}",
        "{who} blocks pull to backside end man on line",
    ),
    (
        _PLAYS,
        rf"{_WHO} {_PULLS_TO_SEAL} (?:(?:far|other|(?P<s>playside|backside)) )?{_END}",
        "{who} blocks pull to {s} end man on line",
    ),
    (
        _PLAYS,
        rf"{_WHO} pulls? (?:and )?(?:walls?(?: off)?|seals?|for|to)(?: the)? {_HIM}",
        "{who} blocks wrap to {him}",
    ),
    (
        _PLAYS,
        rf"{_WHO} leads? (?:up )?(?:through|inside|outside|around)(?: (?:the )?"
        rf"(?:hole|end|edge))? (?:{_FOR}) {_HIM}",
        "{who} blocks lead to {him}",
    ),
    # Who pass by a man.
    (
        _PLAYS,
        rf"{_WHO} (?:releases?|goes|steps?) inside(?: (?:of )?(?:the )?"
        rf"(?:read|end|read man|key|him|trap|man))* {_FOR} {_HIM}",
        "{who} blocks leave to {him} or climb to {him}",
    ),
    (
        _PLAYS,
        rf"{_WHO} goes (?:around|past|by) (?:the )?(?:read|end|read man|key|him|man) "
        rf"{_FOR} {_HIM}",
        "{who} blocks leave to {him} or climb to {him}",
    ),
    (
        _PLAYS,
        rf"{_WHO} leaves? (?:the |his |her )?(?:end|read|read man|key|man|end man|tackle)",
        "{who} blocks leave",
    ),
    # Rules without their verb.
    (
        _PLAYS,
        rf"{_WHO} cuts? off (?:the )?(?P<him>safety|corner|force)",
        "{who} blocks stalk {him}",
    ),
    (
        _PLAYS,
        rf"{_WHO} cuts? off(?: the)?(?: backside| back side| pursuit| chase| edge)*",
        "{who} blocks cut off",
    ),
    (
        _PLAYS,
        r"(?P<who>backside (?:guard|tackle|end|line)) seals?(?: off)?(?: the)?"
        r"(?: backside| edge| pursuit)*",
        "{who} blocks cut off",
    ),
    (
        _PLAYS,
        rf"{_WHO} (?:blocks )?gap ,? ?(?:down|on) ,? ?(?:backer|linebacker)",
        "{who} blocks down or climb",
    ),
    (
        _PLAYS,
        rf"{_WHO} reach(?:es)? (?:the |his |to )?(?:playside|play side)(?: gap)?",
        "{who} blocks reach",
    ),
    (
        _PLAYS,
        rf"{_WHO} (?:pass )?sets?(?: up)?(?: for (?:a |the )?pass| as for a pass)? ,? "
        r"?then drives?",
        "{who} blocks on or climb",
    ),
    (
        _PLAYS,
        rf"{_WHO} (?:pass )?sets?(?: up)?(?: for (?:a |the )?pass)? ,? ?then "
        r"climbs?(?: up)?"
        rf" {_FOR} {_HIM}",
        "{who} blocks climb to {him}",
    ),
    (
        "run",
        rf"{_WHO} fills?(?: in)?(?: (?:for (?:the )?(?:puller|guard|tackle)|"
        rf"(?:{SIDE})|[abc]|"
        r"gap|the|hole))*",
        "{who} blocks hinge",
    ),
    (
        "run",
        r"(?P<who>(?:the )?(?:fullback|back|wing|[a-z])) dives? .+ and fills?(?: .+)?",
        "{who} blocks hinge",
    ),
    # The rest of the eleven or twelve.
    (_PLAYS, rf"{_EVERYBODY} stalks?{_OVER_THEM}", "everyone else blocks stalk"),
    (
        _PLAYS,
        r"(?P<all>(?:everybody|everyone|all)(?: else)?) stalks?",
        "everyone else blocks stalk",
    ),
    (
        _PLAYS,
        r"(?P<all>everybody|everyone) else (?:clears?(?: out)?|runs? (?:off|deep|it off))",
        "everyone else runs go",
    ),
    # Who has the ball.
    (
        "run",
        r"(?P<who>(?:the )?(?:carrier|back|fullback|[a-z])) steps? (?P<first>[\w ]+?) "
        r",? ?then (?:hits?|cuts?"
        r"(?: back)?(?: to)?|runs?|goes|aims|to) (?:the )?(?P<then>[\w ]+)",
        "{who} aims {first} then {then}",
    ),
    (
        "run",
        rf"(?:the )?(?:qb|q|quarterback) (?:boot|bootleg|roll)s?(?: out)?(?: (?:to )?(?:the )?"
        rf"(?P<side>{SIDE}))?",
        "feet fake , boot {side}",
    ),
    ("concept tag", r"(?:fake|show)s? (?:the )?run (?P<name>.+)", "join run {name}"),
)
"""Of a line that turns on no word of its block."""

PLAYS_TURNED: tuple[tuple[str, str, str], ...] = (
    # Who block down, or chip, and go out.
    (
        _PLAYS,
        rf"{_WHO} blocks? down(?: ,)?(?: and)?(?: then)? (?:leaks|releases?|slips)(?: out)?"
        r"(?P<rest>(?: .+)?)",
        "{who} blocks down then leak{rest}",
    ),
    (
        _PLAYS,
        rf"{_WHO} blocks? down ,(?: and)? then(?: runs?)?(?: an?| the)? (?P<rest>.+)",
        "{who} blocks down then {rest}",
    ),
    (
        _PLAYS,
        rf"{_WHO} (?:blocks? chip|chips)(?: ,)?(?: and)?(?: then)? runs?"
        r"(?: an?| the)? (?P<rest>.+)",
        "{who} blocks chip then {rest}",
    ),
    (
        _PLAYS,
        rf"{_WHO} blocks? (?:(?:for )?(?:one|two|a|1|2|three) counts? )?(?:,? ?(?:and "
        r")?then|and) leaks?(?: out)?"
        r"(?P<rest>(?: .+)?)",
        "{who} runs leak{rest}",
    ),
    (_PLAYS, rf"{_EVERYBODY} blocks? stalk", "everyone else blocks stalk"),
    (
        _PLAYS,
        rf"{_EVERYBODY} blocks?(?: the| their) (?:men|man|defenders?|guys?)(?: over "
        r"(?:them|him))?",
        "everyone else blocks stalk",
    ),
    (_PLAYS, r"everybody else (?P<does>runs|blocks) (?P<what>.+)", "everyone else {does} {what}"),
    (
        _PLAYS,
        rf"{_WHO} blocks? (?P<first>on|down) , ?or doubles? (?:up )?{_FOR} .+",
        "{who} blocks {first} or climb",
    ),
    (
        _PLAYS,
        rf"{_WHO} blocks? (?:down ?,? ?(?:or )?)?gap ,? ?(?:down|on) ,? ?(?:backer|"
        r"linebacker)",
        "{who} blocks down or climb",
    ),
    (_PLAYS, rf"{_WHO} blocks? on ,? ?(?:or )?away", "{who} blocks on or back"),
    (
        _PLAYS,
        rf"{_WHO} blocks? (?:{_PULLS_TO_SEAL}|log|seal)(?: the)? "
        rf"(?:(?P<s>playside|backside) )?{_END}",
        "{who} blocks pull to {s} end man on line",
    ),
    (
        _PLAYS,
        rf"{_WHO} blocks? (?P<how>back|down)(?: for| on| over| behind)(?: the)?"
        r" (?:puller|pulling guard|guard|tackle|first man inside|man inside|end|nose)",
        "{who} blocks {how}",
    ),
    (_PLAYS, rf"{_WHO} blocks? (?:the )?(?:man|men) (?:on|over) (?:him|them)", "{who} blocks on"),
    (
        _PLAYS,
        r"(?P<who>(?:the )?(?:tight end|(?:playside |backside )(?:guard|tackle|end)|"
        r"wing)) blocks? (?:out on )?(?:the )?"
        r"(?P<him>(?:near |far )?(?:safety|corner|linebacker)|force(?: defender)?|"
        r"overhang)",
        "{who} blocks climb to {him}",
    ),
    (
        _PLAYS,
        r"(?P<who>(?:the )?(?:[a-z]|#\d|(?:strong|weak|call|away) (?:#\d|outside|"
        r"inside))) blocks? (?:the )?"
        r"(?P<him>(?:near |far )?(?:safety|corner)|force(?: defender)?|overhang)",
        "{who} blocks stalk {him}",
    ),
    (
        _PLAYS,
        r"(?P<who>(?:the )?(?:fullback|back)) (?:leads? and )?blocks? (?:out )?(?:the "
        r")?(?:defensive )?end(?: man)?",
        "{who} blocks kick end man on line",
    ),
    ("run", r"(?P<man>[\w# ]+) is (?:the |our |my )?(?:ball ?)?carrier", "carrier is {man}"),
    (
        _PLAYS,
        r"(?P<man>back|fullback|wing|tight end|[a-z]) is (?:the |our |my )?pitch man",
        "pitch man is {man}",
    ),
    (
        "run",
        r"read (?:the )?(?:(?P<side>playside|backside) )?(?P<him>end man on line|nose|"
        r"(?:first|second) man (?:past|outside|over) "
        r"(?:the )?(?:cent(?:re|er)|guard|tackle))",
        "key {side} {him}",
    ),
    (
        "run",
        r"read the (?:(?P<side>playside|backside) )?end(?: man)?",
        "key {side} end man on line",
    ),
    (
        "run",
        r"read (?:the )?(?:(?P<side>playside|backside) )?(?:2i|3|three|2) "
        r"tech(?:nique)?",
        "key {side} first man outside guard",
    ),
    (
        _PLAYS,
        r"pitch to (?:the )?(?P<to>[\w ]+?) if (?:the )?(?P<him>force|overhang|corner|"
        r"safety|linebacker)(?: defender| man)? "
        r"(?:takes|comes to|hits)(?: the)? (?:quarterback|qb|q)",
        "pitch to {to} off {him} if he takes the quarterback",
    ),
    (_PLAYS, r"(?P<does>gives?) unless he .+", "give if he stays"),
    (
        _PLAYS,
        r"(?P<head>.+ (?:hands|tosses|pitches) to .+?) (?:at|in|on)(?: the)? mesh(?: "
        r"point)?",
        "{head}",
    ),
    (_PLAYS, r"(?P<head>.+ throws to .+) or runs?(?: it)?", "{head} or run"),
    (_PLAYS, r"(?P<head>.+ throws to (?:(?! at )[\w# ])+?) deep", "{head}"),
    (
        _PLAYS,
        r"(?P<head>.+ (?:tosses|pitches|hands|throws)) (?:it )?back to (?P<rest>.+)",
        "{head} to {rest}",
    ),
    (
        _PLAYS,
        r"(?P<who>.+) aims (?:one yard |a yard |just |\d yards? )?outside(?: the)? "
        r"(?P<of>tackle|guard)",
        "{who} aims outside {of}",
    ),
    (
        _PLAYS,
        r"(?P<who>.+) aims (?:one yard |a yard |just |\d yards? )?outside(?: the)?(?: "
        r"tight end| last man| y)",
        "{who} aims outside the end",
    ),
    (
        _PLAYS,
        r"(?P<who>.+) aims outside(?: the)?(?: tight)? end ,? ?(?:to the "
        rf")?(?P<side>{SIDE})",
        "{who} aims {side} outside the end",
    ),
    (
        _PLAYS,
        r"(?P<who>.+) aims (?:over|behind|at)(?: the)? (?P<of>guard|tackle|end|"
        r"cent(?:re|er)|nose)",
        "{who} aims {of}",
    ),
    (
        _PLAYS,
        r"(?P<who>.+) runs (?:an? |the )(?P<route>[a-z][\w ]*?)(?: behind (?:it|that|"
        r"him|them))?",
        "{who} runs {route}",
    ),
    (
        _PLAYS,
        r"(?P<who>.+) runs (?P<route>[a-z]+(?: [a-z]+)?) at (?P<n>\d+)",
        "{who} runs {route} {n}",
    ),
    (
        "run",
        r"(?:the )?(?:qb|q|quarterback) fakes (?:the |a )?(?:keep|keeper|boot|"
        r"bootleg)(?: (?P<side>away|weak|strong|left|right|backside))?",
        "feet fake , boot {side}",
    ),
    (
        _PLAYS,
        rf"{_WHO} blocks? (?:(?:for )?(?:one|two|a|1|2|three) counts? )?(?:,? ?(?:and "
        r")?then|and) runs? (?:an? |the )?"
        r"(?P<what>[a-z].*)",
        "{who} runs check then {what}",
    ),
    (
        _PLAYS,
        r"(?P<s>playside|backside) side blocks? (?P<what>.+)",
        "{s} line , {s} end blocks {what}",
    ),
    ("run", rf"{_WHO} blocks? man on", "{who} blocks on"),
    (
        "run",
        rf"{_WHO} fakes (?:a |the )?sweep(?: (?:to (?:the )?)?(?P<side>away|backside))",
        "{who} aims backside outside the end",
    ),
    (
        "run",
        rf"{_WHO} fakes (?:a |the )?sweep(?: (?:to (?:the )?)?(?:call|playside))",
        "{who} aims outside the end",
    ),
    (
        "concept",
        r"throw (?:it )?(?:to )?(?:the )?(?P<who>[a-z]|back|tight end|fullback)",
        "read {who}",
    ),
)
"""Of a line that does, and holds words that no such line has."""
