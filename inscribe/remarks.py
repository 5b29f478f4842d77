"""Whether remarks on standard error are wanted: ``--quiet`` forbids them for the whole run.

Stages that may have something to remark on their own (a dictionary is being prepared) ask here, so
that none of them has to be handed the option.
"""

from __future__ import annotations

_wanted = True


def want(wanted: bool) -> None:
    """Let remarks be written to standard error from now on, or let there be none."""
    global _wanted
    _wanted = wanted


def are_wanted() -> bool:
    """Whether remarks may be written to standard error."""
    return _wanted
