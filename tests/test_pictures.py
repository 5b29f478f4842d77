"""Pictures of records: what is shown, what is missing, and where signs stand in them."""

from __future__ import annotations

import builtins
import io
import json
import re
import struct
import zlib
from pathlib import Path
from typing import Any

import docx
import pytest
from click.testing import CliRunner

from inscribe.checking import check_folder
from inscribe.cli import cli
from inscribe.entry import Entry, entry_of
from inscribe.errors import InscribeError
from inscribe.pictures import picture_kind
from inscribe.record import Inscription, Record, RecordImage, dump, load, loads
from inscribe.record.boxes.tables import boxes_of
from inscribe.record.model.measured import ColumnMeasure, Plate
from inscribe.report.entries.annotation import entries_as_annotations
from inscribe.report.entries.docx import entries_as_docx
from inscribe.report.entries.markdown import entry_as_markdown
from inscribe.report.linked.manifest import entry_as_manifest
from inscribe.report.pages.entry import entries_as_html, entries_as_volume
from inscribe.report.pages.slides import entries_as_slides
from inscribe.report.picturing import shown_picture
from inscribe.report.style import Style

IMAGE = """
[[image]]
file = "pictures/whole.png"
shows = "A heron among reeds"
credit = "made up"
"""
RECORD = """
id = "A-1"
kind = "kozuka"
title = "Heron"
{object}
[[inscription]]
place = "back plate"
text = "花の色"
box = [{{ sign = 1, x = 1, y = 2, width = 4, height = 5 }}]
[inscription.plate]
width = 14
height = 95
[[inscription.image]]
file = "pictures/plate.png"
scale = 10
crop = [20, 30, 140, 950]
[inscription.source]
text = "花の色"
[[inscription.source.image]]
iiif = "https://example.org/iiif/print-1"
shows = "The print"
"""


def png(width: int, height: int) -> bytes:
    """Return a grey picture."""

    def chunk(kind: bytes, data: bytes) -> bytes:
        return (
            struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))
        )

    head = struct.pack(">IIBBBBB", width, height, 8, 0, 0, 0, 0)
    rows = zlib.compress((b"\x00" + b"\x80" * width) * height)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", rows) + chunk(b"IEND", b"")


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "pictures").mkdir()
    (tmp_path / "pictures/whole.png").write_bytes(png(60, 40))
    (tmp_path / "pictures/plate.png").write_bytes(png(200, 1000))
    (tmp_path / "A-1.toml").write_text(RECORD.format(object=IMAGE), "utf-8")
    return tmp_path


@pytest.fixture
def without_pillow(monkeypatch: pytest.MonkeyPatch) -> None:
    imported = builtins.__import__

    def refused(name: str, *rest: Any, **more: Any) -> Any:
        if name.startswith("PIL"):
            raise ImportError(name)
        return imported(name, *rest, **more)

    monkeypatch.setattr(builtins, "__import__", refused)


def entry_in(folder: Path) -> Entry:
    return entry_of(load(folder / "A-1.toml"), folder=folder)


def codes(folder: Path) -> list[str]:
    return [found.code for found in check_folder(folder).findings]


def test_a_record_with_pictures_is_written_as_it_was_read(folder: Path) -> None:
    record = load(folder / "A-1.toml")
    assert loads(dump(record)) == record
    assert record.images[0].shows == "A heron among reeds"
    assert record.inscriptions[0].images[0].crop == (20, 30, 140, 950)


def test_every_picture_is_shown_and_described(folder: Path) -> None:
    page = entries_as_html([entry_in(folder)], Style())
    shown = re.findall(r'<img src="data:image/(?:png|jpeg);base64,[^"]+" alt="([^"]*)"', page)
    assert shown == ["A heron among reeds", "back plate"]
    assert 'src="https://example.org/iiif/print-1/full/max/0/default.jpg" alt="The print"' in page
    assert "made up" in page


def test_without_pillow_the_page_itself_cuts_the_part_out(
    folder: Path, without_pillow: None
) -> None:
    page = entries_as_html([entry_in(folder)], Style())
    assert "width: 142.857%; left: -14.286%; top: -3.158%" in page
    assert "--ratio: 0.147" in page  # 140 by 950 pixels


def test_a_missing_picture_is_a_finding_and_no_crash(folder: Path) -> None:
    assert "image-missing" not in codes(folder)
    (folder / "pictures/plate.png").unlink()
    (folder / "pictures/whole.png").write_text("no picture", "utf-8")
    assert codes(folder).count("image-missing") == 2
    page = entries_as_html([entry_in(folder)], Style())
    assert "the picture is not there: pictures/plate.png" in page
    assert '<img src="data:' not in page
    assert entry_as_markdown(entry_in(folder), Style())


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ('file = "pictures/whole.png"', "", "neither file nor iiif"),
        ("https://example.org/iiif", "file:///iiif", "no web address"),
        ("[20, 30, 140, 950]", "[20, 30, 0, 950]", "no part of a picture"),
        ("[20, 30, 140, 950]", "[20, 30]", "a list"),
    ],
)
def test_a_picture_that_cannot_be_is_refused(folder: Path, old: str, new: str, said: str) -> None:
    text = RECORD.format(object=IMAGE).replace(old, new, 1)
    with pytest.raises(InscribeError, match=said):
        loads(text, "A-1.toml", folder)


@pytest.mark.parametrize("path", ["../whole.png", "/etc/passwd"])
def test_a_path_out_of_the_folder_is_a_finding_and_shows_nothing(folder: Path, path: str) -> None:
    text = RECORD.format(object=IMAGE).replace("pictures/whole.png", path, 1)
    (folder / "A-1.toml").write_text(text, "utf-8")
    assert codes(folder).count("image-missing") == 1
    assert entries_as_html([entry_in(folder)], Style()).count('<img src="data:') == 1


def test_a_link_out_of_the_folder_is_not_followed(folder: Path, tmp_path_factory: Any) -> None:
    outside = tmp_path_factory.mktemp("outside") / "x.png"
    outside.write_bytes(png(3, 3))
    (folder / "pictures/whole.png").unlink()
    (folder / "pictures/whole.png").symlink_to(outside)
    assert "image-missing" in codes(folder)
    assert entries_as_html([entry_in(folder)], Style()).count('<img src="data:') == 1


def test_annotations_name_the_picture_and_the_place_in_it(folder: Path) -> None:
    text = entries_as_annotations([entry_in(folder)])
    plate, first, second, _ = json.loads(text)["items"]
    assert plate["target"]["selector"]["value"] == "xywh=pixel:20,30,140,950"
    assert first["target"]["source"] == "pictures/plate.png"
    assert first["target"]["selector"]["value"] == "xywh=pixel:30,50,40,50"
    assert isinstance(second["target"], str)
    for exported in (text, entry_as_manifest(entry_in(folder), Style())):
        assert (
            boxes_of(exported, "x.json", 10).signs == entry_in(folder).record.inscriptions[0].boxes
        )


@pytest.mark.parametrize("kind", ["PNG", "JPEG", "GIF"])
@pytest.mark.parametrize("size", [(1, 1), (640, 3), (70, 1200)])
def test_the_size_of_a_picture_is_that_of_another_program(
    kind: str, size: tuple[int, int], tmp_path: Path
) -> None:
    image = pytest.importorskip("PIL.Image", reason="pillow is not installed")
    path = tmp_path / "x"
    image.new("RGB", size).save(path, kind)
    found = picture_kind(path.read_bytes())
    assert found is not None
    assert (found.width, found.height) == size
    assert found.media == image.MIME[kind]


@pytest.mark.parametrize("order", ["<", ">"])
@pytest.mark.parametrize("orientation", range(10))
def test_the_size_of_a_photograph_is_that_of_the_turned_picture(
    orientation: int, order: str, tmp_path: Path
) -> None:
    image = pytest.importorskip("PIL.Image", reason="pillow is not installed")
    transposed = pytest.importorskip("PIL.ImageOps").exif_transpose
    path = photograph(tmp_path / "x.jpg", (40, 20), orientation, order)
    found = picture_kind(path.read_bytes())
    assert found is not None
    with image.open(path) as opened:
        assert (found.width, found.height) == transposed(opened).size
    assert found.orientation == (orientation if 1 <= orientation <= 8 else 1)


def photograph(
    path: Path, size: tuple[int, int], orientation: int, order: str = "<", mode: str = "RGB"
) -> Path:
    """Write a JPEG whose first pixels, as stored, are bright, and return its path."""
    image = pytest.importorskip("PIL.Image", reason="pillow is not installed")
    made = image.new("L", size, 0)
    made.paste(255, (0, 0, size[0] // 2, size[1] // 2))
    tag = struct.pack(f"{order}HHIHH", 0x0112, 3, 1, orientation, 0)
    head = (b"II*\0" if order == "<" else b"MM\0*") + struct.pack(f"{order}IH", 8, 1)
    exif = b"Exif\0\0" + head + tag + bytes(4)
    made.convert(mode).save(path, "JPEG", exif=exif)
    return path


@pytest.mark.parametrize("orientation", range(1, 9))
def test_a_part_is_cut_out_of_the_picture_as_it_is_seen(folder: Path, orientation: int) -> None:
    image = pytest.importorskip("PIL.Image", reason="pillow is not installed")
    transposed = pytest.importorskip("PIL.ImageOps").exif_transpose
    path = photograph(folder / "p.jpg", (80, 40), orientation)
    with image.open(path) as opened:
        seen = transposed(opened).convert("RGB")
    part = RecordImage("p.jpg", crop=(0, 0, seen.width / 2, seen.height / 2))
    shown = shown_picture(part, folder, 100)
    assert shown is not None
    with image.open(io.BytesIO(shown.data)) as cut:
        assert cut.size == (seen.width // 2, seen.height // 2)
        wanted = seen.getpixel((5, 5))[0]
        assert cut.getpixel((5, 5))[0] == pytest.approx(wanted, abs=20)


def test_a_turned_photograph_is_framed_as_browsers_show_it(folder: Path) -> None:
    photograph(folder / "pictures/whole.png", (80, 40), 6)
    page = entries_as_html([entry_in(folder)], Style())
    assert "--ratio: 0.500" in page


@pytest.mark.parametrize("data", [b"", b"\xff\xd8", b"\xff\xd8\xff\xe0\x00", b"GIF89a", b"\x89PNG"])
def test_half_a_head_is_no_picture(data: bytes) -> None:
    assert picture_kind(data) is None


PRINT = 'iiif = "https://example.org/iiif/p"\n'


def canvas_of(folder: Path, image: str) -> Any:
    """Return the canvas of the record whose inscription's picture is said so."""
    text = RECORD.format(object="")
    before, _, rest = text.partition('file = "pictures/plate.png"\nscale = 10\n')
    made = before + image + rest.partition("crop = [20, 30, 140, 950]\n")[2]
    record = loads(made, "A-1.toml", folder)
    return json.loads(entry_as_manifest(entry_of(record, folder=folder), Style()))["items"][0]


@pytest.mark.parametrize(
    ("image", "size", "region"),
    [
        ("size = [3000, 4000]\nscale = 10\ncorner = [50, 60]\n", (3000, 4000), "full"),
        ("scale = 10\ncorner = [50, 60]\n", (140, 950), "50,60,140,950"),
        ("crop = [20, 30, 150, 960]\n", (150, 960), "20,30,150,960"),
        ("scale = 10\ncorner = [50, 60]\ncrop = [0, 0, 100, 100]\n", (190, 1010), "0,0,190,1010"),
    ],
)
def test_a_canvas_has_the_proportions_of_what_is_painted(
    folder: Path, image: str, size: tuple[int, int], region: str
) -> None:
    canvas = canvas_of(folder, PRINT + image)
    body = canvas["items"][0]["items"][0]["body"]
    assert (canvas["width"], canvas["height"]) == (body["width"], body["height"]) == size
    assert body["id"] == f"https://example.org/iiif/p/{region}/max/0/default.jpg"
    placed = [item["target"] for page in canvas["annotations"] for item in page["items"]]
    signs = [each.partition("xywh=")[2] for each in placed if "xywh" in each]
    if "scale" in image:  # sign 1 stands 1 and 2 mm from the plate's corner
        left, top = (50, 60) if "corner" in image else (0, 0)
        if region != "full":
            x, y = map(int, region.split(",")[:2])
            left, top = left - x, top - y
        assert f"{left + 10},{top + 20},40,50" in signs
        assert f"{left},{top},140,950" in signs  # the plate
    else:
        assert signs == []


def test_an_image_of_which_no_size_is_known_is_linked_and_not_painted(folder: Path) -> None:
    canvas = canvas_of(folder, PRINT)
    assert "items" not in canvas
    assert canvas["height"] / canvas["width"] == pytest.approx(95 / 14, abs=0.01)  # the plate's
    (linked,) = canvas["rendering"]
    assert linked["id"] == "https://example.org/iiif/p/full/max/0/default.jpg"
    assert linked["label"]


def test_the_image_service_is_told_as_its_version_is(folder: Path) -> None:
    sized = PRINT + "size = [30, 40]\n"

    def service(more: str) -> Any:
        return canvas_of(folder, sized + more)["items"][0]["items"][0]["body"]

    assert "service" not in service("")
    third = service('service = "3"\n')
    assert third["service"][0]["type"] == "ImageService3"
    second = service('service = "2"\n')
    assert second["service"][0]["@type"] == "ImageService2"
    assert second["service"][0]["@id"] == "https://example.org/iiif/p"
    assert second["id"].endswith("/full/full/0/default.jpg")
    with pytest.raises(InscribeError, match="service"):
        service('service = "4"\n')


def test_pictures_of_object_and_source_have_canvases_of_their_own(folder: Path) -> None:
    text = RECORD.format(object=IMAGE).replace(
        "print-1",
        'print-1"\nsize = [30, 40]\n\n[[inscription.source.image]]\niiif = "https://e.org/2',
    )
    record = loads(text, "A-1.toml", folder)
    made = json.loads(entry_as_manifest(entry_of(record, folder=folder), Style()))
    _, *others = made["items"]
    told = [(c["label"]["en"], c["width"], c["height"]) for c in others]
    assert told == [(["A heron among reeds"], 60, 40), (["The source"], 30, 40)]
    bodies = [c["items"][0]["items"][0]["body"]["id"] for c in others]
    assert bodies[0].endswith("/pictures/whole.png")
    assert bodies[1].startswith("https://example.org/iiif/print-1/full/")
    (linked,) = made["rendering"]  # its size is not known
    assert linked["id"].startswith("https://e.org/2/")
    assert linked["label"] == {"en": ["The print"]}
    assert len({each["id"] for each in made["items"]}) == 3
    assert made["requiredStatement"]["value"] == {"none": ["made up"]}


def test_a_column_is_told_as_it_is_transcribed(folder: Path) -> None:
    text = "あれははる□／思ふ（印「山」）"
    columns = (ColumnMeasure(2, 50, 8, 4), ColumnMeasure(2, 30, 2, 4))
    made = Inscription("back", text, plate=Plate(14, 95), columns=columns)
    (canvas,) = json.loads(entry_as_manifest(entry_of(Record("A", "kozuka", (made,))), Style()))[
        "items"
    ]
    (page,) = [each for each in canvas["annotations"] if each["id"].endswith("/columns")]
    assert [each["body"]["value"] for each in page["items"]] == text.split("／")


@pytest.mark.parametrize(
    ("image", "said"),
    [
        ('file = "p.png"\nsize = [3, 4]\n', "are of a IIIF image"),
        ('file = "p.png"\nservice = "2"\n', "are of a IIIF image"),
        (PRINT + "size = [0, 4]\n", "no picture has that size"),
    ],
)
def test_what_is_said_of_no_service_is_refused(folder: Path, image: str, said: str) -> None:
    with pytest.raises(InscribeError, match=said):
        canvas_of(folder, image)


def served(folder: Path, image: str) -> Entry:
    """Return the record whose inscription's picture comes from an image service."""
    text = RECORD.format(object="").replace('file = "pictures/plate.png"\nscale = 10\n', image)
    text = text.replace("crop = [20, 30, 140, 950]\n", "")
    return entry_of(loads(text, "A-1.toml", folder), folder=folder)


@pytest.mark.parametrize(
    ("image", "asked", "ratio"),
    [
        ("", "full/max", ""),
        ("size = [300, 400]\n", "full/max", "0.750"),
        ("size = [3000, 4000]\n", "full/1200,", "0.750"),
        ('crop = [20, 30, 150, 960]\nservice = "2"\n', "20,30,150,960/full", "0.156"),
        ("crop = [20, 30, 640, 3200]\n", "20,30,640,3200/320,", "0.200"),
    ],
)
def test_a_page_shows_a_picture_from_its_image_service(
    folder: Path, image: str, asked: str, ratio: str
) -> None:
    page = entries_as_html([served(folder, PRINT + image)], Style())
    shown = re.findall(
        r'(?:--ratio: ([\d.]+)">)?<img src="(https://example.org/iiif/p/[^"]+)"', page
    )
    assert shown == [(ratio, f"https://example.org/iiif/p/{asked}/0/default.jpg")]
    (policy,) = re.findall(r"img-src ([^;\"]*)", page)
    assert policy == "data: https://example.org"


@pytest.mark.parametrize(
    "address",
    ["http://example.org/iiif/p", "https://a;script-src*/p", "https://user@example.org/iiif/p"],
)
def test_a_service_that_a_page_cannot_safely_ask_is_linked(folder: Path, address: str) -> None:
    page = entries_as_html([served(folder, f'iiif = "{address}"\n')], Style())
    assert address not in "".join(re.findall(r"<img[^>]*>", page))
    assert f'<a href="{address}/full/max/0/default.jpg">' in page
    (policy,) = re.findall(r"img-src ([^;\"]*)", page)
    assert policy == "data: https://example.org"  # of the source's picture


def test_what_is_carried_away_links_a_picture_of_a_service_and_says_so(folder: Path) -> None:
    entry = served(folder, PRINT)
    for page in (
        entries_as_slides([entry], Style()),
        entries_as_html([entry], Style(), alone=True),
        entries_as_volume([entry], Style(), alone=True),
    ):
        assert "<img" not in page
        assert 'img-src data:"' in page or "img-src data:;" in page
        assert '<a href="https://example.org/iiif/p/full/max/0/default.jpg">' in page
        assert "not in this file: it lies with its image service" in page


def test_a_document_links_a_picture_of_a_service_or_embeds_the_local_copy(folder: Path) -> None:
    def captions(image: str) -> tuple[list[str], list[str], list[str]]:
        data = entries_as_docx([served(folder, image)], Style(order=("images",)))
        document = docx.Document(io.BytesIO(data))
        shapes = [shape._inline.docPr.get("descr") for shape in document.inline_shapes]
        said = [each.text for each in document.paragraphs if each.style.name == "Caption"]
        links = [link.address for each in document.paragraphs for link in each.hyperlinks]
        return shapes, said, links

    address = "https://example.org/iiif/p/full/max/0/default.jpg"
    shapes, said, links = captions(PRINT + 'shows = "A plate"\n')
    assert shapes == []
    told = "not in this file: it lies with its image service"
    assert said == [f"The inscription. A plate. {told}: {address}"]
    assert links == [address]
    shapes, said, links = captions(PRINT + 'file = "pictures/plate.png"\nshows = "A plate"\n')
    assert shapes == ["A plate"]
    assert said == [f"The inscription. A plate. {address}"]
    assert links == [address]


def test_a_local_copy_is_shown_everywhere_and_the_service_named_where_machines_read(
    folder: Path,
) -> None:
    entry = served(folder, PRINT + 'file = "pictures/plate.png"\nscale = 10\nsize = [200, 1000]\n')
    page = entries_as_html([entry], Style(order=("images",)))
    assert page.count('<img src="data:image') == 1
    assert "https://example.org" not in page  # in the page's policy neither
    page = entries_as_slides([entry], Style())
    assert page.count('<img src="data:image') == 1
    canvas = json.loads(entry_as_manifest(entry, Style()))["items"][0]
    assert canvas["items"][0]["items"][0]["body"]["id"].startswith("https://example.org/iiif/p/")
    assert loads(dump(entry.record)) == entry.record


@pytest.mark.parametrize("with_pillow", [True, False])
def test_the_crop_of_a_smaller_local_copy_is_reckoned_by_the_size_of_the_whole(
    folder: Path, monkeypatch: pytest.MonkeyPatch, with_pillow: bool, request: pytest.FixtureRequest
) -> None:
    if not with_pillow:
        request.getfixturevalue("without_pillow")
    image = RecordImage(
        "pictures/plate.png", "https://e.org/a", crop=(40, 0, 200, 400), size=(400, 2000)
    )
    shown = shown_picture(image, folder, 1600)
    assert shown is not None
    assert shown.crop == ((0, 0, 100, 200) if with_pillow else (20, 0, 100, 200))
    assert shown.reduced == 2


def test_a_large_picture_is_set_in_its_true_size_though_it_is_made_smaller(folder: Path) -> None:
    pytest.importorskip("PIL")
    (folder / "pictures/plate.png").write_bytes(png(600, 4000))  # 60 by 400 at 10, 15 by 100 at 40
    text = RECORD.format(object="").replace("scale = 10\ncrop = [20, 30, 140, 950]", "scale = 40")
    entry = entry_of(loads(text, "A-1.toml", folder), folder=folder)
    data = entries_as_docx([entry], Style(order=("images",)))
    (shape,) = docx.Document(io.BytesIO(data)).inline_shapes
    assert round(shape.height.mm) == 100


def test_the_thumbnail_is_the_first_picture_that_is_here(folder: Path, tmp_path: Path) -> None:
    text = RECORD.format(object='[[image]]\niiif = "https://example.org/whole"\n')
    (folder / "A-1.toml").write_text(text, "utf-8")
    asked = ["entry", str(folder), "--format", "html", "-o", f"{tmp_path}/site/", "--quiet"]
    done = CliRunner().invoke(cli, asked)
    assert done.exit_code in (0, 1), done.output
    index = (tmp_path / "site/index.html").read_text("utf-8")
    assert 'src="pictures/1.' in index
    assert "https://example.org" not in index
    page = (tmp_path / "site/A-1.html").read_text("utf-8")
    assert '<img src="https://example.org/whole/full/max/0/default.jpg"' in page
