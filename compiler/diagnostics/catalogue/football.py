"""Values, guards and men on the field: codes 400 to 599."""

from __future__ import annotations

from stemline.diagnostics.catalogue.expected_forms import such
from stemline.diagnostics.diagnostic import Mistake
from stemline.diagnostics.misspelt import Misspelt


class E401(Mistake):
    title = "words left over"
    message = "`{found}` does not belong to {what}"
    label = "not understood"
    help = "take it out; if it is a thing of its own, put `,` before it"

    found: str
    what: str


class E402(Mistake):
    title = "another form"
    message = "here belongs {what}"
    label = "something else"
    help = "{instead}"

    what: str
    instead: str

    def __init__(self, *, what: str, instead: str = "") -> None:
        super().__init__(what=what, instead=instead or such(what))


class E403(Mistake):
    title = "not read yet"
    message = "stemline does not read `{verb}` here yet"
    label = "not read"
    help = "delete the line, or keep it behind // until then"

    verb: str


class E404(Mistake):
    title = "a coach's own words"
    message = "`{found}` is said in other words here"
    label = "plain to a coach, not to the notation"
    help = "{answer}"

    found: str
    answer: str


class E405(Mistake):
    title = "in a technique, at a place"
    message = "`{place}` is a place on the field, and a man stands at it"
    label = "a place"
    help = "write `{man} at {place}`; `in` is for a technique or a gap: `{man} in 3, strong`"

    man: str
    place: str


class E410(Misspelt):
    title = "unknown condition"
    message = "`{found}` is not a condition"
    label = "not known"
    help = "a shape such as 3x1, in a concept or run a formation, or one of: {choices}"


class E411(Mistake):
    title = "never true"
    message = "`{guard}` can never hold: {why}"
    label = "never"
    help = "with `,` all must hold at once; write `or` where one of them is enough"

    guard: str
    why: str


class E412(Misspelt):
    title = "unknown look"
    message = "`{found}` is not a look"
    label = "not known"
    help = "one of: {choices}"


class E413(Mistake):
    title = "a look decides only what a man runs"
    message = "`{look}` is what the defence shows, and it cannot decide this"
    label = "a look"
    help = (
        "{instead}a look may decide what a role runs; not who it is, where a man stands, the side, "
        "or the quarterback's orders, feet and protection"
    )

    instead: str
    look: str


class E414(Misspelt):
    title = "receivers on which side"
    message = "after a number of receivers comes a side, not `{found}`"
    label = "which side"
    help = "for example `3 strong`, `3 or more strong` or `1 weak`"


class E415(Mistake):
    title = "on his line after the break"
    message = "a {route} turns at {stem}, and `by {by}` has him on his line only then"
    label = "too late"
    help = "leave `by` out, or say less: `by {less}`"

    route: str
    by: str
    stem: str
    less: str


class E416(Mistake):
    title = "too far to his line"
    message = (
        "in {call}, {man} has {across} yards across to his line in {by} of depth, from the {spot}"
    )
    label = "not to be run"
    help = "{instead}"
    varies = ("man", "across", "by", "instead", "spot")

    call: str
    man: str
    across: str
    by: str
    instead: str
    spot: str


class W417(Mistake):
    title = "a line inside the tackle"
    message = "in {call} from the {spot}, the line that {man} runs up is inside his own tackle"
    label = "through the rush"
    help = "give that spot a line of its own: `… up divide when {when}`"
    varies = ("man", "spot")

    call: str
    man: str
    spot: str
    when: str


class E420(Mistake):
    title = "said twice"
    message = "two lines say {what}, and they do not agree"
    label = "the second"
    help = "delete one, or give one of them a `when`"

    what: str


class E421(Mistake):
    title = "two guards can both hold"
    message = "two lines say {what}: `{first}` and `{second}` can both hold"
    label = "both hold in {world}"
    help = "say in the second what tells it from the first: {apart}"

    apart: str
    first: str
    second: str
    what: str
    world: str


class E430(Misspelt):
    title = "unknown place"
    message = "`{found}` is no landmark and no man"
    label = "not known"
    help = "one of: {choices}"
    wanted = "a landmark, or a man"


class E431(Mistake):
    title = "which side"
    message = "this place is on both sides of the ball"
    label = "no side said"
    help = "begin with the side: `X at away, numbers`"


class E432(Mistake):
    title = "strong is not known yet"
    message = "`{found}` is counted at the snap, so nobody can be lined up by it"
    label = "not yet known"
    help = "line men up by `call` and `away`"

    found: str


class E433(Misspelt):
    title = "between what"
    message = "`between` names two places joined by `and`, and here stands `{found}`"
    label = "`and` expected"
    help = "for example `between X and tackle`"


class E434(Misspelt):
    title = "yards from a place"
    message = "after a number of yards comes {choices}, not `{found}`"
    label = "expected here"
    help = "for example `2 inside numbers`"


class E435(Mistake):
    title = "how many yards"
    message = "`{word}` wants a number of yards before it"
    label = "how far"
    help = "for example `2 {word} numbers`"

    word: str


class E436(Misspelt):
    title = "unknown depth"
    message = "`{found}` is no depth"
    label = "not known"
    help = "one of: on line, off line, under centre, or yards: 5 deep"


class E437(Misspelt):
    title = "which receiver"
    message = "after the side comes the receiver's count, not `{found}`"
    label = "expected #1, #2, ..."
    help = "for example `call #2 moves to away, 4 outside tackle`"


class E438(Misspelt):
    title = "unknown man"
    message = "no man is called `{found}`"
    label = "not in the personnel and not lined up by any formation"
    help = "name him by his letter, or by his count: `call #2`"


class E439(Misspelt):
    title = "how he is at the snap"
    message = "at the snap a man is `set` or `running`, not `{found}`"
    label = "set or running"
    help = "for example `snap running 6` for six yards a second"


class E440(Misspelt):
    title = "unknown stroke"
    message = "`{found}` is no stroke"
    label = "not known"
    help = "one of: {choices}"
    wanted = "a stroke"


class E441(Misspelt):
    title = "how many yards"
    message = "here belongs a number of yards, not `{found}`"
    label = "how far"
    help = "write the figure alone, as in `splits 1`, `depth 12` or `stroke up 12`"
    wanted = "a number of yards"


class E442(Misspelt):
    title = "unknown route"
    message = "no route is called `{found}`"
    label = "not in the library and not in this playbook"
    help = "write a `route` block for it, or use a route that is known"
    wanted = "a route"


class E443(Misspelt):
    title = "words after a route"
    message = "`{found}` does not go with a route"
    label = "not understood"
    help = "a depth, `over` or `to` a place, a side, or `away from` or `same side as` a role"


class E444(Misspelt):
    title = "unknown role"
    message = "this concept has no role `{found}`"
    label = "no line says who it is"
    help = "its roles: {choices}"
    wanted = "a role"


class E445(Misspelt):
    title = "unknown block"
    message = "`{found}` is no block"
    label = "not known"
    help = "one of: {choices}"
    wanted = "a block"


class E446(Mistake):
    title = "a route without strokes"
    message = "route `{name}` has no strokes, and the library has no route of that name"
    label = "nothing to run"
    help = "add lines such as `stroke up to depth then in 8`"

    name: str


class E447(Misspelt):
    title = "the side of a launch"
    message = "`{found}` is no side that a quarterback can go to"
    label = "not known"
    help = "one of: {choices}; without one he goes to the side of the first read"


class E448(Mistake):
    title = "a route without a stem"
    message = "a {route} has no straight piece that could be run up a line"
    label = "no stem"
    help = "say where it ends instead: `{route} to` and a place"

    route: str


class E449(Mistake):
    title = "a line and an end for one stem"
    message = "`up` and `to` both say where a {route} is run"
    label = "said twice"
    help = "write one of them: `{route} up numbers`"

    route: str


class E450(Misspelt):
    title = "unknown role"
    message = "no line says who `{found}` is"
    label = "not a role of this concept"
    help = "its roles: {choices}; a new one needs a line with `is`, such as `settle is strong #2`"


class E451(Misspelt):
    title = "unknown rule for a man"
    message = "`{found}` does not say who he is"
    label = "not understood"
    help = "for example: strong #2 · weak inside · tight end · back · nobody"


class E452(Mistake):
    title = "nobody comes last"
    message = "after `nobody` no other choice is ever tried"
    label = "in the wrong place"
    help = "put `nobody` last"


class E453(Mistake):
    title = "a role by letter"
    message = "`{letter}` is the letter of nobody whom a formation lines up"
    label = "nobody's letter"
    help = "say where he stands, for {letter} mostly `{rule}`; a lineman has lines of his own"

    letter: str
    rule: str


class E454(Misspelt):
    title = "inside on which side"
    message = "`{found}` does not say on which side"
    label = "which side"
    help = "for example `inside opposite under` or `weak inside`"


class E455(Misspelt):
    title = "which man on that side"
    message = "after `{side}` comes a number such as #2, or {choices}; not `{found}`"
    label = "which man"
    help = "for example `{side} #2`"

    side: str


class E456(Misspelt):
    title = "unknown place for a spot"
    message = "`{found}` does not say where a spot is"
    label = "not understood"
    help = "for example `low, away from settle` or `over ball`"


class E457(Mistake):
    title = "a spot on which side"
    message = "this spot is on one side of the ball, and no word says which"
    label = "which side"
    help = "add `strong`, `weak`, `away from` or `same side as` a role"


class E458(Mistake):
    title = "by the call and by the field"
    message = "{formation} lines {man} up by the field and {other} by the call"
    label = "by the field"
    help = (
        "a formation is by the call or by the field: say `{line}`, or line all men up at field and "
        "boundary"
    )

    formation: str
    line: str
    man: str
    other: str


class E478(Mistake):
    title = "a man who cannot block down"
    message = "in {call}, {man} blocks down before his route, and is no tight end or wing"
    label = "nobody inside him to block"
    help = "{instead}"
    varies = ("man",)

    call: str
    man: str
    instead: str


class E479(Mistake):
    title = "a block and a route in a run"
    message = "`{first} then {route}` sends {who} out on a route, and this is a run"
    label = "not in a run"
    help = "say `{who} blocks {instead}`; a concept has him block and then go out"

    who: str
    first: str
    route: str
    instead: str


class E460(Misspelt):
    title = "unknown protection"
    message = "`{found}` is no protection"
    label = "not known"
    help = "one of: {choices}"


class E461(Misspelt):
    title = "unknown pick"
    message = "`{found}` does not pick a side"
    label = "not known"
    help = "one of: {choices}"


class E462(Misspelt):
    title = "unknown defender"
    message = "`{found}` describes no defender"
    label = "not known"
    help = "one of: {choices}"
    wanted = "a defender"


class E463(Misspelt):
    title = "unknown feet"
    message = "`{found}` is no footwork"
    label = "not known"
    help = "one of: {choices}"
    wanted = "footwork"


class E464(Misspelt):
    title = "unknown spot or role"
    message = "this concept has no spot and no role `{found}`"
    label = "not known"
    help = "one of: {choices}"
    wanted = "a spot or a role"


class E465(Mistake):
    title = "the form of a spot"
    message = "a spot line gives a name and a place"
    label = "no `is`"
    help = "for example `spot near is low, away from settle`"


class E466(Misspelt):
    title = "unknown claim"
    message = "`{found}` is no claim"
    label = "not known"
    help = "one of: {choices}"


class E467(Mistake):
    title = "how many spots"
    message = "a {kind} has {wanted} spots, and this line names {got}"
    label = "{got} named"
    help = "for example `claims triangle near, top, far` or `pair top above near`"

    got: int
    kind: str
    wanted: int | str


class E468(Mistake):
    title = "the form of a need"
    message = "a need says who, within how many yards, of what"
    label = "not complete"
    help = "for example `needs under within 6 of tackle at snap`"


class E469(Mistake):
    title = "the form of a swap"
    message = "a swap names two roles"
    label = "not complete"
    help = "for example `swap settle with over`"


class E470(Misspelt):
    title = "what a tag keeps"
    message = "a tag cannot keep `{found}`"
    label = "not known"
    help = "one of: {choices}"


class E471(Mistake):
    title = "a role without a job"
    message = "`{role}` is somebody, but no line says what he does"
    label = "no job"
    help = "add `{role} runs` and a route, or `{role} blocks` and a job"

    role: str


class E472(Misspelt):
    title = "any of what"
    message = "`{found}` names neither a kind of play nor a family of this book"
    label = "not known"
    help = "it is one of {choices}; what is left out stands behind `but`: `any pass but Crossers`"


class E473(Misspelt):
    title = "a called route for nobody"
    message = "`{found}` is no man of this playbook who could be called a route"
    label = "not known"
    help = "say his letter or where he stands: `with X runs fade`, `with weak #1 runs dig 14`"


class E501(Mistake):
    title = "a man who is not lined up"
    message = "{formation} lines somebody up by {man}, and does not line {man} up"
    label = "{man} is missing"
    help = "add a line `{man} at` and a place"

    formation: str
    man: str


class E502(Mistake):
    title = "lined up by himself"
    message = "{man} is lined up by himself, directly or through others"
    label = "a circle"
    help = "line one of them up by a landmark"

    man: str


class E503(Mistake):
    title = "no line holds"
    message = "no line says where {man} lines up from the {spot}"
    label = "only under a condition"
    help = "add a line for {man} without `when`"
    varies = ("spot",)

    man: str
    spot: str


class E530(Mistake):
    title = "past the middle of the field"
    message = (
        "the {what} would lie {yards} yards from the sideline, and the middle of this field is "
        "{middle} yards from it"
    )
    label = "does not fit"
    help = "add or mend a line `{line} is` for a field {width} yards wide"

    line: str
    middle: str
    what: str
    width: str
    yards: str


class E531(Mistake):
    title = "a league figure set twice"
    message = "the league's {figure} is set twice"
    label = "the second"
    help = "keep one of the two lines"

    figure: str


class E474(Mistake):
    title = "what ends an order of reads"
    message = "`{last}` ends a read order: it stands last, behind a look, and without a foot"
    label = "not here"
    help = "for example `read flat on quick > near on 3 > {last}`"

    last: str
