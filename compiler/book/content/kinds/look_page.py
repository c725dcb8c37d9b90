"""A look's page: where each defender lines up, what is his, and what another set makes of it."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass

from stemline.book.content.keeping import Reads
from stemline.book.content.letters import mark, marks, spoken
from stemline.book.content.page import Entry, Listing, Page, PageKind, Remark, sentence
from stemline.diagnostics.in_words import half_yards, together
from stemline.football.defence.techniques import GAPS
from stemline.football.defence.zones import shown_words
from stemline.football.defenders import Defence, Defender, Level
from stemline.football.play import LookSheet, Man, Play, Season

_OVER = 0.4
"""Yards: nearer than this to a man's middle, a defender stands over him."""
_BESIDE = 3.0
"""Yards: farther than this from every receiver, a defender's place is counted from the ball.
Both common practice, no published source."""


@dataclass(frozen=True)
class Post:
    """A row of a look's table: a defender, where he lines up, what is his, and what changes it."""

    man: str
    place: str
    duty: str
    changes: tuple[Remark, ...]


@dataclass(frozen=True, kw_only=True)
class LookPage(Page):
    """A look: ``shows`` are the words that it makes true ("zone", "middle closed"), ``told`` what
    is known of it besides: what it hides, how many come from where."""

    template = "look.html.jinja"
    listing = Listing.COLUMN
    duties = True
    half = True

    shows: str
    told: tuple[str, ...]
    rows: tuple[Post, ...]

    @property
    def under(self) -> str:
        return " · ".join((*((f"shows {self.shows}",) if self.shows else ()), *self.told))


def _pages(season: Season, _: Sequence[Page]) -> Iterator[LookPage]:
    return (_page(sheet, number) for number, sheet in enumerate(season.looks, 1))


KIND = PageKind(40, _pages, reads=Reads.CALLS)


def _page(sheet: LookSheet, number: int) -> LookPage:
    """The page of ``sheet``, the book's ``number``-th look from 1."""
    base = sheet.views[0]
    assert base.defence is not None, "a look's views show it"
    id_ = f"look-{number}"
    theirs = {d.label for d in base.defence.defenders}
    entries = tuple(
        Entry(
            f"{id_}-{i}",
            f"against {play.call.spoken}",
            play,
            _moved(play, base) if i else (),
            listed=False,
            aside=_shape(play),
        )
        for i, play in enumerate(sheet.views)
    )
    return LookPage(
        id=id_,
        name=sheet.name,
        family="Looks",
        drawn=f"{base.call.formation} · {_shape(base)}",
        base=entries[0],
        shows=", ".join(shown_words(base.defence)),
        told=(*_known(base.defence), *_after(sheet)),
        rows=_rows(sheet.views, sheet.adjusts),
        says=tuple(spoken(line, theirs) for line in sheet.says),
        dressups=entries[1:],
        again="against other sets",
    )


def _known(defence: Defence) -> tuple[str, ...]:
    hidden = f"before the snap {', '.join(defence.disguise)}" if defence.disguise else ""
    return tuple(words for words in (hidden, defence.rush_words) if words)


def _after(sheet: LookSheet) -> Iterator[str]:
    """What it shows once a man has moved, where that is something else."""
    for motions, words in sheet.after:
        yield f"after {together(motions)} {', '.join(words)}"


def _shape(play: Play) -> str:
    return "{}x{}".format(*play.shape)


def _rows(views: tuple[Play, ...], adjusts: tuple[tuple[str, str, str], ...]) -> tuple[Post, ...]:
    base = views[0]
    assert base.defence is not None
    ordered = sorted(base.defence.defenders, key=lambda d: _order(d, base.defence))
    theirs = {d.label for d in ordered}
    return tuple(
        Post(
            mark(d.label),
            place_words(d, base),
            _told(d, theirs),
            (
                *(
                    Remark(play.call.formation, words)
                    for play in views[1:]
                    if (words := _other(d, play, base))
                ),
                *(Remark(when, does) for man, when, does in adjusts if man == d.label),
            ),
        )
        for d in ordered
    )


def _order(d: Defender, defence: Defence | None) -> tuple[int, float]:
    """By level, and from the look's strong side to its weak one."""
    way = defence.strong.value if defence else 1
    return list(Level).index(d.level), -d.at.x * way


def _moved(play: Play, base: Play) -> tuple[Remark, ...]:
    """Every defender who stands or does another thing than in ``base``, those alike together."""
    assert base.defence is not None
    by_words: dict[str, list[str]] = {}
    for d in sorted(base.defence.defenders, key=lambda d: _order(d, base.defence)):
        words = _other(d, play, base)
        if words:
            by_words.setdefault(words, []).append(d.label)
    return tuple(Remark(marks(men), words) for words, men in by_words.items())


def _other(d: Defender, play: Play, base: Play) -> str:
    """What is other with a defender of ``base`` in ``play``."""
    assert play.defence is not None
    now = next((x for x in play.defence.defenders if x.label == d.label), None)
    if now is None:
        return "not there"
    place, duty = place_words(now, play), _duty(now)
    changed = [
        words
        for words, before in ((place, place_words(d, base)), (duty, _duty(d)))
        if words != before
    ]
    return ", ".join(changed)


def _duty(d: Defender) -> str:
    return d.duty.words if d.duty else ""


def _told(d: Defender, theirs: Collection[str]) -> str:
    """What is his, and the coach's own words for him; on this page a letter is theirs unless the
    coach says it is ours."""
    if not d.says:
        return _duty(d)
    said = (sentence(spoken(line, theirs)) for line in d.says)
    return " ".join((sentence(_duty(d)), *said)).strip()


def place_words(d: Defender, play: Play) -> str:
    """Where a defender stands: "3 technique, strong", "1 inside strong #1, 7 deep"."""
    assert play.defence is not None
    way = play.defence.strong.value
    side = "strong" if d.at.x * way > _OVER else "weak" if d.at.x * way < -_OVER else ""
    deep = "" if d.level is Level.LINE else f"{half_yards(d.at.y)} deep"
    if d.technique:
        numbered = d.level is Level.LINE and d.technique not in GAPS
        where = [f"{d.technique} technique" if numbered else d.technique, side]
    else:
        where = [_over(d, play) or _from_ball(d, side)]
    return ", ".join(part for part in (*where, deep) if part)


def _over(d: Defender, play: Play) -> str:
    """His place from the receiver he is nearest to; "" where none is near."""
    ranked = [m for m in play.men if m.rank is not None]
    near = min(ranked, key=lambda m: (abs(m.snap.x - d.at.x), m.label), default=None)
    if near is None or abs(near.snap.x - d.at.x) > _BESIDE:
        return ""
    off = abs(d.at.x) - abs(near.snap.x)
    if abs(off) < _OVER:
        return f"over {_rank(near, play)}"
    return f"{half_yards(abs(off))} {'outside' if off > 0 else 'inside'} {_rank(near, play)}"


def _rank(man: Man, play: Play) -> str:
    assert man.rank is not None
    return f"{'strong' if man.rank.side is play.strong else 'weak'} #{man.rank.number}"


def _from_ball(d: Defender, side: str) -> str:
    return f"{half_yards(abs(d.at.x))} {side}" if side else "over the ball"
