"""The engine's styles, looked up sooner: the same values by a shorter way.

A style works out each of its values when it is first asked for it. Most are the parent's or the
initial one as they stand, and need none of what the engine asks about the others.
"""

from __future__ import annotations

from collections.abc import Callable
from copy import copy
from functools import lru_cache, wraps
from typing import Any

from stemline.emit.engine_kinds import DISPLAYED, KIND, NAME, as_copy, kind_of

_NOTES = ("footnote-call", "footnote-marker", "note-call", "note-marker", "note-callback")
"""Parts of notes: the engine's own sheet has a style of each for every element."""

_ASIDE = ("left", "right", "inline-start", "inline-end", "footnote")
"""Where a box floats to that is not in the flow."""


def first_looks(missing: Callable[[Any, str], Any]) -> Callable[[Any, str], Any]:
    """As `ComputedStyle.__missing__`, at once where no sheet says anything of the property and its
    value needs no working out."""
    from weasyprint.css.computed_values import PHYSICAL_FUNCTIONS
    from weasyprint.css.functions import check_math
    from weasyprint.css.properties import INHERITED, INITIAL_NOT_COMPUTED, INITIAL_VALUES

    plain = [
        key for key in INITIAL_VALUES
        if key not in ("page", "position", "float", "display")
        and not key.startswith("text_decoration_")
    ]  # fmt: skip
    inherited = frozenset(key for key in plain if key in INHERITED)
    initial = {
        key: INITIAL_VALUES[key] for key in plain
        if key not in INHERITED and key not in INITIAL_NOT_COMPUTED
        and not check_math(INITIAL_VALUES[key])
    }  # fmt: skip
    sides = {
        key: [PHYSICAL_FUNCTIONS[key](block="ttb", inline=way) for way in ("ltr", "rtl")]
        for key in initial if key in PHYSICAL_FUNCTIONS
    }  # fmt: skip

    def looked_up(style: Any, key: str) -> Any:
        said = style.cascaded
        if key not in said:
            if key in initial:
                pair = sides.get(key)
                if pair is None or (pair[0] not in said and pair[1] not in said):
                    value = style[key] = initial[key]
                    return value
            if key in inherited and style.parent_style is not None:
                value = style[key] = style.parent_style[key]
                return value
        return missing(style, key)

    @wraps(missing)
    def __missing__(style: Any, key: str) -> Any:
        if key == NAME:  # asked of each at once, of many nothing else
            return looked_up(style, key)
        asked = vars(style).get(KIND, style)
        if asked is style and (asked := kind_of(style)) is not None:
            own = dict(style)
            style.update(asked.values)
            style.update(own)
            style.specified.update(asked.specified)
            if key in style:
                return style[key]
        if asked is None:
            return looked_up(style, key)
        if key in asked.values:
            if key in DISPLAYED:
                style.specified.update(asked.specified)
            value = style[key] = asked.values[key]
            return value
        value = asked.values[key] = looked_up(style, key)
        if key in DISPLAYED:
            asked.specified[key] = style.specified[key]
        return value

    return __missing__


def copied(copy_of: Callable[[Any], Any]) -> Callable[[Any], Any]:
    """As `ComputedStyle.copy`, of no kind: it is made to be changed."""

    @wraps(copy_of)
    def copy(style: Any) -> Any:
        return as_copy(copy_of(style))

    return copy


def in_normal_flow(asked: Callable[[Any], bool]) -> Callable[[Any], bool]:
    """As `Box.is_in_normal_flow`, the five questions in one."""

    @wraps(asked)
    def is_in_normal_flow(box: Any) -> bool:
        position = box.style["position"]
        return (
            box.style["float"] not in _ASIDE
            and position not in ("absolute", "fixed")
            and position[0] not in ("running()", "note()")
        )

    return is_in_normal_flow


@lru_cache(maxsize=1)
def without_notes(html: type[Any]) -> type[Any]:
    """The engine's class of documents, without the styles of notes: for pages that have none."""
    own = html._ua_stylesheets(None)
    noteless = [_noteless(sheet) for sheet in own]

    class NoteFree(html):  # type: ignore[misc]
        def _ua_stylesheets(self, forms: bool = False) -> Any:
            return super()._ua_stylesheets(forms) if forms else noteless

    return NoteFree


def _noteless(sheet: Any) -> Any:
    made = copy(sheet)
    made.matcher = copy(sheet.matcher)
    made.matcher.other_selectors = [
        each for each in sheet.matcher.other_selectors if each[3] not in _NOTES
    ]
    return made
