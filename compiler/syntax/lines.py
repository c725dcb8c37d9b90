"""The shapes of lines: which words open or part a line in each kind of block.

This table is all the parser knows of the notation's vocabulary. A word listed here is a keyword
in its place only; anywhere else it is an ordinary word, and in quotes it is one everywhere.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

LONGEST_LINE = 1000
"""Characters; some ten times what stands on a page's width. A bound on the lexer's work."""


@dataclass(frozen=True)
class WrittenLine:
    """One shape of line: the word it turns on, a correct line, the connectors it knows."""

    word: str
    example: str
    connectors: frozenset[str] = frozenset()


@dataclass(frozen=True)
class Opener:
    """A line that rows stand under; ``labels`` open rows of their own shape, ``row`` is the shape
    of all others (its word is no word of the row)."""

    line: WrittenLine
    row: WrittenLine
    labels: Mapping[str, WrittenLine] = field(default_factory=dict)


@dataclass(frozen=True)
class BlockKind:
    """One kind of block.

    ``header`` is a correct header line; ``join`` the connector a header may hold ("" for none);
    ``bare`` tells that a block without a line still says something, ``many`` that its header may
    hold several names, ``joins_many`` that its join may. ``openers`` open lines that
    rows may stand under, one level further in; each has the labels that its rows may begin with,
    and the connectors of the others.
    """

    header: str
    labels: Mapping[str, WrittenLine]
    verbs: Mapping[str, WrittenLine]
    join: str = ""
    join_required: bool = False
    bare: bool = False
    many: bool = False
    joins_many: bool = False
    openers: Mapping[str, Opener] = field(default_factory=dict)

    @property
    def example(self) -> str:
        """A correct line of such a block."""
        return next(iter((self.verbs or self.labels).values())).example

    @property
    def turning(self) -> Mapping[str, WrittenLine]:
        """Every word that opens a line of such a block, with its line."""
        return {**self.labels, **{word: opener.line for word, opener in self.openers.items()}}


def _line(word: str, example: str, connectors: str = "") -> WrittenLine:
    return WrittenLine(word, example, frozenset(connectors.split()))


def _table(*lines: WrittenLine) -> dict[str, WrittenLine]:
    return {line.word: line for line in lines}


_SAY = _line("say", 'say "Over sets the depth; under runs off his heels."')
_CAUTION = _line("caution", 'caution "No contact in this drill."')
_IDEA = _line("idea", 'idea "Two men cross low, and one sits where they meet."')
_SAYS = _line("says", 'over says "Set the depth at six."')

_SIGNAL = _line("signal", 'signal "two fists on the chest"')
_WORD = _line("word", "word Maple")
_SUITS = _line("suits", "suits 2nd and 4 to 6, red zone")
_INSTALL = _line("install", "install day 2")

_CONCEPT_LABELS = (
    _line("family", "family Shallow Crossers"),
    _line("read", "read flat on quick > near with dig on 3 > top on reset", "on with"),
    _line("pressure", "pressure flat on quick > near with dig > far", "on with"),
    _line("feet", "feet quick, 3, reset"),
    _line("spot", "spot near is low, away from settle", "is"),
    _line("claims", "claims high-low dig above near on hook defender", "above on"),
    _line("pair", "pair dig above near on hook defender", "above on"),
    _line("needs", "needs under within 6 of tackle at snap", "within of at"),
    _line("pick", "pick field"),
    _line("alert", "alert clear on corner", "on"),
    _line("kill", "kill to Stick when 8 or more in box", "to"),
    _line("protect", "protect six slide"),
    _SAY,
    _CAUTION,
)
_CONCEPT_VERBS = (
    _line("is", "settle is strong #2"),
    _line("runs", "settle runs sit 8 over ball"),
    _line("blocks", "flat blocks edge"),
    _line("moves", "under moves across"),
    _line("decides", "clear decides at 6 on corner", "on"),
    _SAYS,
)
_RUN_LABELS = (
    _line("toward", "toward call"),
    _line("handoff", "handoff first"),
    _line("key", "key end is man on line, backside", "is"),
    _line("give", "give if he widens", "if"),
    _line("pull", "pull if he chases the back", "if"),
    _line("throw", "throw slant if he fits the run", "if"),
    _line("pitch", "pitch off second man outside tackle if he comes at you", "off to if"),
)
_BALL = "to at after"
_RUN_VERBS = (
    _line("aims", "carrier aims playside B"),
    _line("snaps", "centre snaps to carrier", _BALL),
    _line("hands", "carrier hands to taker at 5 deep, backside guard", _BALL),
    _line("tosses", "quarterback tosses to carrier", _BALL),
    _line("pitches", "quarterback pitches to trail", f"{_BALL} if"),
    _line("throws", "quarterback throws to out at 2 behind", f"{_BALL} if"),
    _line("shovels", "quarterback shovels to carrier", _BALL),
    _line("fakes", "quarterback fakes to fullback", _BALL),
    _line("gives", "quarterback gives if end stays", "if"),
    _line("keeps", "quarterback keeps if end chases", "if"),
    _line("scrambles", "weak #2 scrambles along"),
)
_CALL_ROW = _line("", 'Trey Right Power, left hash, "First look only."')
_SHOWN_ROW = _line("", "Trey Right Power against Odd Two, left hash", "against")
_OPENERS = (
    Opener(_line("openers", "openers"), _CALL_ROW),
    Opener(_line("situation", "situation 2nd and 7 or more"), _CALL_ROW),
    Opener(
        _line("wristband", "wristband Skill for Q, R, X", "for"),
        _line("", "holds openers, 2nd and 7 or more"),
        _table(
            _line("size", "size 4.75 x 2.75 inches"),
            _line("windows", "windows 2"),
            _line("holds", "holds openers, 2nd and 7 or more"),
        ),
    ),
    Opener(_line("scout", "scout Wednesday"), _SHOWN_ROW),
    Opener(_line("period", "period Inside Run, 12 minutes, thud, Wednesday"), _SHOWN_ROW),
)
_PUT_IN = _line("", "Wheel for Crossers", "for")
_INSTALL_OPENERS = (
    Opener(_line("day", "day 2, 2026-08-15"), _PUT_IN),
    Opener(_line("week", "week 6"), _PUT_IN),
)
_JOIN = _line("join", "join run Inside Zone")

OWN_WORDS = frozenset(
    ("say", "idea", "caution", "family", "hot", "join", "protect", "signal", "word")
)
"""Labels behind which a coach's own words or a name stand: no word there is a verb."""

KINDS: Mapping[str, BlockKind] = {
    "playbook": BlockKind(
        header="playbook Saltmarsh Herons",
        labels=_table(
            _line("version", "version 1"),
            _line("code", "code canadian amateur"),
            _line("season", "season 2026"),
            _line("house", "house numbers is 9", "is"),
            _line("league", "league hash is 24", "is"),
            _line("lower", "lower W650"),
            _line("against", "against Base"),
            _line("quarterback", "quarterback right"),
            _line("level", "level high school"),
            _line("scramble", "scramble short goes deep"),
            _line("picture", "picture middle"),
            _line("draw", "draw strong to field"),
            _line("kill", 'kill word "Anchor"'),
            _line("sections", "sections Crossing, Quick"),
            _line("theme", "theme dark"),
            _line("contact", "contact 30 minutes a day, 60 minutes a week"),
            _SAY,
            _CAUTION,
        ),
        verbs={},
        bare=True,
    ),
    "personnel": BlockKind(
        header="personnel Twelve",
        labels=_table(_SAY),
        verbs=_table(_line("is", "X is wideout"), _SAYS),
    ),
    "formation": BlockKind(
        header="formation Quads Tight extends Quads",
        labels=_table(
            _line("line", "line LT, LG, C, RG, RT"),
            _line("splits", "splits 1"),
            _line("people", "people Twelve"),
            _SIGNAL,
            _WORD,
            _line("snap", "snap to R"),
            _SAY,
        ),
        verbs=_table(_line("at", "X at call, 2 inside numbers, on line"), _SAYS),
        join="extends",
    ),
    "motion": BlockKind(
        header="motion Jet",
        labels=_table(_line("snap", "snap running"), _SIGNAL, _WORD, _SAY),
        verbs=_table(
            _line("moves", "Z moves to away, 2 outside tackle"),
            _line("starts", "Z starts 1.5 seconds"),
        ),
    ),
    "route": BlockKind(
        header="route Dig",
        labels=_table(
            _line("depth", "depth 12"),
            _line("stroke", "stroke up 12 then in 8"),
            _line("decides", "decides at 6 on corner", "on"),
            _SAY,
        ),
        verbs={},
    ),
    "concept": BlockKind(
        header="concept Deep Crossers extends Crossers",
        labels=_table(
            *_CONCEPT_LABELS, _IDEA, *_RUN_LABELS, _JOIN, _SUITS, _SIGNAL, _WORD, _INSTALL
        ),
        verbs=_table(*_CONCEPT_VERBS, *_RUN_VERBS),
        join="extends",
    ),
    "run": BlockKind(
        header="run Split Zone extends Inside Zone",
        labels=_table(*_CONCEPT_LABELS, _IDEA, *_RUN_LABELS, _SUITS, _SIGNAL, _WORD, _INSTALL),
        verbs=_table(*_CONCEPT_VERBS, *_RUN_VERBS),
        join="extends",
    ),
    "protection": BlockKind(
        header="protection Long extends Half Slide",
        labels=_table(
            _line("toward", "toward away from back or weak"),
            _line("point", "point middle linebacker"),
            _line("hot", "hot slant if two come from one side", "if"),
            _SAY,
            _CAUTION,
        ),
        verbs=_table(
            _line("is", "helper is back"),
            _line("blocks", "centre, playside guard blocks slide"),
            _SAYS,
        ),
        join="extends",
    ),
    "look": BlockKind(
        header="look Even Three extends Even",
        labels=_table(
            _line("strength", "strength strong"),
            _line("only", "only for Jumbo, three backs", "for"),
            _line("never", "never for Jumbo", "for"),
            _line("shows", "shows middle open"),
            _SAY,
        ),
        verbs=_table(
            _line("in", "T in 3, strong"),
            _line("at", "S at strong #3, 5 deep"),
            _line("covers", "S covers flat, strong"),
            _line("rushes", "T rushes B, strong behind E", "behind after"),
            _SAYS,
        ),
        join="extends",
        joins_many=True,
    ),
    "tag": BlockKind(
        header="tag Wheel for Crossers",
        labels=_table(
            *_CONCEPT_LABELS,
            *_RUN_LABELS,
            _JOIN,
            _line("keeps", "keeps read, feet"),
            _line("swap", "swap over with under", "with"),
            _line("tempo", "tempo fast"),
            _SIGNAL,
            _WORD,
        ),
        verbs=_table(*_CONCEPT_VERBS, *_RUN_VERBS),
        join="for",
        joins_many=True,
        join_required=True,
    ),
    "dress": BlockKind(
        header="dress Crossers",
        labels=_table(
            _line("in", "in Quads, Trips motion Jet", "motion with to but"),
            _line("with", "with Wheel + Return"),
            _line("to", "to right, left"),
            _line("motion", "motion Jet"),
            _line("from", "from left hash, middle"),
            _line("against", "against zone, off"),
            _line("never", "never Wheel in Quads", "in with to motion from"),
            _line("best", "best from left hash in Trips", "in with to motion from"),
            _line("only", "only in Quads with Wheel", "in with to motion"),
            _line("call", "call Quads Crossers Wheel as Comet", "as"),
            _SAY,
        ),
        verbs=_table(_line("only", "Wheel + Return only to right", "in with to motion")),
        many=True,
    ),
    "week": BlockKind(
        header="week 8 Larch Bay from 7 Ember Ridge",
        labels=_table(
            _line("date", "date 2026-10-17"),
            _line("faces", "faces Odd Two, Zero"),
            _line("drop", "drop all from goal line", "from"),
            _line("move", "move Trey Right Stick to openers", "from to after"),
            _line("short", "short Inside Zone is IZ", "is"),
            _line("number", "number Quads Right Crossers is 7", "is"),
            _line("numbers", "numbers together"),
            _line("practice", "practice Wednesday at 1530", "at"),
            _line("quiz", "quiz H, S on Thursday", "on"),
            _SAY,
        ),
        verbs={},
        join="from",
        bare=True,
        openers={opener.line.word: opener for opener in _OPENERS},
    ),
    "install": BlockKind(
        header="install Camp",
        labels=_table(_SAY),
        verbs={},
        bare=True,
        openers={opener.line.word: opener for opener in _INSTALL_OPENERS},
    ),
}

JOINS = frozenset(kind.join for kind in KINDS.values() if kind.join) - {"from"}
"""Joins that are a slip in a header of another kind; `from` may be a word of a name."""


TOPICS = {
    **dict.fromkeys(("boot", "roll", "sprint", "step", "steps"), "feet"),
    **dict.fromkeys(("reads", "looks", "look"), "read"),
    **dict.fromkeys(("stays", "helps", "help", "block", "blocking"), "blocks"),
    **dict.fromkeys(("goes", "route", "stutters"), "runs"),
    **dict.fromkeys(("sweep", "dive", "carry", "carries"), "aims"),
    **dict.fromkeys(("formation", "formations"), "in"),
    **dict.fromkeys(("left", "right", "sides", "ways"), "to"),
    **dict.fromkeys(("hash",), "from"),
    **dict.fromkeys(("across", "orbit", "jet"), "moves"),
    **dict.fromkeys(("package", "down", "yards"), "situation"),
    **dict.fromkeys(("play", "plays", "zone"), "covers"),
}
"""Words of a line that cannot be placed, and the line that such a line is likest to: its sample is
shown where the block has one."""


def holders(word: str) -> tuple[str, ...]:
    """The kinds of block in which ``word`` is a label or a verb, in the order of the table."""
    return tuple(k for k, kind in KINDS.items() if word in kind.turning or word in kind.verbs)


def joined_by(word: str) -> str:
    """The kinds of block whose header knows ``word``: "formation or concept"."""
    return " or ".join(k for k, kind in KINDS.items() if kind.join == word)
