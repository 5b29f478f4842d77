"""Problems of one record: collected as they are found, placed when they are told."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from inscribe.errors import InscribeError, NotationError, Place, ProblemsError, RecordError

if TYPE_CHECKING:
    from inscribe.record.reading.locate import KeyPath, Locator

MAX_TOLD = 200  # problems of one file that are told; a file with more is no record


class _Problem(NamedTuple):
    path: KeyPath
    message: str
    hint: str
    inner: Place | None = None  # where in the text that stands at ``path``


class Problems:
    """The problems of one file."""

    def __init__(self, file: str | None, text: str) -> None:
        self.file = file
        self.text = text
        self.found: list[_Problem] = []

    def add(self, path: KeyPath, message: str, hint: str = "") -> None:
        """Note a problem with the value at ``path``."""
        self.found.append(_Problem(path, message, hint))

    def add_notation(self, path: KeyPath, error: NotationError) -> None:
        """Note a problem inside the transcription at ``path``."""
        self.found.append(_Problem(path, error.message, error.hint, error.place))

    def raise_any(self) -> None:
        """Raise all problems, in the order of the file's lines, if there are any.

        Raises:
            ProblemsError: there are problems.
        """
        if not self.found:
            return
        from inscribe.record.reading.locate import Locator

        try:
            locator: Locator | None = Locator(self.text)
        except RecursionError:
            locator = None
        placed = [(self._place(problem, locator), problem) for problem in self.found]
        placed.sort(key=lambda pair: (pair[0].line or 0, pair[0].column or 0))
        errors: list[InscribeError] = [
            RecordError(problem.message, place, problem.hint) for place, problem in placed
        ]
        if len(errors) > MAX_TOLD:
            more = f"{len(errors) - MAX_TOLD:,} more problems"
            errors[MAX_TOLD:] = [RecordError(more, Place(self.file), "correct the first ones")]
        raise ProblemsError(errors)

    def _place(self, problem: _Problem, locator: Locator | None) -> Place:
        if locator is None:
            return Place(self.file)
        position = locator.nearest(problem.path)
        if problem.inner is None or problem.inner.line is None:
            return Place(self.file, position.line, position.column)
        return self._place_in_text(position.value, problem.inner, locator)

    def _place_in_text(self, value: int, inner: Place, locator: Locator) -> Place:
        """Return the place in the file of a place in the text whose value begins at ``value``."""
        line, column = inner.line or 1, inner.column or 1
        quotes = 3 if self.text.startswith(('"""', "'''"), value) else 1
        start = value + quotes
        if quotes == 3 and self.text.startswith("\n", start):
            start += 1
        first_line, first_column = locator.place(start)
        if quotes == 1 and "\\" in self.text[value : self.text.find("\n", value)]:
            return Place(self.file, first_line)
        shift = first_column - 1 if line == 1 else 0
        return Place(self.file, first_line + line - 1, column + shift)
