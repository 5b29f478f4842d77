"""How far the work is: records counted by state, kind and drawer, in the order one looks for."""

from __future__ import annotations

from pathlib import Path

from inscribe.checking import check_folder, tallies


def test_the_kind_that_most_records_have_comes_first(tmp_path: Path) -> None:
    for name, kind in [("a", "tsuba"), ("b", "kozuka"), ("c", "tsuba"), ("d", "fuchi")]:
        inscription = '[[inscription]]\nplace = "front"\ntext = "嶺暁作"\n'
        text = f'id = "{name}"\nkind = "{kind}"\n{inscription}'
        (tmp_path / f"{name}.toml").write_text(text, "utf-8")
    counts = {each.of: each.counts for each in tallies(check_folder(tmp_path).looked)}
    assert counts["kind"] == (("tsuba", 2), ("fuchi", 1), ("kozuka", 1))
