"""Words are measured from the file they are drawn from."""

from __future__ import annotations

import io
import subprocess
import sys

import pytest
from fontTools.ttLib import TTFont

from stemline.picture.scene.metrics import Face, extent, faces
from stemline.theme import Size, Type, load_theme

THEME = load_theme()


def test_width_is_the_sum_of_the_letters() -> None:
    kind = Type("bold", 10.0, "")
    one, two = extent("12", kind, THEME), extent("1", kind, THEME)
    assert one.width == pytest.approx(two.width + extent("2", kind, THEME).width)
    assert extent("12", Type("bold", 20.0, ""), THEME).width == pytest.approx(2 * one.width)


def test_only_letters_that_hang_have_room_below() -> None:
    kind = THEME.look(Size.FULL).types["words"]
    assert extent("zone", kind, THEME).fall == 0
    assert extent("motion by Q", kind, THEME).fall > 0


def test_outlines_stay_within_their_measure() -> None:
    for face in faces(THEME).values():
        for letter in "XYHSZRQ0123456789½é":
            glyph = face.glyph(letter)
            xs = [x for _, points in glyph.outline for x, _ in points]
            assert glyph.outline[0][0] == "M" and glyph.outline[-1][0] == "Z"
            assert min(xs) > -0.1 and max(xs) < glyph.advance + 0.1


def test_a_letter_the_face_lacks_is_drawn_as_a_question_mark() -> None:
    face = faces(THEME)["regular"]
    assert face.glyph("\u6f22") == face.glyph("?")


def test_a_face_without_a_question_mark_draws_its_own_mark_for_a_missing_letter() -> None:
    font = TTFont(io.BytesIO(THEME.fonts["regular"]))
    for table in font["cmap"].tables:
        table.cmap = {code: name for code, name in table.cmap.items() if chr(code) in "AB"}
    kept = io.BytesIO()
    font.save(kept)
    face = Face(kept.getvalue())
    missing = face.glyph("?")
    assert face.glyph("A").advance > 0
    assert missing.advance == font["hmtx"][".notdef"][0] / font["head"].unitsPerEm > 0
    assert face.glyph("\u6f22") == missing


def test_font_tools_are_loaded_only_when_something_is_measured() -> None:
    code = (
        "import sys; import stemline.picture.picture, stemline.picture.legend.legend; "
        "sys.exit('fontTools' in sys.modules)"
    )
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
