"""What is made when a wheel is built: the words of the dictionaries, gathered from UniDic.

``inscribe.reading.mecab.shipped`` finds them there; an editable install goes without.
"""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface


class PreparedDictionaries(BuildHookInterface):  # type: ignore[type-arg]
    """Gathers the words in some twenty seconds, which a first reading then need not wait for."""

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:
        """Make the files and name them to the wheel."""
        if version == "editable":
            return
        sys.path.insert(0, self.root)
        from inscribe.reading import lexicon, prose
        from inscribe.reading.mecab.shipped import pack

        self._work = tempfile.TemporaryDirectory()
        for name, write in (lexicon.gathering(), prose.gathering()):
            parts = Path(self._work.name, name)
            parts.mkdir()
            write(parts)
            packed = Path(self._work.name, f"{name}.zip")
            pack(parts, packed)
            build_data["force_include"][str(packed)] = f"inscribe/prepared/{packed.name}"

    def finalize(self, version: str, build_data: dict[str, Any], artifact_path: str) -> None:
        """Take the files away again."""
        if version != "editable":
            self._work.cleanup()
