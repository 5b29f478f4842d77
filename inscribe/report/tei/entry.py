"""Entries as TEI P5 after the EpiDoc guidelines.

The edition has a block for each passage (its kind is the type, its role the subtype), and keeps the
metal's columns as ``lb``, what is known of each sign, the names and dates;
the apparatus names the signs at which the copy differs from its source; the header holds the
object, the legend of the notation and whose records these are; signs and columns that were
measured have zones of a facsimile, pictures surfaces of their own. The record stands in the header
too, without what is only of the house. ``inscribe.record.tei`` reads such a document back.
"""

from __future__ import annotations

import xml.etree.ElementTree as ET
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from itertools import groupby
from typing import TYPE_CHECKING

from inscribe import notation
from inscribe.glossing import glossed_words
from inscribe.reading.spelling import is_kanji
from inscribe.record import add_record
from inscribe.report import XML_ID, XML_LANG, Style, add, append_text, document, identifier
from inscribe.report.entries import JAPANESE, ROMANISED
from inscribe.report.tei.apparatus import add_apparatus, add_bibliography, anchored
from inscribe.report.tei.edition import Marks, add_edition
from inscribe.report.tei.facsimile import add_facsimile
from inscribe.report.tei.header import KANA, add_corpus_header, add_header
from inscribe.report.tei.pictures import add_pictures
from inscribe.report.tei.stretches import days, stretches_of
from inscribe.signs import Certainty, Intervention

if TYPE_CHECKING:
    from inscribe.entry import Entry, InscriptionEntry
    from inscribe.reading.words import Passage
    from inscribe.signs import Sign

TEI = "http://www.tei-c.org/ns/1.0"
XML_SPACE = "{http://www.w3.org/XML/1998/namespace}space"


def entries_as_tei(entries: list[Entry], style: Style | None = None) -> str:
    """Return one TEI document, or a ``teiCorpus`` where there are several entries.

    ``style`` says whose records these are, under what terms, and in what language.

    >>> from inscribe import entry_of, load_record
    >>> entry = entry_of(load_record("examples/DEMO-003.toml"))
    >>> entries_as_tei([entry]).count("<TEI "), "<teiCorpus" in entries_as_tei([entry, entry])
    (1, True)
    """
    style = style or Style()
    if len(entries) == 1:
        root = _tei(entries[0], identifier(entries[0].record.id), style)
    else:
        root = ET.Element("teiCorpus")
        add_corpus_header(root, style)
        for entry, name in zip(entries, _names(entries), strict=True):
            root.append(_tei(entry, name, style))
    root.set("xmlns", TEI)
    return document(root)


def _names(entries: list[Entry]) -> Iterator[str]:
    """Yield an XML id for each entry, different even where two records bear one id."""
    seen: Counter[str] = Counter()
    for entry in entries:
        name = identifier(entry.record.id)
        seen[name] += 1
        yield name if seen[name] == 1 else f"{name}_k{seen[name]}"


def _tei(entry: Entry, name: str, style: Style) -> ET.Element:
    root = ET.Element("TEI", {XML_ID: name})
    header = add_header(root, entry, style)
    add_facsimile(root, entry, name)
    add_pictures(root, entry, name)
    body = add(add(root, "text"), "body")
    for attributes, fill in _DIVISIONS:
        _add_division(body, entry, name, attributes, fill)
    for division in body.findall("div[@type='translation']"):
        division.set(XML_LANG, style.language)
    add_record(header, root, entry.record)
    return root


_Fill = Callable[[ET.Element, "InscriptionEntry", str], None]


def _add_division(
    body: ET.Element, entry: Entry, name: str, attributes: dict[str, str], fill: _Fill
) -> None:
    """Add a division of EpiDoc, in it a part for each inscription that has one."""
    division = ET.Element("div", attributes)
    for number, each in enumerate(entry.inscriptions, start=1):
        part = ET.Element("div", type="textpart", n=str(number))
        fill(part, each, f"{name}_i{number}")
        if len(part):
            division.append(part)
    if len(division):
        body.append(division)


def _fill_edition(part: ET.Element, each: InscriptionEntry, name: str) -> None:
    if each.inscription.register != "auto":
        part.set("subtype", each.inscription.register)
    add(part, "head", each.inscription.place)
    passages = each.interpretation.passages
    blocks = [_block(part, passage) for passage in passages] or [_block(part)]
    starts, ends = anchored(each)
    regular: dict[int, str] = {c.sign: c.after for c in each.interpretation.changes if c.after}
    marks = Marks(name, regular, tuple(stretches_of(each)), starts, ends)
    later: dict[int, ET.Element] = {
        passage.first: block for passage, block in zip(passages, blocks, strict=False)
    }
    add_edition(blocks[0], each.inscription.transcription, marks, later)


def _block(part: ET.Element, passage: Passage | None = None) -> ET.Element:
    """Return a new block of text for a passage: its kind as type, what its person did as subtype.

    With no passage it is for an inscription of which nothing can be said.
    """
    block = add(part, "ab")
    if passage is not None:
        block.set("type", passage.kind)
        if passage.role:
            block.set("subtype", passage.role)
    block.set(XML_LANG, JAPANESE)
    block.set(XML_SPACE, "preserve")
    return block


def _fill_reading(part: ET.Element, each: InscriptionEntry, name: str) -> None:
    words = add(part, "ab")
    words.set(XML_LANG, JAPANESE)
    signs = each.inscription.transcription.signs
    for token in sorted(each.reading.tokens, key=lambda token: token.first):
        of_word = signs[token.first : token.last + 1]
        if token.kana and any(map(is_kanji, token.normalised)):
            ruby = add(words, "ruby")
            _add_word(add(ruby, "rb"), token.normalised, of_word)
            add(ruby, "rt", token.kana).set(XML_LANG, KANA)
        else:
            _add_word(words, token.normalised, of_word)
    if not (len(words) or words.text):
        part.remove(words)
    for lang, text in ((KANA, each.reading.kana), (ROMANISED, each.reading.romaji)):
        if text:
            add(part, "ab", text).set(XML_LANG, lang)
    _add_glosses(part, each)


def _add_word(holder: ET.Element, word: str, signs: Sequence[Sign]) -> None:
    """Add a word in current forms, within it what the editor restored, supplied or guessed."""
    if len(word) != len(signs):
        doubtful = any(sign.certainty is Certainty.DOUBTFUL for sign in signs)
        _add_stretch(holder, word, signs, is_doubtful=doubtful)
        return
    for doubtful, pairs in groupby(
        zip(word, signs, strict=True), lambda pair: pair[1].certainty is Certainty.DOUBTFUL
    ):
        said, its = zip(*pairs, strict=True)
        _add_stretch(holder, "".join(said), its, is_doubtful=doubtful)


def _add_stretch(
    holder: ET.Element, word: str, signs: Sequence[Sign], *, is_doubtful: bool
) -> None:
    doubt = {"cert": "low"} if is_doubtful else {}
    for said, state in notation.supplied_stretches(word, signs):
        if state is None and is_doubtful:
            add(holder, "unclear", said, cert="low")
        elif state is None:
            append_text(holder, said)
        elif state is Intervention.EXPANDED:
            add(holder, "ex", said, **doubt)
        else:
            reason = "lost" if state in Certainty else "omitted"
            add(holder, "supplied", said, reason=reason, **doubt)


def _add_glosses(part: ET.Element, each: InscriptionEntry) -> None:
    """Add the words as they are read, each with its gloss, from which a translation can be made."""
    signs = each.inscription.transcription.signs
    words = [word for word in glossed_words(each.interpretation, signs) if word.romaji]
    if not any(word.meaning for word in words):
        return
    line = add(part, "ab", type="glosses")
    for word in words:
        said = add(line, "seg")
        add(said, "w", word.signs).set(XML_LANG, JAPANESE)
        add(said, "w", word.romaji).set(XML_LANG, ROMANISED)
        if word.meaning:
            add(said, "gloss", word.meaning).set(XML_LANG, "en")


def _fill_translation(part: ET.Element, each: InscriptionEntry, name: str) -> None:
    if each.inscription.translation.strip():
        add(part, "p", each.inscription.translation.strip())


def _fill_commentary(part: ET.Element, each: InscriptionEntry, name: str) -> None:
    for date in each.interpretation.dates:
        note = add(part, "p", "Date: ")
        add(note, "date", date.text, **days(date)).set(XML_LANG, JAPANESE)
        append_text(note, f" {date.why}")
    for named in each.interpretation.persons:
        told = add(part, "p", "May name, no attribution: ")
        attributes = {"key": named.id, "type": "attested", "cert": "unknown"}
        add(told, "persName", named.text, **attributes).set(XML_LANG, JAPANESE)
        append_text(told, f" {named.why} ({named.chance:.2f})")
    if each.inscription.remarks.strip():
        add(part, "note", each.inscription.remarks.strip(), type="remarks")


_DIVISIONS: tuple[tuple[dict[str, str], _Fill], ...] = (
    ({"type": "edition"}, _fill_edition),
    ({"type": "edition", "subtype": "reading"}, _fill_reading),
    ({"type": "apparatus"}, add_apparatus),
    ({"type": "translation"}, _fill_translation),
    ({"type": "commentary"}, _fill_commentary),
    ({"type": "bibliography"}, add_bibliography),
)
