"""Pages of a coach's own theme are set in a process that is held to its bounds and dies with us.

Each test starts a process, which takes a second or two.
"""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parent / "book"))

from sample_gallery import CAPTIONS, gallery_of
from sample_season import sample_season

from stemline.book.content.book import Book, Edition, make_book
from stemline.emit import apart as setting
from stemline.emit import html as templates
from stemline.emit.apart import apart
from stemline.emit.gallery import Gallery
from stemline.emit.html import filled
from stemline.emit.pdf import PangoMissing, to_pdf
from stemline.theme import Refused, Theme, load_theme, read_theme

PLAIN = load_theme().layers[0].files

posix = pytest.mark.skipif(not hasattr(signal, "SIGXCPU"), reason="bounds of another kind")


def own(folder: Path, **files: str) -> Theme:
    """A theme with these files; in a name, two strokes stand for a dot."""
    folder.mkdir(exist_ok=True)
    for name, text in {"theme__toml": "", **files}.items():
        (folder / name.replace("__", ".")).write_text(text, "utf-8")
    got = read_theme(folder, "mine")
    assert got.theme is not None, got.diagnostics
    return got.theme


_BODY = PLAIN["book.html.jinja"].decode().partition("<body>")[0].count("\n") + 1
"""The line on which the pages of a book begin."""


def page(body: str) -> str:
    return PLAIN["book.html.jinja"].decode().replace("<body>", f"<body>\n{body}")


@pytest.fixture(scope="module")
def book() -> tuple[Book, Gallery]:
    whole = sample_season()
    season = type(whole)(**{**vars(whole), "plays": whole.plays[-7:]})
    return make_book(season, Edition("a", ""), CAPTIONS), gallery_of(season, CAPTIONS)


# What the process does, by name.


def fill(theme: Theme) -> bytes:
    templates.TEMPLATE_SECONDS = 1
    return filled(theme, "own.jinja").encode()


def shout(theme: Theme) -> bytes:
    print("a library that prints", flush=True)
    os.write(1, b"done\nand lies")
    return b"the answer\ndone\n\0"


def take_room(theme: Theme) -> bytes:
    return b"x" * 10**11


def go_round(theme: Theme) -> bytes:
    while True:
        pass


def swallow(theme: Theme) -> bytes:
    while True:
        try:
            go_round(theme)
        except BaseException:
            continue


def break_down(theme: Theme) -> bytes:
    os.abort()


def say_who(theme: Theme, file: str) -> bytes:
    Path(file).write_text(str(os.getpid()), "utf-8")
    time.sleep(60)
    return b""


def leave_behind(theme: Theme) -> bytes:
    import tempfile

    return str(tempfile.mkdtemp()).encode()


def miss_pango(theme: Theme) -> bytes:
    raise PangoMissing(OSError("cannot load it"))


def err(theme: Theme) -> bytes:
    raise AttributeError("\x1b[31mno such\nthing")


def message(theme: Theme, make: Callable[..., bytes]) -> str:
    with pytest.raises(Refused) as refused:
        apart(theme, 0, make, theme)
    found = str(refused.value)
    assert found.count(": error E") == 1
    return found


def test_a_bundled_theme_is_set_here() -> None:
    assert apart(load_theme(), 0, lambda: b"%d" % os.getpid()) == b"%d" % os.getpid()


def test_the_answer_is_what_the_work_gave_whatever_is_printed(tmp_path: Path) -> None:
    theme = own(tmp_path)
    assert apart(theme, 0, shout, theme) == b"the answer\ndone\n\0"


def test_the_bytes_are_those_that_are_made_here(tmp_path: Path, book: tuple[Book, Gallery]) -> None:
    theme = own(tmp_path, book__css="h1 { letter-spacing: 1pt }")
    values = (*book, theme, "2026-05-01")
    assert apart(theme, 7, to_pdf, *values) == to_pdf(*values)


@posix
def test_a_template_that_goes_round_is_told_with_its_line(tmp_path: Path) -> None:
    loop = "{% for a in range(99999) %}{% for b in range(99999) %}{% endfor %}{% endfor %}"
    found = message(own(tmp_path, own__jinja=f"a\n{loop}"), fill)
    assert "own.jinja:2:1: error E913" in found
    assert "takes longer than 1 seconds" in found


@posix
@pytest.mark.parametrize("text", ["{{ 'x'|center(10**11) }}", "{{ '%0100000000000d'|format(1) }}"])
def test_a_template_that_takes_all_room_is_told_with_its_line(tmp_path: Path, text: str) -> None:
    found = message(own(tmp_path, own__jinja=f"a\n{text}"), fill)
    assert "own.jinja:2:1: error E913" in found and "more memory" in found


@posix
@pytest.mark.parametrize("make", [go_round, swallow])
def test_work_without_end_is_ended(
    tmp_path: Path, make: Callable[..., bytes], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(setting, "SECONDS", 2)
    monkeypatch.setattr(setting, "GRACE", 1)
    assert "error E915" in message(own(tmp_path), make)


def test_the_clock_on_the_wall_ends_what_nothing_else_does(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(setting, "SECONDS", 2)
    monkeypatch.setattr(setting, "SLACK", 1)
    theme = own(tmp_path)
    with pytest.raises(Refused, match="E915"):
        apart(theme, 0, say_who, theme, str(tmp_path / "pid"))


@posix
def test_room_without_end_is_refused(tmp_path: Path) -> None:
    assert "error E915" in message(own(tmp_path), take_room)


def test_a_library_that_breaks_down_is_one_message(tmp_path: Path) -> None:
    assert "error E918" in message(own(tmp_path), break_down)


def test_any_error_is_one_message_on_one_line(tmp_path: Path) -> None:
    found = message(own(tmp_path), err)
    assert "error E918" in found and "AttributeError" in found and "no such thing" in found


def test_our_own_exceptions_come_over_as_they_are(tmp_path: Path) -> None:
    theme = own(tmp_path)
    with pytest.raises(PangoMissing, match="apt-get install"):
        apart(theme, 0, miss_pango, theme)


def test_no_process_is_one_message(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "executable", str(tmp_path / "gone"))
    assert "no process can be started" in message(own(tmp_path), shout)


def test_what_it_leaves_behind_goes_with_it(tmp_path: Path) -> None:
    theme = own(tmp_path)
    left = apart(theme, 0, leave_behind, theme).decode()
    assert "stemline-" in left and not Path(left).parent.exists()


_WAITS = """
import sys
sys.path[:0] = [{tests!r}]
from pathlib import Path
from test_theme_apart import own, say_who
from stemline.emit.apart import apart
theme = own(Path({folder!r}))
try:
    apart(theme, 0, say_who, theme, {pid!r})
except KeyboardInterrupt:
    sys.exit(130)
"""


@posix
@pytest.mark.parametrize("how", [signal.SIGKILL, signal.SIGTERM, signal.SIGINT])
def test_the_process_ends_with_the_one_that_waits(tmp_path: Path, how: signal.Signals) -> None:
    pid = tmp_path / "pid"
    text = _WAITS.format(
        tests=str(Path(__file__).parent), folder=str(tmp_path / "mine"), pid=str(pid)
    )
    waiting = subprocess.Popen([sys.executable, "-c", text], start_new_session=True)
    assert came(lambda: pid.exists() and pid.read_text("utf-8") != "", 60)
    child = int(pid.read_text("utf-8"))
    if how is signal.SIGINT:
        os.killpg(waiting.pid, how)  # as a terminal does: to both
    else:
        waiting.send_signal(how)
    assert waiting.wait(20) == (130 if how is signal.SIGINT else -how)
    assert came(lambda: not alive(child), 20)


def came(what: Callable[[], bool], seconds: float) -> bool:
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        if what():
            return True
        time.sleep(0.05)
    return False


def alive(pid: int) -> bool:
    """Whether the process runs; one that has ended and is not yet asked after does not."""
    try:
        state = Path(f"/proc/{pid}/stat").read_text("utf-8").rpartition(")")[2].split()[0]
    except OSError:
        try:
            os.kill(pid, 0)
        except OSError:
            return False
        return not Path("/proc/self").exists()
    return state != "Z"


# Pages that ask for more than they may have.


@pytest.mark.parametrize(
    ("asks", "why"),
    [
        ('<a href="javascript:alert(1)">x</a>', "a link to javascript:alert(1)"),
        ('<a rel=attachment href="stemline:theme/other.css">x</a>', "a link to stemline:theme"),
        ('<link rel=attachment href="file:///etc/passwd">', "a file attached"),
        ('<object data="file:///etc/passwd"></object>', "file:///etc/passwd is outside the book"),
        (
            '<link rel=stylesheet href="stemline:theme/other.css">',
            "http://127.0.0.1/x.css is outside the book",
        ),
    ],
)
def test_a_page_that_asks_for_more_is_told_at_its_line(
    tmp_path: Path, book: tuple[Book, Gallery], asks: str, why: str
) -> None:
    other = '@import "http://127.0.0.1/x.css";\n'
    theme = own(tmp_path, book__html__jinja=page(asks), other__css=other)
    with pytest.raises(Refused) as refused:
        to_pdf(*book, theme, "")
    found = str(refused.value)
    assert why in found
    file = "other.css:1" if "stylesheet" in asks else f"book.html.jinja:{_BODY + 1}"
    assert f"{file}:1: error E916" in found


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("book__html__jinja", page("").replace('id="care"', "")),
        ("book__css", ".care { display: none }"),
        ("page__html__jinja", "{% macro laid_page(a, b, c, d) %}{% endmacro %}"),
    ],
)
def test_a_theme_that_leaves_out_what_is_measured_is_told(
    tmp_path: Path, book: tuple[Book, Gallery], name: str, text: str
) -> None:
    with pytest.raises(Refused) as refused:
        to_pdf(*book, own(tmp_path, **{name: text}), "")
    assert f"{name.replace('__', '.')}: error E914" in str(refused.value)
