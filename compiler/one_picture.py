"""One call: found by its text, and drawn. Nothing that sets pages is loaded for an SVG."""

from __future__ import annotations

from dataclasses import replace

from stemline.diagnostics.catalogue.calls import E604
from stemline.diagnostics.catalogue.looks import W428
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.diagnostics.nearest import nearest
from stemline.football.conditions import LookWord
from stemline.football.field import BallSpot
from stemline.football.play import Kind, Play
from stemline.football.timing.levels import HIGH_SCHOOL, PlayingLevel
from stemline.outside.store import Store
from stemline.printing.drawings import Drawings, Showing
from stemline.read.read_guards import read_look_words
from stemline.resolve.call_reading import read_call
from stemline.resolve.kills import kills_of
from stemline.session import Session, no_collecting
from stemline.source import Span
from stemline.theme import Size, Theme


def call_play(
    compiled: Session, text: str, spot: str | None, against: str, place: str = "the call"
) -> tuple[Play | None, tuple[Diagnostic, ...]]:
    """The play of a call's text, from a ball spot; None with the reasons.

    ``against`` is the name of a look of the playbook, or words that a defence shows; ``place`` is
    what the text is called in a message.
    """
    if compiled.book is None:
        return None, ()
    at = Span.over(place, text)
    order, found = read_call(compiled.book, text, compiled.calls.by_name, at)
    if order is None:
        return None, found
    looks: tuple[LookWord, ...] = ()
    key = " ".join(against.split()).casefold()
    named = key if key in compiled.book.looks else ""
    if against and not named:
        names = [look.name for look in compiled.book.looks.values()]
        looks, found = read_look_words(against, names)
        if found:
            return None, found
    if spot is None:
        play, found = compiled.drawn(order)
    if spot or against:
        at_spot = BallSpot(spot) if spot else play.ball if play else order.timed_from
        play, found = compiled.play(order, at_spot, looks, named)
        if play is not None and kills_of(compiled.book, order):
            known = compiled.drawn(order)[0]
            play = replace(play, becomes=known.becomes if known is not None else ())
        look = compiled.book.looks.get(named)
        if look is not None and look.limited and play is not None and play.defence is None:
            told = W428(call=order.spoken, look=look.name, sets=look.sets)
            return None, (told.at(Span.over("--against", against)),)
    errors = tuple(d for d in found if d.is_error)
    return (None, errors) if errors else (play, ())


@no_collecting()
def drawn(
    play: Play,
    theme: Theme,
    size: Size = Size.FULL,
    kind: str = ".svg",
    *,
    only: str | None = None,
    before: Play | None = None,
    level: PlayingLevel = HIGH_SCHOOL,
    duties: bool = False,
    store: Store | None = None,
) -> bytes:
    """The picture of a play as SVG, or where ``kind`` is ".pdf" or ".png" as that.

    ``only`` is the label of the one man who is drawn strong, ``before`` the play as it was, under
    it, and ``level`` how fast the men are. ``duties`` draws what each man of a look does, on a
    pass: on a run the blocks say it. What the call is killed to is said under it, since no page
    shows it beside. Raises as `made_book` does.
    """
    killed = tuple(f"{one.headed} when {one.when}" for one in play.becomes)
    shown = duties and play.kind is Kind.PASS and play.defence is not None
    wanted = Showing(size, only=only, duties=shown, before=before, captions=killed)
    art = Drawings(theme, level, store).art("call", play, wanted, svg=True)
    if kind == ".svg":
        return art.svg.encode()
    # Pages and dots are made by libraries that an SVG can do without.
    from stemline.emit.apart import apart
    from stemline.emit.single import picture_pdf, picture_png

    return apart(theme, 1, picture_pdf, art, theme) if kind == ".pdf" else picture_png(art, theme)


def his_label(play: Play, said: str, at: Span) -> tuple[str | None, tuple[Diagnostic, ...]]:
    """The label of the man of ``play`` whom ``said`` names, in any case; None with the reason."""
    labels = [man.label for man in play.men]
    label = next((name for name in labels if name.casefold() == said.strip().casefold()), None)
    if label is not None:
        return label, ()
    found = E604(man=said, call=play.call.spoken, choices=", ".join(labels)).at(
        at, nearest=nearest(said, labels)
    )
    return None, (found,)
