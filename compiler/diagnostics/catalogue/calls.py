"""Calls, roles, tags and dress-ups: codes 600 to 799."""

from __future__ import annotations

from stemline.diagnostics.wording import Wording

WORDING: dict[str, Wording] = {
    "E601": Wording(
        "a call with two readings",
        "`{call}` can be read in two ways: {readings}",
        "two readings",
        "rename one of them",
    ),
    "E602": Wording(
        "unknown call",
        "`{call}` is no call of this playbook",
        "not known",
        "`stemline list` prints every call",
    ),
    "E603": Wording(
        "unknown concept or family",
        "no concept and no family is called `{name}`",
        "not known",
        "give a concept's or a family's name as it stands in the book",
    ),
    "E604": Wording(
        "unknown man of a call",
        "nobody in {call} is called `{man}`",
        "not known",
        "the men of this call are {choices}",
    ),
    "E605": Wording(
        "no earlier playbook",
        "`{said}` is no folder, and {why}",
        "not found",
        "give last season's folder, or a tag or a commit of the playbook's repository",
    ),
    "E606": Wording(
        "a call that was not there before",
        "`{call}` is no call of {before}",
        "not known there",
        "give the name it had with --before-call",
    ),
    "E610": Wording(
        "nobody to move",
        "{motion} moves {who}, and {formation} has no such man",
        "nobody",
        "use the motion only in formations where he is",
    ),
    "E620": Wording(
        "a role found no man",
        "in {call} nobody can be the {role}: {why}",
        "no man for {role}",
        "add another choice with `or`, let it be `nobody`, or leave this formation out of the "
        "dress-up",
    ),
    "E621": Wording(
        "roles that lean on each other",
        "{role} is found by way of {others}, and {others} by way of {role}",
        "a circle",
        "give one of them an exact rule, such as strong #2",
    ),
    "E622": Wording(
        "no line holds for a role",
        "in {call} no line says what {role} runs ({shape})",
        "only under a condition",
        "add a line for {role} without `when`",
    ),
    "E623": Wording(
        "the side of nobody",
        "in {call} {role} is nobody, so there is no side to run from",
        "no side",
        "say the side itself: weak, strong, call or away",
    ),
    "E630": Wording(
        "a read with nobody there",
        "in {call} the quarterback reads {spot}, and nobody comes there{miss}",
        "an empty spot",
        "move the spot, or give a role a route that ends there",
    ),
    "E631": Wording(
        "a foot that never comes",
        "{target} is thrown on {foot} in {call}, and the feet there are {feet}",
        "not in the feet",
        "add {foot} to the `feet` line, or throw it on a foot that is there",
    ),
    "E640": Wording(
        "two tags that quarrel",
        "{first} and {second} both say {what}, and they do not agree",
        "cannot be called together",
        "take {first} + {second} out of the dress-up, or let only one of them say it",
    ),
    "E651": Wording(
        "the call does not supply a need",
        "in {call} {role} ({man}) stands {away} yards from the {landmark} at the snap (from the "
        "{spot}), and the concept needs {yards} or fewer",
        "not met",
        "tighten his split, or bring him in by a motion: `in FORMATION motion NAME`",
    ),
    "E660": Wording(
        "a tag that does not keep the feet",
        "{tag} says it keeps the feet, and changes `{before}` to `{after}` ({call})",
        "not kept",
        "leave the feet alone, or do not claim to keep them",
    ),
    "E661": Wording(
        "a tag that does not keep the order",
        "{tag} says it keeps the {what}, and changes look {number} from `{before}` to `{after}` "
        "({call})",
        "not kept",
        "leave the {what} line alone, or do not claim to keep it",
    ),
    "E662": Wording(
        "a tag that moves a spot",
        "{tag} says it keeps the quarterback's eyes, and {spot} is not where {concept} has it "
        "({call})",
        "not kept",
        "leave the spot alone, or do not claim to keep it",
    ),
    "E663": Wording(
        "a tag that empties a spot",
        "{tag} says it keeps the quarterback's eyes, but nobody comes to {spot}: {instead} "
        "({call})",
        "{spot} is empty",
        "send somebody to {spot}, or do not claim to keep it",
    ),
    "E664": Wording(
        "a tag that takes a read away",
        "{tag} says it keeps the {what}, and {role} does not go out any more ({call})",
        "not kept",
        "give {role} a route, or do not claim to keep the {what}",
    ),
    "E665": Wording(
        "a tag that turns a read around",
        "{tag} says it keeps the {what}, and {role} goes to the {after} side where {concept} sends "
        "him to the {before} side ({call})",
        "not kept",
        "send {role} to the same side, or do not claim to keep the {what}",
    ),
    "W650": Wording(
        "a man without a job",
        "without a job in {call}: {man}",
        "{concept} has no role here for {man}",
        "give each a role; one that only some formations have ends with `or nobody`: "
        "`clear is weak #1 or nobody`",
    ),
    "E701": Wording(
        "a dress-up without a formation",
        "the dress-up of {name} names no formation",
        "no `in` line",
        "add a line such as `in Quads`",
    ),
    "E702": Wording("which way", "a call goes right or left, not `{found}`", "right or left"),
    "E703": Wording("which ball spot", "a ball spot is {choices}, not `{found}`", "not known"),
    "E704": Wording(
        "which calls",
        "this line says which calls by `in`, `with`, `to` or `motion`",
        "not understood",
        "for example `never in Quads with Wheel`",
    ),
    "E705": Wording(
        "an exception that excepts nothing",
        "no call of this dress-up is like this",
        "excepts nothing",
        "delete the line, or mend its names",
    ),
    "E706": Wording(
        "a name for a call that is not made",
        "`{call}` is not a call of this dress-up",
        "not made here",
        "add its formation and tags to the dress-up, or delete the line",
    ),
    "W710": Wording(
        "a concept without a dress-up",
        "{concept} has no dress-up, so it makes no call",
        "never called",
        "add `dress {concept}` with an `in` line",
    ),
}
