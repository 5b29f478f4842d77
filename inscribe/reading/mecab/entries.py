"""One entry of a dictionary the program compiles for MeCab."""

from __future__ import annotations

from typing import NamedTuple


class DictionaryEntry(NamedTuple):
    """A written form and how it is read; ``kana`` is current spelling, ``|`` where parts meet."""

    written: str
    connection: int  # UniDic's class of the word as seen from the left
    cost: int  # lower is likelier, in MeCab's units
    kana: str
    part_of_speech: str  # UniDic's terms, joined by -
    conjugation: str
    form: str
    lemma: str
    origin: str  # UniDic's goshu
    gloss: str = ""
    note: str = ""  # why it is read so, where the spelling does not show it
    right_connection: int = -1  # the class as seen from the right, where it differs
    parts: str = ""  # what it is made of, as written, separated by /; its kana then by spaces

    def feature(self) -> str:
        """Return the fields that MeCab hands back with the word."""
        return ",".join(
            (
                self.kana,
                self.part_of_speech,
                self.conjugation,
                self.form,
                self.lemma.replace(",", "，"),
                self.origin,
                self.gloss.replace(",", ";"),
                self.note,
                self.parts,
            )
        )
