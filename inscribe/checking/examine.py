"""Everything that is the matter with one record."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import groupby
from pathlib import Path
from typing import TYPE_CHECKING

from inscribe import files, tables
from inscribe.checking.findings import Finding, finding
from inscribe.checking.vocabulary import unusual
from inscribe.collation.space import missing
from inscribe.errors import InscribeError, ProblemsError
from inscribe.record import Inscription, Locator, Record, loads, partly_boxed
from inscribe.signs import Certainty, Transcription, place_of

if TYPE_CHECKING:
    from inscribe.reading.words import Interpretation

LookUp = Callable[[str], bool]
STATES = {
    Certainty.UNREADABLE: "unreadable",
    Certainty.DOUBTFUL: "doubtful",
    Certainty.RESTORED: "restored",
}


def examine(path: Path, in_library: LookUp) -> tuple[str | None, list[Finding]]:
    """Return the id of the record in a file (None if it cannot be read), and what is found in it.

    ``in_library`` tells whether the library has a source text of an id.
    """
    try:
        text = files.read_text(path)
        record = loads(text, str(path), path.parent)
    except ProblemsError as problems:
        return None, [_error(error, path) for error in problems.errors]
    except InscribeError as error:
        return None, [_error(error, path)]
    try:
        return record.id, list(_Examination(record, path, text, in_library).findings())
    except InscribeError as error:  # as one inscription that is longer than can be read
        return record.id, [_error(error.in_file(str(path)), path)]


def _error(error: InscribeError, path: Path) -> Finding:
    column = f" (column {error.place.column})" if error.place.column else ""
    advice = f"; {error.hint}" if error.hint else ""
    return finding("record", str(path), error.place.line, f"{error.message}{column}{advice}")


class _Examination:
    """The findings of one record that could be read."""

    def __init__(self, record: Record, path: Path, text: str, in_library: LookUp) -> None:
        self.record = record
        self.path = path
        self.text = text
        self.in_library = in_library
        self._locator: Locator | None = None

    def findings(self) -> Iterator[Finding]:
        """Yield every finding, inscription by inscription."""
        from inscribe import reading

        yield from self._words(0, "kind", self.record.kind, ("kind",))
        years: list[tuple[int, int]] = []
        every: list[Interpretation] = []
        for number, inscription in enumerate(self.record.inscriptions):
            read = reading.read(
                inscription.transcription,
                inscription.register,
                inscription.overrides,
                between=self.record.between,
                passages=inscription.passages,
                source=inscription.source.text if inscription.source else "",
            )
            for field in ("place", "hand", "execution"):
                where = ("inscription", number, field)
                yield from self._words(number, field, getattr(inscription, field), where)
            yield from self._signs(number, inscription)
            yield from self._dates(number, read)
            yield from self._suspicions(number, inscription)
            yield from self._reading(number, read)
            yield from self._source(number, inscription)
            yield from self._boxes(number, inscription)
            yield from self._readers(number, inscription)
            every.append(read)
            years += [(number, d.year) for d in read.dates if d.year is not None and d.sure]
        yield from self._years(years)
        if tables.has_own("people"):
            yield from self._lives(every)

    def _lives(self, every: list[Interpretation]) -> Iterator[Finding]:
        """Yield the names that are nobody's of the user's list, as the dates on the object go."""
        from inscribe.persons import with_persons

        for number, read in enumerate(with_persons(every)):
            for _, some in groupby(read.persons, key=lambda named: named.stretch):
                rivals = list(some)
                if all(named.life for named in rivals):
                    said = "; ".join(named.life for named in rivals)
                    yield self._found("life-dates", f"{rivals[0].text}: {said}", number)

    def _words(
        self, number: int, field: str, said: str | None, path: tuple[str | int, ...]
    ) -> Iterator[Finding]:
        if said and (message := unusual(field, said)):
            yield self._found("unusual-word", message, number, field, path)

    def _found(
        self,
        code: str,
        message: str,
        inscription: int,
        key: str = "text",
        path: tuple[str | int, ...] = (),
    ) -> Finding:
        if self._locator is None:
            self._locator = Locator(self.text)
        line = self._locator.nearest(path or ("inscription", inscription, key)).line
        return finding(code, str(self.path), line, message, self.record.id)

    def _signs(self, number: int, inscription: Inscription) -> Iterator[Finding]:
        t = inscription.transcription
        for state, run in groupby(t.signs, key=lambda sign: STATES.get(sign.certainty, "")):
            if state:
                places = [sign.index for sign in run]
                yield self._found(state, _where(t, places[0], places[-1]), number)

    def _dates(self, number: int, read: Interpretation) -> Iterator[Finding]:
        between = self.record.between
        for date in read.dates:
            if date.agreement == "conflict":
                first = f"; perhaps {date.suggestions[0]}" if date.suggestions else ""
                yield self._found("date-conflict", f"{date.text}: {date.why}{first}", number)
            elif between and date.year is not None and not between[0] <= date.year <= between[1]:
                said = (
                    f"{date.text} is {date.year}; the maker's years are {between[0]}-{between[1]}"
                )
                yield self._found("maker-dates", said, number)

    def _years(self, years: list[tuple[int, int]]) -> Iterator[Finding]:
        if len(years) > 1 and max(y for _, y in years) - min(y for _, y in years) > 60:
            said = ", ".join(str(year) for _, year in years)
            yield self._found("dates-disagree", f"the object bears {said}", years[-1][0])

    def _suspicions(self, number: int, inscription: Inscription) -> Iterator[Finding]:
        from inscribe.reading.suspicious import suspicions

        t = inscription.transcription
        for found in suspicions(t.signs):
            code = "simplified-form" if found.kind == "simplified" else "suspicious"
            message = f"{_where(t, found.sign, found.end)}: {found.said}"
            yield self._found(code, message, number)

    def _reading(self, number: int, read: Interpretation) -> Iterator[Finding]:
        from inscribe.reading.inscription import (
            doubts_of_dates,
            doubts_of_signs,
            doubts_of_suspicions,
        )

        t = self.record.inscriptions[number].transcription
        told = {  # under words of their own
            *doubts_of_signs(t.signs),
            *doubts_of_suspicions(t.signs),
            *doubts_of_dates(read.dates),
        }
        for doubt in read.doubts:
            if doubt not in told and any(
                sign.is_legible for sign in t.signs[doubt.first : doubt.last + 1]
            ):
                where = _where(t, doubt.first, doubt.last)
                yield self._found("reading", f"{where}: {doubt.why}", number)

    def _source(self, number: int, inscription: Inscription) -> Iterator[Finding]:
        source = inscription.source
        if source is None:
            return
        if source.id and not source.text and not self.in_library(source.id):
            yield self._found("source-missing", f"no text {source.id}", number, "source")
        if inscription.plate is None or not (inscription.columns or inscription.boxes):
            yield self._found("unmeasured", "plate or columns are not measured", number, "source")
        elif wanted := missing(inscription.transcription, inscription):
            said = f"not measured: {'; '.join(wanted)}"
            yield self._found("unmeasured", said, number, "source")

    def _boxes(self, number: int, inscription: Inscription) -> Iterator[Finding]:
        for said in partly_boxed(inscription) if inscription.boxes else ():
            yield self._found("part-boxed", said, number, "box")

    def _readers(self, number: int, inscription: Inscription) -> Iterator[Finding]:
        if not inscription.readers:
            yield self._found("no-reader", "nobody is named", number)
        for key in ("text", "kana", "romaji"):
            said = {getattr(reader, key) for reader in inscription.readers} - {""}
            if len(said) > 1:
                names = ", ".join(reader.by for reader in inscription.readers)
                yield self._found("readers-differ", f"{names}: {key}", number, "reading")


def _where(t: Transcription, first: int, last: int) -> str:
    """Return the place of a run of signs, and the signs."""
    shown = "".join(sign.text or "□" for sign in t.signs[first : last + 1])
    return f"{place_of(t, first, last)}: {shown}"
