"""The JSON Schemas (draft 2020-12) of what the commands print with ``--format json``.

Every key named here is always there and keeps its meaning; more keys may be added. What is counted
in JSON is counted from 0, as programs do, where commands and records count from 1, as one counts on
the metal; the description of each such key says so. Signs are given as first and last, offsets in
collations from ``start`` up to ``end``.
"""

from __future__ import annotations

from typing import Any, get_args

from inscribe.checking import SEVERITIES
from inscribe.collation import Verdict
from inscribe.concordance import How
from inscribe.dates import Agreement
from inscribe.reading.words import Kind, Register, Role
from inscribe.report.json.collation import KINDS
from inscribe.restoring import EvidenceKind

Schema = dict[str, Any]

DIALECT = "https://json-schema.org/draft/2020-12/schema"

VERDICTS = (
    "of a difference by which the copy saves signs. forced: space explains it, and the rest of the"
    " text had not fitted from there on at the carver's tightest pitch; eased: space explains it,"
    " though a tighter hand had found room; undecided; unexplained: space does not explain it;"
    " unmeasured"
)

TEXT: Schema = {"type": "string"}
FLAG: Schema = {"type": "boolean"}
COUNT: Schema = {"type": "integer", "minimum": 0}
WHOLE: Schema = {"type": "integer"}
NUMBER: Schema = {"type": "number"}
RANK: Schema = {"type": "integer", "minimum": 1}
SHARE: Schema = {"type": "number", "minimum": 0, "maximum": 1}
DAY: Schema = {"type": "string", "format": "date"}
COUNTING = (
    "Signs, columns and differences are counted from 0; command line, records and texts for people"
    " count from 1."
)
FROM_ZERO = "counted from 0 (on the command line and in records from 1)"
SIGN: Schema = COUNT | {"description": f"a sign, {FROM_ZERO}"}
COLUMN: Schema = COUNT | {"description": f"a column, {FROM_ZERO}"}
START: Schema = COUNT | {"description": f"the first sign, {FROM_ZERO}"}
END: Schema = COUNT | {"description": f"the sign after the last, {FROM_ZERO}"}
DIFFERENCE: Schema = COUNT | {"description": f"a place in differences, {FROM_ZERO}"}
LINE: Schema = RANK | {"description": "a line of the file, counted from 1"}
INSCRIPTION: Schema = RANK | {"description": "the inscription of the record, counted from 1"}
SIGNS: Schema = {
    "type": "array",
    "prefixItems": [COUNT, COUNT],
    "minItems": 2,
    "maxItems": 2,
    "description": f"the first and the last sign, {FROM_ZERO}",
}


def schema_of(output: str) -> Schema:
    """Return the schema of one output, as named in ``OUTPUTS``."""
    made = _OUTPUTS[output]()
    head = {"$schema": DIALECT, "title": f"inscribe {output.replace('-', ' ')}"}
    if output in COUNTS_SIGNS:
        head["description"] = COUNTING
    return {**head, **made}


def _object(**keys: Schema) -> Schema:
    """Return the schema of an object that has at least ``keys`` (``from_`` stands for ``from``)."""
    properties = {key.rstrip("_"): schema for key, schema in keys.items()}
    return {"type": "object", "properties": properties, "required": list(properties)}


def _list(items: Schema) -> Schema:
    return {"type": "array", "items": items}


def _perhaps(schema: Schema) -> Schema:
    return {"anyOf": [schema, {"type": "null"}]}


def _one_of(values: tuple[str, ...]) -> Schema:
    return {"enum": list(values)}


_OF_PASSAGE: dict[str, Schema] = {
    "kind": _one_of(get_args(Kind)),
    "signs": SIGNS,
    "text": TEXT,
    "role": _perhaps(_one_of(get_args(Role))),
}


def _reading() -> Schema:
    part = _object(text=TEXT, kana=TEXT, romaji=TEXT, signs=SIGNS)
    said_of = TEXT | {"description": "what sort of word it is, in plain words"}
    token = _object(surface=TEXT, normalised=TEXT, kana=TEXT, romaji=TEXT, signs=SIGNS, gloss=TEXT,
                    grammar=said_of)  # fmt: skip
    change = _object(sign=SIGN, from_=TEXT, to=TEXT, kind=TEXT, source=TEXT)
    alternative = _object(romaji=TEXT, kana=TEXT, reason=TEXT)
    signature = _perhaps({"type": "object", "additionalProperties": part})
    said = {"normalised": TEXT, "kana": TEXT, "romaji": TEXT, "reasons": _list(TEXT)}
    passage = _object(
        **_OF_PASSAGE, **said, chance=SHARE, alternatives=_list(alternative), signature=signature
    )
    return _object(
        text=TEXT,
        normalised=TEXT,
        modern=TEXT,
        kana=TEXT,
        romaji=TEXT,
        register=_one_of(get_args(Register)),
        tokens=_list(token),
        alternatives=_list(alternative),
        signature=signature,
        dates=_list(_date()),
        changes=_list(change),
        doubts=_list(_object(signs=SIGNS, why=TEXT)),
        passages=_list(passage),
        persons=_list(_person()) | {"description": "of the user's list, whom the signs may name"},
    )


def _person() -> Schema:
    return _object(
        signs=SIGNS,
        text=TEXT | {"description": "the name in current forms"},
        id=TEXT | {"description": "the person's id in the user's list (people.tsv)"},
        name=TEXT | {"description": "how the list calls the person"},
        as_=TEXT | {"description": "the sorts of name that stand there, as pen name"},
        why=TEXT | {"description": "the years of the list, and what agrees and what does not"},
        chance=SHARE
        | {"description": "against the others of the list and somebody who is in no list"},
        outside_life=TEXT
        | {"description": "how a date on the object contradicts the person's years, or empty"},
    )


def _date() -> Schema:
    return _object(
        text=TEXT,
        era=_perhaps(TEXT),
        era_romaji=_perhaps(TEXT),
        year_of_era=_perhaps(WHOLE),
        sexagenary=_perhaps(TEXT),
        year=_perhaps(WHOLE),
        month=_perhaps({"type": "integer", "minimum": 1, "maximum": 12}),
        leap=FLAG,
        day=_perhaps({"type": "integer", "minimum": 1, "maximum": 31}),
        day_word=_perhaps(TEXT),
        first_day=_perhaps(DAY),
        last_day=_perhaps(DAY),
        agreement=_one_of(get_args(Agreement)),
        suggestions=_list(TEXT),
        why=TEXT,
        signs=SIGNS,
    )


def _space() -> Schema:
    verdict = _object(
        difference=DIFFERENCE,
        verdict=_one_of(get_args(Verdict)) | {"description": VERDICTS},
        weight=_perhaps(NUMBER | {"minimum": 0})
        | {"description": "odds of want of space against anything else; null where unmeasured"},
        chance=_perhaps(SHARE)
        | {"description": "the weight as a chance: weight / (1 + weight), prior chance included"},
        for_=_list(TEXT) | {"description": "measurements that speak for space, weightiest first"},
        against=_list(TEXT) | {"description": "what speaks against it, weightiest first"},
        rival=TEXT | {"description": "another explanation the texts suggest, or empty"},
        evidence=_list(TEXT) | {"description": "for and against together; or what to measure"},
    )
    mm = _perhaps(NUMBER)
    return _object(
        capacity=_perhaps(NUMBER) | {"description": "signs at the carver's median pitch"},
        need=_perhaps(NUMBER) | {"description": "signs of the source"},
        beside=COUNT | {"description": "signs cut for what stands beside the copied text"},
        length_wanted=mm | {"description": "mm the source takes at the carver's median pitch"},
        length_given=mm | {"description": "mm his columns give, from head to foot line"},
        missing=COUNT | {"description": "signs saved on the whole plate"},
        crowding=_list(_object(column=COLUMN, signs=COUNT)),
        verdicts=_list(verdict),
    )


def _collation() -> Schema:
    span = _object(start=START, end=END, text=TEXT)
    group = _object(kind=_one_of((*KINDS, "beside")), copy=span, source=span, why=TEXT)
    counts = dict.fromkeys(("signs_in_source", *KINDS), COUNT)
    ends = _object(copy=SIGN, source=SIGN, at_line_end=FLAG)
    return _object(
        groups=_list(group),
        fidelity=_object(**counts),
        differences=_list(group),
        space=_perhaps(_space()),
        window=SIGNS | {"description": f"{START['description']}, and the one after the last"},
        breaks=_list(ends),
        beside=_list(_object(**_OF_PASSAGE)),
    )


def _found() -> Schema:
    hit = _object(rank={"type": "integer", "minimum": 1}, id=TEXT, title=TEXT, score=NUMBER,
                  text=TEXT, why=TEXT)  # fmt: skip
    return _object(query=TEXT, found=FLAG, hits=_list(hit))


def _sign() -> Schema:
    relation = _object(char=TEXT, kind=TEXT)
    return _object(
        char=TEXT,
        relations=_list(relation),
        on=_list(TEXT),
        kun=_list(TEXT),
        names=_list(TEXT),
        parts=_list(TEXT),
        strokes=_perhaps(COUNT),
    )


def _name() -> Schema:
    reading = _object(rank=COUNT, kana=TEXT, romaji=TEXT, kind=TEXT, score=NUMBER, reason=TEXT)
    return _object(text=TEXT, readings=_list(reading))


def _entry() -> Schema:
    inscription = _object(
        place=TEXT,
        hand=TEXT,
        execution=TEXT,
        as_carved=TEXT,
        reading=_reading(),
        translation=TEXT,
        collation=_perhaps(_collation()),
        readers=_list(_object(by=TEXT, on=_perhaps(DAY), text=TEXT)),
        remarks=TEXT,
    )
    return _object(id=TEXT, kind=TEXT, title=TEXT, inscriptions=_list(inscription), remarks=TEXT)


def _restoration() -> Schema:
    evidence = _object(kind=_one_of(get_args(EvidenceKind)), text=TEXT)
    candidate = _object(
        rank=RANK, text=TEXT, probability=SHARE, forms=_list(TEXT), evidence=_list(evidence)
    )
    lacuna = _object(
        sign=SIGN,
        column=COLUMN,
        kind=_one_of(("sign", "gap")),
        before=TEXT,
        after=TEXT,
        missing_morae=_perhaps(COUNT),
        remark=TEXT,
        candidates=_list(candidate),
    )
    return _object(
        text=TEXT,
        register=_one_of(get_args(Register)),
        worn_places=COUNT,
        lacunae=_list(lacuna),
        sources=_list(_object(id=TEXT, title=TEXT, score=SHARE)),
        cautions=_list(TEXT),
    )


def _check() -> Schema:
    finding = _object(
        severity=_one_of(SEVERITIES),
        code=TEXT,
        record=TEXT,
        file=TEXT,
        line=_perhaps(LINE),
        message=TEXT,
        todo=TEXT,
    )
    counts: Schema = {"type": "object", "additionalProperties": COUNT}
    return _object(records=COUNT, findings=_list(finding), counts=counts)


def _source_text() -> Schema:
    return _object(id=TEXT, text=TEXT)


def _concordance_place(**more: Schema) -> Schema:
    return _object(
        object=TEXT,
        kind=TEXT,
        file=TEXT,
        inscription=INSCRIPTION,
        place=TEXT,
        year=_perhaps(WHOLE),
        carver=TEXT,
        carver_romaji=TEXT,
        others=_list(_object(name=TEXT, romaji=TEXT)),
        persons=_list(_object(text=TEXT, name=TEXT, why=TEXT))
        | {"description": "of the user's list, whom the inscription may name"},
        text=TEXT,
        **more,
    )


def _concordance() -> Schema:
    hit = _concordance_place(
        signs=SIGNS, before=TEXT, match=TEXT, after=TEXT, how=_one_of(get_args(How))
    )
    counted: Schema = {"type": "object", "additionalProperties": COUNT}
    return _object(
        query=TEXT,
        records=COUNT,
        unread=_list(TEXT),
        hits=_list(hit),
        counts=_object(object=counted, date=counted, carver=counted),
    )


def _clusters() -> Schema:
    cluster = _object(
        kind=_one_of(("text", "signature")), title=TEXT, members=_list(_concordance_place())
    )
    return _object(records=COUNT, unread=_list(TEXT), clusters=_list(cluster), cautions=_list(TEXT))


def _measured() -> Schema:
    sizes = dict.fromkeys(("x", "y", "width", "height"), NUMBER)
    column = _object(
        column=COLUMN,
        signs=COUNT,
        top=NUMBER,
        bottom=NUMBER,
        x=NUMBER,
        width=NUMBER,
        pitch=NUMBER,
        error=NUMBER,
    )
    sign = _object(sign=SIGN, text=TEXT, **sizes, certainty=SHARE, given=FLAG, doubtful=FLAG)
    return _object(
        picture=TEXT,
        plate=_object(width=NUMBER, height=NUMBER),
        scale=NUMBER,
        barrel=NUMBER,
        corners=_list(_list(NUMBER)),
        columns=_list(column),
        signs=_list(sign),
    )


_OUTPUTS = {
    "read": _reading,
    "collate": _collation,
    "source-find": _found,
    "source-list": _source_text,
    "date": _date,
    "sign": _sign,
    "name": _name,
    "check": _check,
    "entry": _entry,
    "restore": _restoration,
    "measure": _measured,
    "concord": _concordance,
    "concord-clusters": _clusters,
}
OUTPUTS = tuple(_OUTPUTS)
COUNTS_SIGNS = frozenset(("read", "collate", "date", "entry", "restore", "measure", "concord"))
