"""A play as a picture: the one way from a `Play` to a `Scene`."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from stemline.describe.changes import told
from stemline.football.play import Play
from stemline.football.timing.levels import HIGH_SCHOOL, PlayingLevel
from stemline.geometry.box import Box
from stemline.picture.frame.board import frame_of, framed
from stemline.picture.frame.both import both_of
from stemline.picture.labels.lettering import Lettered, letter
from stemline.picture.labels.placing import Crowding, crowding
from stemline.picture.lines.ball_strokes import weighed
from stemline.picture.lines.crossings import break_lines
from stemline.picture.lines.laid import LaidLines, LinePlan, lay_lines
from stemline.picture.lines.motions import Moved, lay_motions
from stemline.picture.lines.old_lines import old_lines, old_motions
from stemline.picture.men.standing import Standing, all_standing, stood_before
from stemline.picture.men.symbols import men_items
from stemline.picture.overlay.before import lines_left, motions_left, rings
from stemline.picture.overlay.claims import claim_items
from stemline.picture.paper.symbol import Symbol
from stemline.picture.scene.ink import Ink
from stemline.picture.scene.scene import Item, Layer, Scene
from stemline.theme import Size, Theme

__all__ = ["Ground", "begin", "frame_of", "how_crowded", "picture"]

_ALWAYS = frozenset({"field", "claims", "routes", "motions", "leaders", "men", "notes"})
"""Layers that every picture has, empty or not."""


def picture(
    play: Play,
    size: Size,
    theme: Theme,
    frame: Box | None = None,
    only: str | None = None,
    duties: bool = False,
    before: Play | None = None,
    level: PlayingLevel = HIGH_SCHOOL,
    solid: tuple[str, ...] = (),
    whole: bool = False,
    ground: Ground | None = None,
) -> Scene:
    """``play`` drawn at ``size``.

    ``frame`` is a content box from `frame_of`, to give several plays one scale; by default the
    play's own. ``only`` is the label of one man: the others and their paths are drawn pale.
    ``duties`` adds what each defender is there for: for a look's own page and for a look team.
    ``before`` is the play as it was: what is true of it no more lies dashed and pale under it.
    ``level`` says how fast the men are, and so who is first where two paths cross. ``solid`` are
    the labels of men drawn solid without making the others pale. With ``whole`` no defender is left
    out, however small the picture is. ``ground`` is what `begin` makes of the rest, where the same
    play was drawn for another man before.
    """
    return _drawing(
        play, size, theme, frame, only, duties, before, level, solid, whole, ground
    ).scene


@dataclass(frozen=True)
class Ground:
    """A picture as far as it is the same whoever it is for: the play ``now`` as it shows it, the
    men and their lines in ``plan``, and who ``stood`` before."""

    now: Play
    plan: LinePlan
    stood: Standing | None


def begin(
    play: Play,
    size: Size,
    theme: Theme,
    frame: Box | None,
    duties: bool,
    before: Play | None,
    level: PlayingLevel,
    whole: bool = False,
) -> Ground:
    """The ground of a `picture` of the same values."""
    both = both_of(play, before, size)
    men = all_standing(both.now, framed(both.shot, frame, size, theme, duties, whole))
    stood = stood_before(both.was, men) if both.was is not None else None
    return Ground(both.now, LinePlan(men, level, play), stood)


def how_crowded(play: Play, size: Size, theme: Theme, frame: Box | None = None) -> Crowding:
    """How hard it was to find a place for each label of the `picture` of ``play``."""
    made = _drawing(play, size, theme, frame, None, False, None, HIGH_SCHOOL)
    laid = made.laid
    return crowding(made.words.written, laid.drawn, made.moved, laid.symbols, laid.on)


@dataclass(frozen=True)
class _Drawing:
    """A scene, and what it was made of."""

    scene: Scene
    laid: LaidLines
    moved: tuple[Moved, ...]
    words: Lettered


def _drawing(
    play: Play,
    size: Size,
    theme: Theme,
    frame: Box | None,
    only: str | None,
    duties: bool,
    before: Play | None,
    level: PlayingLevel,
    solid: tuple[str, ...] = (),
    whole: bool = False,
    ground: Ground | None = None,
) -> _Drawing:
    ground = ground or begin(play, size, theme, frame, duties, before, level, whole)
    men, stood = ground.plan.men, ground.stood
    signs, on = men_items(men.symbols, men.on, only, solid), men.on
    laid = lay_lines(ground.plan, only)
    moved, old = _moved(laid, stood)
    lines = break_lines(
        (
            Layer("duties", laid.tasks.lines),
            Layer("before", old.items),
            Layer("routes", laid.routes),
            Layer("motions", tuple(item for m in moved for item in m.items)),
        ),
        laid.moments,
        on,
    )
    tasks, dashed, routes, motions = (layer.items for layer in lines)
    routes = weighed(routes, laid.held, laid.places)
    words = letter(laid, moved, old.ink, stood is not None, old.lost)
    layers = (
        Layer("drops", laid.tasks.ground),
        Layer("field", (*laid.field, *words.field)),
        Layer("claims", claim_items(ground.now, on.mark("claim"))),
        Layer("duties", (*tasks, *words.duties)),
        Layer("behind", () if on.close else laid.defence),
        Layer("before", dashed),
        Layer("routes", routes),
        Layer("ball", laid.ball),
        Layer("motions", motions),
        Layer("leaders", words.written.leaders),
        Layer("men", signs),
        Layer("defence", laid.defence if on.close else ()),
        Layer("notes", words.written.items),
    )
    kept = tuple(layer for layer in layers if layer.items or layer.name in _ALWAYS)
    scene = Scene(*told(play, before, duties), on.frame, on.scale, size, kept)
    return _Drawing(scene, laid, moved, words)


@dataclass(frozen=True)
class _Old:
    """What is left of the play as it was: its lines and rings, and the men who have no ring.

    ``ink`` is that of all lines, new and old.
    """

    items: tuple[Item, ...]
    lost: Sequence[Symbol]
    ink: Ink


def _moved(now: LaidLines, stood: Standing | None) -> tuple[tuple[Moved, ...], _Old]:
    """The motions, between the lines of the play as it was and what is left of its motions."""
    if stood is None:
        moved, ink = lay_motions(now, ())
        return moved, _Old((), (), ink)
    old = old_lines(now, stood)
    under = lines_left(now, old)
    moved, ink = lay_motions(now, under.items)
    old_moved, ink = old_motions(now, old, ink)
    gone = motions_left(now, old, old_moved)
    ringed = rings((under, gone), moved, now, ink)
    return moved, _Old((*ringed.items, *gone.items, *under.items), ringed.lost, ringed.ink)
