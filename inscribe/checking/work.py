"""What to do next: the records that something blocks, the gravest first."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple, get_args

from inscribe.checking.findings import Looked
from inscribe.terms import Block

if TYPE_CHECKING:
    from inscribe.keys import TaskKeys

DONE = "published"
BLOCKS: tuple[Block, ...] = get_args(Block)
_SAID: dict[Block, str] = {
    "error": "the record cannot be used",
    "contradiction": "a contradiction",
    "unreadable": "signs cannot be read",
    "name": "a name may be read in two ways",
    "source": "no source found yet",
    "other": "another doubt",
}


class Task(NamedTuple):
    """One record to do: what blocks it (one of ``BLOCKS``), why, and where the object lies."""

    file: Path
    record: str
    blocked_by: Block
    why: tuple[str, ...]
    todo: str
    state: str = ""
    drawer: str = ""
    box: str = ""
    with_whom: str = ""

    @property
    def said(self) -> str:
        """What blocks it, in words."""
        return _SAID[self.blocked_by]

    def to_dict(self) -> TaskKeys:
        """Return it as printed in JSON."""
        return {
            "record": self.record,
            "file": str(self.file),
            "blocked_by": self.blocked_by,
            "why": list(self.why),
            "todo": self.todo,
            "state": self.state,
            "drawer": self.drawer,
            "box": self.box,
            "with_whom": self.with_whom,
        }


def work_list(records: Sequence[Looked], blocked_by: Block | None = None) -> list[Task]:
    """Return the records that are left to do, in the order in which to do them.

    What blocks a record gravest comes first; of those alike, what lies in the same drawer and box
    stands together. Records that are published and contradict nothing are done.

    Args:
        records: the records as checked.
        blocked_by: only those that this blocks, whatever else does (one of ``BLOCKS``).
    """
    found = []
    for each in records:
        tasks = {task.blocked_by: task for task in _tasks(each)}
        task = tasks.get(blocked_by) if blocked_by else next(iter(tasks.values()), None)
        if task and not (task.state == DONE and BLOCKS.index(task.blocked_by) > 1):
            found.append(task)
    return sorted(found, key=_place)


def _place(task: Task) -> tuple[int, str, str, str]:
    return BLOCKS.index(task.blocked_by), task.drawer, task.box, str(task.file)


def _tasks(each: Looked) -> Iterator[Task]:
    """Yield what blocks a record, the gravest first, all that is of one sort together."""
    for block, why, todo in (*_found(each), *_unsettled(each)):
        about = each.about
        if about is None:
            yield Task(each.file, "", block, why, todo)
        else:
            yield Task(
                each.file,
                about.id,
                block,
                why,
                todo,
                about.state,
                about.drawer,
                about.box,
                about.with_whom,
            )


Blocking = tuple[Block, tuple[str, ...], str]


def _found(each: Looked) -> Iterator[Blocking]:
    for block in BLOCKS[:3]:
        key = "code" if block == "unreadable" else "severity"
        some = [f for f in each.findings if getattr(f, key) == block]
        if some:
            yield block, tuple(f.message for f in some), some[0].todo


def _unsettled(each: Looked) -> Iterator[Blocking]:
    about = each.about
    if about and about.unsettled:
        yield "name", tuple(about.unsettled), "settle how it is read; see: inscribe settle"
    if about and about.unsourced:
        why = ("a poem or saying without a source",)
        yield "source", why, "look for it; see: inscribe source find"
    doubts = [f for f in each.findings if f.severity == "doubt" and f.code != "unreadable"]
    if doubts:
        yield "other", tuple(dict.fromkeys(f.message for f in doubts)), doubts[0].todo
