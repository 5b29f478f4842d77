"""The keys of the slides, pressed in headless Chromium: ``python tests/benchmarks/keys.py``.

Printed: the slide that is shown after each key, beside the one that is expected. The browser is
spoken to through a pipe (Chrome DevTools Protocol), with keys as a keyboard sends them.
"""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path
from typing import Any

ROOT = Path(__file__).parents[2]
sys.path[:0] = [str(ROOT)]
CODES = {
    "ArrowRight": 39,
    "ArrowDown": 40,
    "ArrowLeft": 37,
    "ArrowUp": 38,
    "PageDown": 34,
    "PageUp": 33,
    "Home": 36,
    "End": 35,
    " ": 32,
}
SHOWN = """(() => { const all = [...document.querySelectorAll('.slide')];
return [all.length, all.indexOf(document.activeElement), location.hash]; })()"""


class Browser:
    """Chromium with a page, spoken to through a pipe."""

    def __init__(self, profile: str) -> None:
        to_read, self.to = os.pipe()
        self.of, to_write = os.pipe()

        def joined() -> None:
            kept = os.dup(to_write)  # fds 3 and 4 may be those of the pipe itself
            os.dup2(to_read, 3)
            os.dup2(kept, 4)

        self.process = subprocess.Popen(
            [
                *("chromium", "--headless=new", "--no-sandbox", "--disable-gpu"),
                *("--remote-debugging-pipe", f"--user-data-dir={profile}", "about:blank"),
            ],
            preexec_fn=joined,
            close_fds=False,
            stderr=subprocess.DEVNULL,
        )
        self.sent, self.session, self.rest = 0, "", b""
        pages = self.said("Target.getTargets")["targetInfos"]
        page = next(each["targetId"] for each in pages if each["type"] == "page")
        self.session = self.said("Target.attachToTarget", targetId=page, flatten=True)["sessionId"]

    def said(self, method: str, **given: object) -> Any:
        """Return the answer to a command."""
        self.sent += 1
        message: dict[str, object] = {"id": self.sent, "method": method, "params": given}
        if self.session:
            message["sessionId"] = self.session
        os.write(self.to, json.dumps(message).encode() + b"\0")
        while True:
            while b"\0" not in self.rest:
                self.rest += os.read(self.of, 65536)
            one, _, self.rest = self.rest.partition(b"\0")
            answer = json.loads(one)
            if answer.get("id") == self.sent:
                return answer["result"]

    def press(self, key: str) -> None:
        """Press a key and let it go."""
        for kind in ("rawKeyDown", "keyUp"):
            self.said(
                "Input.dispatchKeyEvent",
                type=kind,
                key=key,
                code=key.strip() or "Space",
                windowsVirtualKeyCode=CODES[key],
            )

    def shown(self) -> list[Any]:
        """Return how many slides there are, which has the focus (from 0), and the address."""
        return list(
            self.said("Runtime.evaluate", expression=SHOWN, returnByValue=True)["result"]["value"]
        )


def main() -> int:
    """Press the keys and print what is shown."""
    if not shutil.which("chromium"):
        print("Chromium is not installed")
        return 0
    from inscribe.entry import entries_in
    from inscribe.report.pages import entries_as_slides
    from inscribe.report.style import Style

    entries = [entry for _, entry in entries_in(ROOT / "examples")][:3]
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as kept:
        page = Path(kept, "talk.html")
        page.write_text(entries_as_slides(entries, Style()), "utf-8")
        browser = Browser(f"{kept}/profile")
        browser.said("Page.enable")
        browser.said("Page.navigate", url=page.as_uri())
        while (
            browser.said("Runtime.evaluate", expression="document.readyState", returnByValue=True)[
                "result"
            ].get("value")
            != "complete"
        ):
            pass
        last = browser.shown()[0] - 1
        wrong = 0
        for key, expected in (
            ("ArrowRight", 1),
            ("ArrowDown", 2),
            (" ", 3),
            ("PageDown", 4),
            ("ArrowLeft", 3),
            ("ArrowUp", 2),
            ("PageUp", 1),
            ("End", last),
            ("ArrowRight", last),
            ("Home", 0),
            ("ArrowLeft", 0),
        ):
            browser.press(key)
            _, found, address = browser.shown()
            wrong += found != expected
            print(f"{key!r:14} slide {found} of {last + 1}, expected {expected}  {address}")
        browser.process.terminate()
        browser.process.wait()
    print(f"wrong: {wrong}")
    return int(bool(wrong))


if __name__ == "__main__":
    sys.exit(main())
