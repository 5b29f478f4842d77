"""Pages to PDF, by a browser where one is installed."""

from __future__ import annotations

import os
import shutil
import subprocess
from pathlib import Path
from tempfile import TemporaryDirectory

from inscribe.errors import InputError

# Browsers that print without a window (--headless), by the names of their programs.
BROWSERS = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "msedge")
SECONDS = 300  # that printing may take


def browser() -> str | None:
    """Return the browser to print with: what INSCRIBE_BROWSER names, else the first there is."""
    named = os.environ.get("INSCRIBE_BROWSER", "")
    return shutil.which(named) if named else next(filter(None, map(shutil.which, BROWSERS)), None)


def printed(page: str) -> bytes:
    """Return a page as PDF.

    Raises:
        InputError: there is no browser, or it printed nothing.
    """
    found = browser()
    if found is None:
        raise InputError(
            "there is no browser to make a PDF with",
            hint="write --format volume -o volume.html and print it from any browser",
        )
    with TemporaryDirectory() as folder:
        source, target = Path(folder) / "page.html", Path(folder) / "page.pdf"
        source.write_text(page, "utf-8")
        command = [
            found,
            "--headless",
            "--disable-gpu",
            "--no-pdf-header-footer",
            f"--user-data-dir={folder}/profile",
            f"--print-to-pdf={target}",
        ]
        if hasattr(os, "geteuid") and os.geteuid() == 0:
            command.append("--no-sandbox")  # the browser refuses to run as root with one
        try:
            subprocess.run(
                [*command, source.as_uri()], capture_output=True, timeout=SECONDS, check=True
            )
            return target.read_bytes()
        except (OSError, subprocess.SubprocessError) as error:
            raise InputError(
                f"the browser {found} made no PDF",
                hint="write --format volume -o volume.html and print it from any browser",
            ) from error
