"""Values, guards and men on the field: codes 400 to 599."""

from __future__ import annotations

from stemline.diagnostics.wording import Wording

WORDING: dict[str, Wording] = {
    "E401": Wording(
        "words left over",
        "`{found}` does not belong to {what}",
        "not understood",
        "take it out; if it is a thing of its own, put `,` before it",
    ),
    "E402": Wording("another form", "here belongs {what}", "something else"),
    "E403": Wording(
        "not read yet",
        "stemline does not read `{verb}` here yet",
        "not read",
        "delete the line, or keep it behind // until then",
    ),
    "E410": Wording(
        "unknown condition",
        "`{found}` is not a condition",
        "not known",
        "a shape such as 3x1, or one of: {choices}",
    ),
    "E411": Wording(
        "never true",
        "`{guard}` can never hold: {why}",
        "never",
        "with `,` all must hold at once; write `or` where one of them is enough",
    ),
    "E412": Wording(
        "unknown look",
        "`{found}` is not a look",
        "not known",
        "one of: {choices}",
    ),
    "E413": Wording(
        "a look decides no alignment",
        "`{look}` is seen after the men are lined up, so it cannot decide this",
        "a look",
        "a look may decide what a role runs, not who it is and not where a man stands",
    ),
    "E420": Wording(
        "said twice",
        "two lines say {what}, and they do not agree",
        "the second",
        "delete one, or give one of them a `when`",
    ),
    "E421": Wording(
        "two guards can both hold",
        "two lines say {what}: `{first}` and `{second}` can both hold",
        "both hold in {world}",
        "add what tells them apart: `when 3x2, press` and `when off` can never both hold",
    ),
    "E430": Wording(
        "unknown place",
        "`{found}` is no landmark and no man",
        "not known",
        "one of: {choices}",
    ),
    "E431": Wording(
        "which side",
        "this place is on both sides of the ball",
        "no side said",
        "begin with the side: `X at away, numbers`",
    ),
    "E432": Wording(
        "strong is not known yet",
        "`{found}` is counted at the snap, so nobody can be lined up by it",
        "not yet known",
        "line men up by `call` and `away`",
    ),
    "E433": Wording(
        "between what",
        "`between` names two places joined by `and`, and here stands `{found}`",
        "`and` expected",
        "for example `between X and tackle`",
    ),
    "E434": Wording(
        "yards from a place",
        "after a number of yards comes {choices}, not `{found}`",
        "expected here",
        "for example `2 inside numbers`",
    ),
    "E435": Wording(
        "how many yards",
        "`{word}` wants a number of yards before it",
        "how far",
        "for example `2 {word} numbers`",
    ),
    "E436": Wording(
        "unknown depth",
        "`{found}` is no depth",
        "not known",
        "one of: on line, off line, under centre, or yards: 5 deep",
    ),
    "E437": Wording(
        "which receiver",
        "after the side comes the receiver's count, not `{found}`",
        "expected #1, #2, ...",
        "for example `call #2 moves to away, 4 outside tackle`",
    ),
    "E438": Wording(
        "unknown man",
        "no man is called `{found}`",
        "not in the personnel and not lined up by any formation",
        "name him by his letter, or by his count: `call #2`",
    ),
    "E439": Wording(
        "how he is at the snap",
        "at the snap a man is `set` or `running`, not `{found}`",
        "set or running",
        "for example `snap running 6` for six yards a second",
    ),
    "E440": Wording(
        "unknown stroke",
        "`{found}` is no stroke",
        "not known",
        "one of: {choices}",
    ),
    "E441": Wording("how many yards", "here belongs a number of yards, not `{found}`", "how far"),
    "E442": Wording(
        "unknown route",
        "no route is called `{found}`",
        "not in the library and not in this playbook",
        "write a `route` block for it, or use a route that is known",
    ),
    "E443": Wording(
        "words after a route",
        "`{found}` does not go with a route",
        "not understood",
        "a depth, `over` or `to` a place, a side, or `away from` or `same side as` a role",
    ),
    "E444": Wording(
        "unknown role",
        "this concept has no role `{found}`",
        "no line says who it is",
        "its roles: {choices}",
    ),
    "E445": Wording("unknown block", "`{found}` is no block", "not known", "one of: {choices}"),
    "E446": Wording(
        "a route without strokes",
        "route `{name}` has no strokes, and the library has no route of that name",
        "nothing to run",
        "add lines such as `stroke up to depth then in 8`",
    ),
    "E450": Wording(
        "unknown role",
        "no line says who `{found}` is",
        "not a role of this concept",
        "its roles: {choices}; a new one needs a line with `is`, such as `settle is strong #2`",
    ),
    "E451": Wording(
        "unknown rule for a man",
        "`{found}` does not say who he is",
        "not understood",
        "for example: strong #2 · weak inside · tight end · back · nobody",
    ),
    "E452": Wording(
        "nobody comes last",
        "after `nobody` no other choice is ever tried",
        "in the wrong place",
        "put `nobody` last",
    ),
    "E453": Wording(
        "a role by letter",
        "`{letter}` is a man's letter, and a concept must serve every formation",
        "a letter",
        "say where he stands: strong #2, weak inside, back",
    ),
    "E454": Wording(
        "inside on which side",
        "`{found}` does not say on which side",
        "which side",
        "for example `inside opposite under` or `weak inside`",
    ),
    "E455": Wording(
        "which man on that side",
        "after `{side}` comes a number such as #2, or {choices}; not `{found}`",
        "which man",
        "for example `{side} #2`",
    ),
    "E456": Wording(
        "unknown place for a spot",
        "`{found}` does not say where a spot is",
        "not understood",
        "for example `low, away from settle` or `over ball`",
    ),
    "E457": Wording(
        "a spot on which side",
        "this spot is on one side of the ball, and no word says which",
        "which side",
        "add `strong`, `weak`, `away from` or `same side as` a role",
    ),
    "E460": Wording(
        "unknown protection", "`{found}` is no protection", "not known", "one of: {choices}"
    ),
    "E461": Wording(
        "unknown pick", "`{found}` does not pick a side", "not known", "one of: {choices}"
    ),
    "E462": Wording(
        "unknown defender",
        "`{found}` describes no defender",
        "not known",
        "one of: {choices}",
    ),
    "E463": Wording("unknown feet", "`{found}` is no footwork", "not known", "one of: {choices}"),
    "E464": Wording(
        "unknown spot or role",
        "this concept has no spot and no role `{found}`",
        "not known",
        "one of: {choices}",
    ),
    "E465": Wording(
        "the form of a spot",
        "a spot line gives a name and a place",
        "no `is`",
        "for example `spot near is low, away from settle`",
    ),
    "E466": Wording("unknown claim", "`{found}` is no claim", "not known", "one of: {choices}"),
    "E467": Wording(
        "how many spots",
        "a {kind} has {wanted} spots, and this line names {got}",
        "{got} named",
        "for example `claims triangle near top far` or `pair top above near`",
    ),
    "E468": Wording(
        "the form of a need",
        "a need says who, within how many yards, of what",
        "not complete",
        "for example `needs under within 6 of tackle at snap`",
    ),
    "E469": Wording(
        "the form of a swap",
        "a swap names two roles",
        "not complete",
        "for example `swap settle with over`",
    ),
    "E470": Wording(
        "what a tag keeps",
        "a tag cannot keep `{found}`",
        "not known",
        "one of: {choices}",
    ),
    "E471": Wording(
        "a role without a job",
        "`{role}` is somebody, but no line says what he does",
        "no job",
        "add `{role} runs` and a route, or `{role} blocks` and a job",
    ),
    "E501": Wording(
        "a man who is not lined up",
        "{formation} lines somebody up by {man}, and does not line {man} up",
        "{man} is missing",
        "add a line `{man} at` and a place",
    ),
    "E502": Wording(
        "lined up by himself",
        "{man} is lined up by himself, directly or through others",
        "a circle",
        "line one of them up by a landmark",
    ),
    "E503": Wording(
        "no line holds",
        "no line says where {man} lines up from the {spot}",
        "only under a condition",
        "add a line for {man} without `when`",
    ),
    "E510": Wording(
        "the wrong number of men",
        "{formation} has {got} men, and {wanted} play ({rules}; {source})",
        "{got} with the five linemen",
        "the five linemen are always there: line up the others, one line a man",
    ),
    "E511": Wording(
        "out of bounds",
        "{man} stands {yards} yards over the {side} sideline in {formation} from the {spot}",
        "out of bounds",
        "line him up by the numbers or the sideline, or add a line `when into boundary`",
    ),
    "E512": Wording(
        "two men on one spot",
        "{man} and {other} stand on one spot in {formation} from the {spot}",
        "no room",
        "move one of them, or add a line `when into boundary`",
    ),
    "E513": Wording(
        "no quarterback",
        "{formation} has no quarterback",
        "nobody takes the snap",
        "give the man who takes it the letter Q, or say `is quarterback` in the personnel",
    ),
    "E530": Wording(
        "past the middle of the field",
        "the {what} would lie {yards} yards from the sideline, and the middle of this field is "
        "{middle} yards from it",
        "does not fit",
        "add or mend a line `{line} is` for a field {width} yards wide",
    ),
    "E531": Wording(
        "a league figure set twice",
        "the league's {figure} is set twice",
        "the second",
        "keep one of the two lines",
    ),
}
