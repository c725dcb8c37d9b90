"""Runs: blocking rules, aims, keys and passes that show a run; codes 670 to 689."""

from __future__ import annotations

from stemline.diagnostics.wording import Wording

WORDING: dict[str, Wording] = {
    "E670": Wording(
        "which of the two",
        "there is a {place} on both sides of the centre",
        "on which side",
        "write `playside {place}` or `backside {place}`; left and right, strong and weak do too",
    ),
    "E671": Wording(
        "a double team without its second man",
        "a double team needs the man who helps",
        "with whom",
        "write `double with` and guard, tackle, end or centre",
    ),
    "E672": Wording(
        "more than one `then` in a block",
        "a block has its rules, parted by `or`, and at most one `then`",
        "here",
        "after `then` stands whom a double team climbs to: "
        "`down or double with guard then backside linebacker`",
    ),
    "E673": Wording(
        "unknown aim",
        "`{found}` is no place to aim at",
        "not known",
        "a side and a gap, as in `playside B`, or one of: {choices}",
    ),
    "E674": Wording(
        "unknown side of a run",
        "`{found}` does not say to which side the run goes",
        "not known",
        "one of: {choices}",
    ),
    "E675": Wording(
        "a reaction without its reason",
        "`{does}` says what is done, and `if` says when",
        "",
        "write it as `{does} if he widens`; a throw names its role, a pitch its man: "
        "`throw slant if`, `pitch off overhang if`",
    ),
    "E676": Wording(
        "join what",
        "a pass joins a run",
        "",
        "write `join run` and the run's name",
    ),
    "E677": Wording(
        "nobody is read",
        "`{does}` depends on a man who is read, and {call} has no key",
        "read off whom",
        "add a line such as `key backside end man on line`",
    ),
    "E678": Wording(
        "nobody carries the ball",
        "no line of the run says who its carrier is",
        "",
        "add `carrier is back` and `carrier aims playside B`",
    ),
    "E679": Wording(
        "a lineman without a block",
        "the run does not say how {places} blocks",
        "",
        "add a line for each, or `line blocks` for all who have none",
    ),
    "E680": Wording(
        "a role named like a line",
        "a line that begins with `{word}` says what is done off a key",
        "not a role",
        "give the role another name, or put its name in quotes",
    ),
    "E681": Wording(
        "two keys",
        "a quarterback reads one man at the hand-off, and this is a second `key`",
        "the second",
        "keep the one who decides; a man read after him is said with `pitch off`, and another key "
        "goes into a tag of its own",
    ),
    "W670": Wording(
        "more men free than one",
        "{call}: nobody blocks {free} of {look}",
        "",
        "a back runs by one man, not by more: add a blocker, read one as a `key`, or do not call "
        "it against this look",
    ),
    "W671": Wording(
        "a key whom the blocking does not leave",
        "{call} reads the {key}, and the blocking leaves {free} of {look}",
        "",
        "write `key unblocked man` with his side, or change a block so that {key_man} is the only "
        "one left",
    ),
    "W860": Wording(
        "a fullback behind the back",
        "{call}: {man} has the ball as the back by position, and {other} stands deeper",
        "",
        "a stated position decides before depth: if {other} is to run, say so in the personnel, or "
        "move them",
    ),
    "W861": Wording(
        "a boot the way of the fake",
        "{call}: the quarterback boots to the {side}, and the run is shown to the {side} too",
        "",
        "the boot goes to the first read where no side is named: fake the other way, or put the "
        "first read on the other side",
    ),
    "W862": Wording(
        "a launch away from the first read",
        "{call}: the quarterback goes to the {side}, and looks first for {man} on the other",
        "",
        "put the first read on the side he runs to, or turn the launch",
    ),
    "W863": Wording(
        "a reverse without a man in between",
        "{call}: {man} takes the ball from the quarterback himself",
        "",
        "a reverse turns the ball round: give the first runner a role with `aims`, or call it "
        "something else",
    ),
    "W864": Wording(
        "a hand-off to a man who does not come by",
        "{call}: {man} is to take the ball from {giver}, and comes no nearer to him than {yards} "
        "yards",
        "",
        "lead his path past {giver}: fewer aims, a motion that brings him there, or another man's "
        "hands in between",
    ),
}
