"""What the words of a week name: calls, looks, men, and the week that it starts from."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from stemline.diagnostics.catalogue.calls import E602
from stemline.diagnostics.catalogue.names import E310
from stemline.diagnostics.catalogue.weeks import E986, E987, E998
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.diagnostics.in_words import either
from stemline.diagnostics.nearest import nearest
from stemline.playbook.kill_definitions import Sights
from stemline.playbook.playbook import Playbook
from stemline.playbook.week_definitions import Named, WeekDef
from stemline.read.read_guards import CONDITION_WORDS
from stemline.resolve.call_reading import read_call
from stemline.resolve.order import Order
from stemline.week.run_together import parted_man, parted_row


class WeekNames:
    """Finds what is named; what nothing is called is put into ``found``.

    ``looks`` are those of the playbook and its weeks, by key.
    """

    def __init__(self, book: Playbook, calls: Mapping[str, Order], found: list[Diagnostic]) -> None:
        self._book, self._calls, self.found = book, calls, found
        self._said: dict[str, str] = {}
        looks = {**book.looks, **book.week_looks}
        self.looks = {key: look.name for key, look in looks.items() if not look.broken}
        # What is wrong with these is told where they stand.
        self._broken_looks = looks.keys() - self.looks.keys()

    def canon(self, said: Named) -> str:
        """The call as the book speaks it; "" where it is none of its calls, which is told."""
        if said.text not in self._said:
            order, found = read_call(self._book, said.text, self._calls, said.span)
            spoken = order.spoken if order is not None else ""
            if order is not None and spoken not in self._calls:
                near = nearest(said.text, self._calls)
                found = (E602(call=spoken).at(said.span, nearest=near),)
                spoken = ""
            if not spoken and (near := parted_row(said.text, self._calls)):
                found = (E602(call=said.text).at(said.span, nearest=near),)
            self.found += found
            self._said[said.text] = spoken
        return self._said[said.text]

    def parent(self, week: WeekDef, weeks: Sequence[WeekDef]) -> WeekDef | None:
        """What the week starts from, by its number or its whole name."""
        said = week.parent
        if said is None:
            return None
        meant = next(
            (w for w in weeks if said.text.casefold() in (str(w.number), w.name.casefold())), None
        )
        if meant is None:
            near = nearest(said.text, [w.name for w in weeks])
            self.found.append(E986(found=said.text).at(said.span, nearest=near))
            return None
        if meant.number >= week.number:
            self.found.append(E987(number=week.number, found=meant.number).at(said.span))
            return None
        return meant

    def look(self, said: Named) -> str:
        """A look by its name; "" where the playbook and its weeks have none of it."""
        name = self.looks.get(said.text.casefold(), "")
        if not name and said.text.casefold() not in self._broken_looks:
            near = nearest(said.text, self.looks.values())
            known = either(self.looks.values())
            wrong = E310(kind="look", found=said.text, choices=known)
            self.found.append(wrong.at(said.span, nearest=near))
        return name

    def condition(self, said: Named | None, sights: Sights = ()) -> str:
        """What a row is called on: a look, or what he sees at the line."""
        if said is None:
            return ""
        words = said.text.casefold()
        parts = [p.strip() for each in words.split(",") for p in each.split(" or ")]
        if words in self.looks:
            return self.looks[words]
        if words in self._broken_looks:
            return ""
        if sights or all(part in (*CONDITION_WORDS, *self.looks) for part in parts):
            return said.text
        near = nearest(said.text, (*self.looks.values(), *CONDITION_WORDS))
        wrong = E310(kind="look", found=said.text, choices=either(self.looks.values()))
        self.found.append(wrong.at(said.span, nearest=near))
        return ""

    def letter(self, said: Named) -> str:
        """A man's letter as the book writes it; as it is said where it has none, which is told."""
        # A book may line up men without saying what they are.
        lined_up = (letter for f in self._book.formations.values() for letter in f.men)
        line = self._book.settings.code.line
        letters = {m.casefold(): m for m in (*self._book.people, *lined_up, *line)}
        if said.text.casefold() not in letters:
            near = parted_man(said.text) or nearest(said.text, letters.values())
            choices = ", ".join(letters.values())
            self.found.append(E998(man=said.text, choices=choices).at(said.span, nearest=near))
        return letters.get(said.text.casefold(), said.text)
