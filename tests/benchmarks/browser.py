"""A page of hostile records in headless Chromium: ``python tests/benchmarks/browser.py``.

The page of an entry is made of texts that try to run scripts and to fetch things from a server
that listens here. Printed: the tags in the page as Chromium built it, scripts that ran (each would
rename the page), requests that reached the server. The same attacks in a page that does not escape
them, without its policy, must run and must ask, or nothing was proved.
"""

from __future__ import annotations

import html
import re
import shutil
import subprocess
import sys
import tempfile
import threading
from collections import Counter
from http.server import BaseHTTPRequestHandler, HTTPServer
from pathlib import Path

ROOT = Path(__file__).parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests")]
RAN = "a script ran"
asked: list[str] = []


class Server(BaseHTTPRequestHandler):
    """Notes what is asked of it."""

    def do_GET(self) -> None:
        asked.append(self.path)
        self.send_response(204)
        self.end_headers()

    def log_message(self, *_: object) -> None:
        """Say nothing."""


def attacks(port: int) -> list[str]:
    """Return texts that run scripts or fetch from the server, if they are believed."""
    server = f"http://127.0.0.1:{port}"
    title = f"document.title='{RAN}'"
    return [
        f"<script>{title}</script>",
        f'<img src={server}/img onerror="{title}">',
        f'"><svg onload="{title}"><image href={server}/svg />',
        f"</style><link rel=stylesheet href={server}/css>",
        f"<iframe src={server}/frame></iframe>",
        f"<style>@import '{server}/import'; body {{ background: url({server}/ground) }}</style>",
        f"<meta http-equiv=refresh content='0;url={server}/refresh'>",
        f"<base href={server}/>",
        f"--><object data={server}/object></object><!--",
        f'<a href="javascript:{title}" autofocus onfocus="{title}">x</a>',
        f"</title><script src={server}/script></script>",
    ]


def page(attack: str) -> str:
    """Return the entry of a record that says the attack everywhere."""
    from inscribe.entry import entry_of
    from inscribe.record import CopiedText, Inscription, Plate, Reader, Record
    from inscribe.report.pages.entry import entries_as_html
    from inscribe.report.style import Style

    source = CopiedText("花の色は", attack, title=attack, author=attack, work=attack, number=attack)
    reader = Reader(attack, text="花", kana=attack, romaji=attack, remarks=attack)
    carved = Inscription(
        attack,
        "花の\\<script\\>は／色は",
        hand=attack,
        execution=attack,
        plate=Plate(14, 90),
        source=source,
        readers=(reader,),
        translation=attack,
        remarks=attack,
    )
    return entries_as_html([entry_of(Record(attack, attack, (carved,), attack))], Style())


def opened(text: str, folder: Path) -> str:
    """Return the page as Chromium has it after two seconds."""
    path = folder / "page.html"
    path.write_text(text, "utf-8")
    done = subprocess.run(
        [
            *("chromium", "--headless", "--no-sandbox", "--disable-gpu", "--disable-sync"),
            *("--disable-background-networking", "--no-first-run", "--virtual-time-budget=2000"),
            *(f"--user-data-dir={folder}/profile", "--dump-dom", path.as_uri()),
        ],
        capture_output=True,
        timeout=120,
        check=False,
    )
    return done.stdout.decode("utf-8", "replace")


def main() -> int:
    """Open both pages and print what happened."""
    if not shutil.which("chromium"):
        print("Chromium is not installed")
        return 0
    server = HTTPServer(("127.0.0.1", 0), Server)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    texts = attacks(server.server_port)
    believed = "<!DOCTYPE html><title>x</title><body>" + "".join(texts[:3] + texts[4:5])
    with tempfile.TemporaryDirectory() as kept:
        dom = opened(believed, Path(kept))
        shown = re.search("<title>(.*?)</title>", dom)
        proof = bool(shown) and RAN in shown[1] and bool(asked)  # type: ignore[index]
        print(f"believed: ran {RAN in dom}, requests {sorted(set(asked))}")
        asked.clear()
        ran, tags = 0, Counter[str]()
        for text in texts:
            dom = opened(page(text), Path(kept))
            title = re.search("<title>(.*?)</title>", dom, re.DOTALL)
            ran += not title or html.unescape(title[1]).strip() == RAN
            tags.update(re.findall(r"<([a-z][a-z0-9]*)", dom))
    print(f"entries: {len(texts)} pages, scripts run {ran}, requests {asked}")
    print("tags:", " ".join(sorted(tags)))
    bad = tags.keys() & {"script", "img", "iframe", "link", "object", "base", "a", "image"}
    print("tags of the data:", sorted(bad))
    return int(bool(ran or asked or bad or not proof))


if __name__ == "__main__":
    sys.exit(main())
