"""Draw every diagram of the bundled playbooks, read each back, print what is wrong with them."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterator
from itertools import chain
from pathlib import Path

from stemline.theme import Theme, load_theme

from .copies import copies, lost_by_role, small_letters, told_lost
from .pictures import BUNDLED, Picture, Sort, legend, pictures
from .sheet import sheet_png
from .table import by_roles, judge, table, told, worst


def main() -> None:
    parser = argparse.ArgumentParser(prog="python -m tests.gate", description=__doc__)
    parser.add_argument("--playbook", choices=BUNDLED, action="append", help="only this one")
    parser.add_argument("--worst", type=int, default=10, help="how many of the worst to tell")
    parser.add_argument("--only", default="", help="only diagrams with this in their name")
    parser.add_argument("--sort", choices=[s.name for s in Sort], help="only diagrams of a sort")
    parser.add_argument("--all", action="store_true", help="tell every diagram with a fault")
    parser.add_argument("--sheet", type=Path, help="write a contact sheet of the worst, a PNG")
    parser.add_argument("--copied", action="store_true", help="tell what a black copy has lost")
    asked = parser.parse_args()
    theme = load_theme()
    drawn = _drawn(tuple(asked.playbook or BUNDLED), asked.only, asked.sort, theme)
    if asked.copied:
        made = copies(drawn, theme)
        print(lost_by_role(made), small_letters(made), sep="\n\n")
        short = sorted((m for m in made if m.copy.lost), key=lambda m: -len(m.copy.lost))
        print("\n" + "\n".join(told_lost(m) for m in short[: None if asked.all else asked.worst]))
        return
    judged = [judge(picture, theme) for picture in drawn]
    print(table(judged), by_roles(judged), sep="\n\n")
    shown = worst(judged, len(judged) if asked.all else asked.worst)
    print("\n" + "\n".join(told(each) for each in shown))
    if asked.sheet is not None:
        asked.sheet.write_bytes(sheet_png(worst(judged, asked.worst), theme))


def _drawn(
    playbooks: tuple[str, ...], only: str, sort: str | None, theme: Theme
) -> Iterator[Picture]:
    drawn = chain(*(pictures(name, theme) for name in playbooks), legend(theme))
    for number, picture in enumerate(drawn, 1):
        if sys.stderr.isatty():
            print(f"\r{number}", end="", file=sys.stderr)
        if sort in (None, picture.sort.name) and only.casefold() in picture.name.casefold():
            yield picture


main()
