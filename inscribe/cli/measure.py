"""``inscribe measure``: where the signs of an inscription stand, proposed from a photograph."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING

import click

from inscribe.cli.giving import example, format_option, output_options
from inscribe.cli.showing import write_result
from inscribe.errors import InputError

if TYPE_CHECKING:
    from inscribe.cli.giving import MeasuringTask
    from inscribe.measuring import Measured, Picture


@click.command(
    epilog=example(
        "inscribe measure plate.jpg --record examples/DEMO-004.toml --plate 95.6x14.2",
        "inscribe measure plate.jpg --record A-0412.toml --format html -o look.html",
        "inscribe measure plate.jpg --record A-0412.toml --cut 12=34.5 --accept --by 'T. Amberley'",
    )
)
@click.argument("photo", metavar="PHOTO")
@click.option(
    "--record", "record_file", metavar="FILE", required=True, help="Whose signs they are."
)
@click.option(
    "--inscription", type=click.IntRange(1), metavar="N", help="Which of its inscriptions."
)
@click.option("--face", type=click.IntRange(1), metavar="N", help="Which face the picture shows.")
@click.option("--plate", metavar="LENGTHxWIDTH", help="The plate's size in mm, columns' way first.")
@click.option(
    "--corners",
    nargs=4,
    metavar="X,Y X,Y X,Y X,Y",
    help="The plate's corners in pixels, clockwise from the top left as the writing is read.",
)
@click.option("--scale", type=float, metavar="N", help="Pixels per mm, with --corners.")
@click.option(
    "--ruler",
    nargs=3,
    metavar="X,Y X,Y MM",
    help="Two points of a ruler in the picture and the mm between them, for --scale.",
)
@click.option(
    "--cut",
    "cuts",
    multiple=True,
    metavar="SIGN=TOP[-BOTTOM]",
    help="Where a sign begins (and ends), in mm from the plate's top; signs count from 1.",
)
@click.option(
    "--boxes", metavar="FILE", help="A corrected table (--format csv); its boxes are kept as given."
)
@click.option("--accept", is_flag=True, help="Write the measurements into the record.")
@click.option("--by", metavar="NAME", help="Who accepts them.")
@click.option("--replace", is_flag=True, help="Let --accept replace measurements of the record.")
@click.option("--canvas", metavar="URI", help="What annotations speak of, instead of the file.")
@format_option("text", "csv", "json", "html", "svg", "annotation")
@output_options
def command(
    photo: str,
    record_file: str,
    inscription: int | None,
    face: int | None,
    plate: str | None,
    corners: tuple[str, ...],
    scale: float | None,
    ruler: tuple[str, ...],
    cuts: tuple[str, ...],
    boxes: str | None,
    accept: bool,
    by: str | None,
    replace: bool,
    canvas: str | None,
    form: str,
    output: str | None,
    force: bool,
    quiet: bool,
) -> None:
    """Propose where each sign stands, from a photograph of the plate.

    The text of the record says how many columns there are and how many signs each has. The plate is
    found by its outline, which should lie whole in the picture, on ground of another tone, upright
    as it is read; else give its corners. Its size comes from the record or from --plate.

    Look at the proposal (--format html), put single signs right with --cut, or edit the table
    (--format csv) and give it back with --boxes. --accept writes plate, columns and boxes into the
    record, with who, when and how; the same picture is then measured with the corners kept there.
    Needs libraries for pictures: pip install opencv-python-headless pillow.

    Signs and columns are counted from 1, in records too; in JSON from 0.
    """
    _check_libraries()
    from inscribe.cli.giving import measuring_task, write_measured
    from inscribe.measuring import measure, read_picture

    if accept and not (by or "").strip():
        raise InputError("--accept needs a name", hint="say who accepts it with --by NAME")
    task = measuring_task(
        photo, record_file, inscription, face, plate, corners, scale, ruler, cuts, boxes
    )
    if task.is_repeated and not quiet:
        click.echo("corners and cuts are those kept in the record", err=True)
    for said in () if quiet else task.remarks:
        click.echo(f"{boxes}: {said}", err=True)
    picture = read_picture(Path(photo))
    found = measure(picture, task.inscription, task.asked)
    for said in () if quiet else found.remarks:
        click.echo(f"{picture.name}: {said}", err=True)
    shown = _shown(found, task, picture, form, canvas, is_accepted=accept)
    if accept:
        path = write_measured(task, found, picture.name, by or "", replacing=replace)
        if not quiet:
            click.echo(f"written: {path}; check it with: inscribe check {path}", err=True)
    write_result(shown, output, force=force)


def _check_libraries() -> None:
    """Raise where the libraries for pictures are not installed."""
    from importlib.util import find_spec

    if find_spec("cv2") is None or find_spec("PIL") is None:
        raise InputError(
            "measuring needs libraries for pictures that are not installed",
            hint="pip install opencv-python-headless pillow",
        )


def _shown(
    found: Measured,
    task: MeasuringTask,
    picture: Picture,
    form: str,
    canvas: str | None,
    *,
    is_accepted: bool,
) -> str:
    from inscribe.report import measured

    inscription, title = task.inscription, task.title
    if form == "csv":
        return measured.measured_as_csv(found, inscription)
    if form == "json":
        plain = measured.measured_as_json(found, inscription, picture.name)
        return json.dumps(plain, ensure_ascii=False, indent=2)
    if form == "annotation":
        from inscribe.measuring import outlines

        drawn = outlines(picture, found)
        source = canvas or picture.name
        return measured.measured_as_annotations(found, inscription, drawn, source, task.name)
    if form in ("html", "svg"):
        from inscribe.measuring import plate_as_jpeg

        plate = plate_as_jpeg(picture, found)
        if form == "svg":
            return measured.overlay(found, inscription, plate)
        return measured.measured_as_html(found, inscription, plate, picture.name, title)
    return measured.measured_as_text(
        found, inscription, picture.name, title, is_accepted=is_accepted
    )
