"""Reading a photograph: upright as its camera held it, and never larger than memory bears."""

from __future__ import annotations

import warnings
from pathlib import Path
from typing import Any, NamedTuple

import numpy as np
from numpy.typing import NDArray

from inscribe.errors import InputError, Place

MAX_PIXELS = 120_000_000
MAX_BYTES = 400 * 2**20


class Picture(NamedTuple):
    """A photograph: its file's name and its pixels (rows, columns, RGB)."""

    name: str
    pixels: NDArray[Any]

    @property
    def size(self) -> tuple[int, int]:
        """Width and height in pixels."""
        return self.pixels.shape[1], self.pixels.shape[0]


def read_picture(path: Path) -> Picture:
    """Return the photograph in a file (JPEG, PNG, TIFF and whatever else Pillow reads).

    Raises:
        InputError: it cannot be read, is no picture, or is too large.
    """
    from PIL import Image, ImageOps

    place = Place(str(path))
    try:
        if path.stat().st_size > MAX_BYTES:
            raise InputError("the file is too large for a photograph", place, "make it smaller")
        warnings.simplefilter("ignore", Image.DecompressionBombWarning)  # MAX_PIXELS is the limit
        with Image.open(path) as opened:
            if opened.width * opened.height > MAX_PIXELS:
                raise Image.DecompressionBombError
            upright = ImageOps.exif_transpose(opened)
            return Picture(path.name, np.asarray(_eight_bits(upright).convert("RGB")))
    except InputError:
        raise
    except FileNotFoundError as error:
        raise InputError("there is no such file", place, "check the path") from error
    except IsADirectoryError as error:
        raise InputError("this is a folder", place, "name a picture in it") from error
    except Image.DecompressionBombError as error:
        raise InputError(
            f"the picture has more than {MAX_PIXELS // 1_000_000} million pixels",
            place,
            "make it smaller: 16 pixels per mm are enough",
        ) from error
    except (OSError, SyntaxError, ValueError) as error:
        raise InputError(
            "the file is no picture that can be read", place, "save it as JPEG, PNG or TIFF"
        ) from error


def _eight_bits(opened: Any) -> Any:
    """Return a picture of 16 bits a pixel with 8, from its darkest to its brightest."""
    if not opened.mode.startswith("I"):
        return opened
    from PIL import Image

    values = np.asarray(opened, np.float64)
    low, high = values.min(), max(values.max(), values.min() + 1)
    return Image.fromarray(((values - low) / (high - low) * 255).astype(np.uint8))
