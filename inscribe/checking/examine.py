"""Everything that is the matter with one record, and what it says, from one reading."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby
from pathlib import Path
from typing import TYPE_CHECKING

from inscribe import files, tables
from inscribe.checking.ages import against_life
from inscribe.checking.examined import About, Examined, Remark
from inscribe.checking.pictured import pictures_of
from inscribe.checking.readers import called, differences
from inscribe.checking.two_ways import names_read
from inscribe.checking.vocabulary import unusual
from inscribe.collation.space import missing
from inscribe.concordance import NAME, Document, document_of_read, documents_of_read
from inscribe.errors import InscribeError, ProblemsError
from inscribe.notation import parse
from inscribe.record import Inscription, Locator, Record, loads, partly_boxed
from inscribe.signs import Certainty, Transcription, place_of

if TYPE_CHECKING:
    from inscribe.reading.words import Interpretation

STATES = {
    Certainty.UNREADABLE: "unreadable",
    Certainty.DOUBTFUL: "doubtful",
    Certainty.RESTORED: "restored",
}


def examine(path: Path, library: Path | None = None) -> Examined:
    """Return what is found in the record of a file.

    ``library`` is the file that has the words of sources named by their id alone.
    """
    try:
        text = files.read_text(path)
        record = loads(text, str(path), path.parent)
    except ProblemsError as problems:
        return Examined(None, [_error(error) for error in problems.errors], [])
    except InscribeError as error:
        return Examined(None, [_error(error)], [])
    examination = _Examination(record, text, library)
    try:
        remarks = list(examination.remarks())
    except InscribeError as error:  # as one inscription that is longer than can be read
        return Examined(About(record.id), [_error(error.in_file(str(path)))], [])
    documents = documents_of_read(record, str(path), examination.read)
    return Examined(examination.about(), remarks, documents)


def _error(error: InscribeError) -> Remark:
    column = f" (column {error.place.column})" if error.place.column else ""
    advice = f"; {error.hint}" if error.hint else ""
    return Remark("record", error.place.line, f"{error.message}{column}{advice}")


class _Examination:
    """The remarks on one record that could be read."""

    def __init__(self, record: Record, text: str, library: Path | None) -> None:
        self.record = record
        self.text = text
        self.library = library
        self.read: list[Document] = []
        self.unsettled: list[str] = []
        self.names: list[tuple[str, str]] = []
        self._locator: Locator | None = None

    def about(self) -> About:
        """Return what the check of a folder needs to know of the record."""
        record = self.record
        sources = tuple(
            (source.id, self._line(("inscription", number, "source", nth)))
            for number, each in enumerate(record.inscriptions)
            for nth, source in enumerate(each.sources)
            if source.id and not source.text
        )
        unsourced = any(
            each.source is None and read.register != "signature" and _is_copied(read)
            for each, read in zip(record.inscriptions, self.read, strict=True)
        )
        return About(
            record.id,
            record.kind,
            record.state,
            record.drawer,
            record.box,
            record.with_whom,
            record.title,
            sources,
            unsourced,
            tuple(dict.fromkeys(self.unsettled)),
            tuple((i.file, self._line(path)) for path, i in pictures_of(record) if i.file),
            tuple(dict.fromkeys(self.names)),
        )

    def remarks(self) -> Iterator[Remark]:
        """Yield every remark, inscription by inscription."""
        yield from self._words(0, "kind", self.record.kind, ("kind",))
        years: list[tuple[int, int]] = []
        every = self._every_reading()
        for number, (inscription, read) in enumerate(
            zip(self.record.inscriptions, every, strict=True)
        ):
            self.read.append(document_of_read(inscription.transcription, read))
            self.names += names_read(read)
            for field in ("place", "hand", "execution"):
                where = ("inscription", number, field)
                yield from self._words(number, field, getattr(inscription, field), where)
            yield from self._signs(number, inscription)
            yield from self._dates(number, read)
            yield from self._ages(number)
            yield from self._suspicions(number, inscription)
            yield from self._reading(number, read)
            yield from self._source(number, inscription)
            yield from self._boxes(number, inscription)
            yield from self._readers(number, inscription)
            years += [(number, d.year) for d in read.dates if d.year is not None and d.sure]
        yield from self._years(years)
        yield from self._lives(every)

    def _every_reading(self) -> Sequence[Interpretation]:
        """Return what each inscription says, and whom of the user's list it may name."""
        from inscribe import reading
        from inscribe.sources import spelling_of

        every = [
            reading.read(
                each.transcription,
                each.register,
                each.overrides,
                between=self.record.between,
                passages=each.passages,
                source=spelling_of(each.source, self.library),
            )
            for each in self.record.inscriptions
        ]
        if not tables.has_own("people"):
            return every
        from inscribe.persons import with_persons

        return with_persons(every)

    def _lives(self, every: Sequence[Interpretation]) -> Iterator[Remark]:
        """Yield the names that are nobody's of the user's list, as the dates on the object go."""
        for number, read in enumerate(every):
            for _, some in groupby(read.persons, key=lambda named: named.stretch):
                rivals = list(some)
                if all(named.life for named in rivals):
                    said = "; ".join(named.life for named in rivals)
                    yield self._found("life-dates", f"{rivals[0].text}: {said}", number)

    def _words(
        self, number: int, field: str, said: str | None, path: tuple[str | int, ...]
    ) -> Iterator[Remark]:
        if said and (message := unusual(field, said)):
            yield self._found("unusual-word", message, number, field, path)

    def _found(
        self,
        code: str,
        message: str,
        inscription: int,
        key: str = "text",
        path: tuple[str | int, ...] = (),
    ) -> Remark:
        return Remark(code, self._line(path or ("inscription", inscription, key)), message)

    def _line(self, path: tuple[str | int, ...]) -> int:
        if self._locator is None:
            self._locator = Locator(self.text)
        return self._locator.nearest(path).line

    def _signs(self, number: int, inscription: Inscription) -> Iterator[Remark]:
        t = inscription.transcription
        for state, run in groupby(t.signs, key=lambda sign: STATES.get(sign.certainty, "")):
            if state:
                places = [sign.index for sign in run]
                yield self._found(state, _where(t, places[0], places[-1]), number)

    def _dates(self, number: int, read: Interpretation) -> Iterator[Remark]:
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

    def _ages(self, number: int) -> Iterator[Remark]:
        maker = self.record.maker
        if maker:
            for said in against_life(self.read[number], maker.name, maker.born):
                yield self._found("age-and-life", said, number)

    def _years(self, years: list[tuple[int, int]]) -> Iterator[Remark]:
        if len(years) > 1 and max(y for _, y in years) - min(y for _, y in years) > 60:
            said = ", ".join(str(year) for _, year in years)
            yield self._found("dates-disagree", f"the object bears {said}", years[-1][0])

    def _suspicions(self, number: int, inscription: Inscription) -> Iterator[Remark]:
        from inscribe.reading.suspicious import suspicions

        t = inscription.transcription
        for found in suspicions(t.signs):
            code = "simplified-form" if found.kind == "simplified" else "suspicious"
            message = f"{_where(t, found.sign, found.end)}: {found.said}"
            yield self._found(code, message, number)

    def _reading(self, number: int, read: Interpretation) -> Iterator[Remark]:
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
                self.unsettled += _names_in(read, doubt.first, doubt.last)
                yield self._found("reading", f"{where}: {doubt.why}", number)

    def _source(self, number: int, inscription: Inscription) -> Iterator[Remark]:
        source = inscription.source
        if source is None:
            return
        if inscription.plate is None or not (inscription.columns or inscription.boxes):
            yield self._found("unmeasured", "plate or columns are not measured", number, "source")
        elif wanted := missing(inscription.transcription, inscription):
            said = f"not measured: {'; '.join(wanted)}"
            yield self._found("unmeasured", said, number, "source")

    def _boxes(self, number: int, inscription: Inscription) -> Iterator[Remark]:
        for said in partly_boxed(inscription) if inscription.boxes else ():
            yield self._found("part-boxed", said, number, "box")

    def _readers(self, number: int, inscription: Inscription) -> Iterator[Remark]:
        if not inscription.readers:
            yield self._found("no-reader", "nobody is named", number)
        own = inscription.transcription
        for at, reader in enumerate(inscription.readers):
            if reader.text and reader.text != inscription.text:
                other = parse(reader.text, inscription.notation)
                path = ("inscription", number, "reading", at, "text")
                for said in differences(own, other, called(at, reader.by)):
                    yield self._found("readers-differ", said, number, path=path)
        for key in ("kana", "romaji"):
            said_by = {getattr(reader, key): reader.by for reader in inscription.readers}
            said_by.pop("", None)
            if len(said_by) > 1:
                said = ", ".join(f"{by} has {text}" for text, by in said_by.items())
                yield self._found("readers-differ", f"{key}: {said}", number, "reading")


def _names_in(read: Interpretation, first: int, last: int) -> list[str]:
    """Return the names of the signatures that stand within some signs."""
    parts = (each.signature or {} for each in read.passages)
    return [
        part.text
        for signature in parts
        for key, part in signature.items()
        if key in NAME and first <= part.first and part.last <= last
    ]


def _is_copied(document: Document) -> bool:
    """Whether a text is one that a carver copies: a poem, a saying, a text in Chinese."""
    return any(each.kind in ("verse", "chinese") for each in document.said.passages)


def _where(t: Transcription, first: int, last: int) -> str:
    """Return the place of a run of signs, and the signs."""
    shown = "".join(sign.text or "□" for sign in t.signs[first : last + 1])
    return f"{place_of(t, first, last)}: {shown}"
