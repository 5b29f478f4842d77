"""Which register a text is in: verse, signature or prose.

A signature is told by its formulae (``inscribe.reading.signatures.likelihood``). What has kana
enough and is short enough may be verse; its morae then decide. Everything else is prose.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from inscribe import tables
from inscribe.reading.spelling import kana_share
from inscribe.reading.words import Interpretation, kana_in_formulas
from inscribe.scripts import is_kanji

_HEADING = "(?:題|よみ人|読人)(?:し|知)ら[ずす]"  # of poems; seldom asked for
_MARKS = re.compile("［[^］]*］|（[^）]*）")
_MARKS_OF_TRANSCRIBERS = re.compile(r"（花押）|（印|［[　 ]+］")
_SENTENCES = re.compile(r"。|「[^」]*」")
_MODERN_GRAMMAR = (  # compiled when a text has kana
    "[いきしちにひみりえけせてねへめれゐゑ]まし[たて]|ませ[うん]|でせう|でし[たよ]|だつた|だらう|"
    "なかつた|ならない|であ[るつ]|て[ゐい][るた]|のです|でなければ|ぢやない|ございま|[下くだ]さい$|"
    "(?<!た)つた$"
)
_CLASSICAL_GRAMMAR = (  # seldom asked for
    "け(?:り|る|れ)|[らけ][むん]|べ[しきく]|[つぬ]る|ざ[りるれ]|なれ[はば]|を[はば]|[とに][そぞ]|[こそ]そ"
    "|たま[ふひへは]|侍[りる]|かは|つつ|つゝ|せ[はば]"
)
_SURELY_CLASSICAL = "[一-鿿]ひ(?:け[りるれ]|つ[つゝ])|[にりて]けり"  # 匂ひける, 散りにけり
_CLASSICAL_KANA = 0.5
_ENOUGH_GRAMMAR = 2
_METRES = ((5, 7, 5), (5, 7, 5, 7, 7))
_VERSE_MOST_SIGNS = 48
_VERSE_LEAST_SIGNS = 8


def is_heading(text: str) -> bool:
    """Whether a text is a heading that anthologies give a poem of which nothing is known.

    >>> is_heading("題しらず"), is_heading("題しらず読人しらず"), is_heading("春の歌")
    (True, True, False)
    """
    return bool(text) and not re.sub(_HEADING, "", text)


def looks_like_verse(text: str) -> bool:
    """Whether a normalised text has the length and the kana of a poem.

    >>> looks_like_verse("花の色はうつりにけりないたづらに"), looks_like_verse("於東都応需造之")
    (True, False)
    """
    plain = _MARKS.sub("", text) if "（" in text or "［" in text else text
    if not _VERSE_LEAST_SIGNS <= len(plain) <= _VERSE_MOST_SIGNS:
        return False
    share = kana_share(plain) - kana_in_formulas(plain) / len(plain)  # 之需ニ応シテ
    return share > 0.2 and not has_modern_grammar(plain)


def has_classical_grammar(text: str) -> bool:
    """Return whether a text without modern grammar shows that of classical Japanese.

    It shows it repeatedly, or in an adjective as 恋しき, or in an ending that nothing else has.

    >>> has_classical_grammar("香に匂ひける"), has_classical_grammar("戸を引ける")
    (True, False)
    >>> has_classical_grammar("人の心を種としてよろつの言の葉とそなれりけるしけきものなれは")
    True
    >>> has_classical_grammar("昔の人の書いた文章"), has_classical_grammar("於東都造之")
    (False, False)
    """
    if has_modern_grammar(text):
        return False
    if any(map(is_kanji, _adjectives_in_shiki(text))) or re.search(_SURELY_CLASSICAL, text):
        return True
    return (
        kana_share(text) >= _CLASSICAL_KANA
        and len(re.findall(_CLASSICAL_GRAMMAR, text)) >= _ENOUGH_GRAMMAR
    )


def _adjectives_in_shiki(text: str) -> Iterator[str]:
    """Yield the sign before each しき that no kanji follows: 恋しき."""
    at = text.find("しき")
    while at >= 0:
        if at and not is_kanji(text[at + 2 : at + 3]):
            yield text[at - 1]
        at = text.find("しき", at + 1)


def is_running_text(text: str) -> bool:
    """Return whether a literal text is punctuated prose rather than a transcription of signs.

    >>> is_running_text("「さうか。」と言つた。"), is_running_text("花の色は／うつりに（花押）")
    (True, False)
    """
    return bool(_SENTENCES.search(text)) and not _MARKS_OF_TRANSCRIBERS.search(text)


def has_modern_grammar(text: str) -> bool:
    """Return whether a text has sentences or auxiliaries that classical verse does not have.

    >>> has_modern_grammar("橋を渡つてゐた"), has_modern_grammar("春は来にけり")
    (True, False)
    """
    return "。" in text or bool(_modern_grammar().search(text))


@tables.cached()
def _modern_grammar() -> re.Pattern[str]:
    return re.compile(_MODERN_GRAMMAR)


def words_in_metre(found: Interpretation) -> list[str]:
    """Return the words, as written, of what is one poem that keeps its metre to the mora."""
    best = found.proposals[0]
    kept = tuple(count for count, _ in best.phrases) in _METRES
    return [token.surface for token in best.tokens] if kept else []
