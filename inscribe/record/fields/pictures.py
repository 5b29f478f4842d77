"""The keys of a record's pictures: photographs that are measured, and pictures that are shown."""

from __future__ import annotations

from inscribe.record import model
from inscribe.record.fields.describing import Field, RecordTable

PHOTOGRAPH = RecordTable(
    "photograph",
    "a photograph from which signs were measured, and how, so that it can be done again",
    (
        Field("picture", "line", "the picture's file name", required=True),
        Field("by", "line", "who measured and accepted it", required=True),
        Field("on", "date", "the day"),
        Field("face", "sign", "the face of the text that it shows, from 1"),
        Field("corners", "corners", "the plate's corners in pixels, clockwise from the top left"),
        Field("scale", "size", "pixels per mm"),
        Field("barrel", "share", "share by which the lens draws the picture's corners inwards"),
        Field("cuts", "line", "cuts that were given, as 12=34.5, 15=40-44.2"),
        Field("drawn", "line", "signs whose boxes a person drew, as 12, 15"),
        Field("remarks", "text", "anything else"),
    ),
    model.Photograph,
)

IMAGE = RecordTable(
    "image",
    "a picture: give file, or iiif, or both where file is a local copy of the IIIF image",
    (
        Field("file", "line", "a PNG, JPEG or GIF, its path relative to the record's folder"),
        Field("iiif", "line", "the base address of a IIIF image, as https://.../identifier"),
        Field(
            "service",
            "line",
            "the version of that address's IIIF image service, as its info.json says",
            choices=("2", "3"),
            defaults=False,
        ),
        Field("size", "point", "width and height of the whole picture at that address, in pixels"),
        Field("shows", "line", "what it shows, for those who cannot see it"),
        Field("credit", "line", "who made it, and on what terms it may be used"),
        Field("scale", "size", "pixels per mm"),
        Field("crop", "crop", "the part that is shown, in pixels: x, y, width, height"),
        Field(
            "corner",
            "point",
            "the plate's top left corner in pixels; else the crop's",
        ),
    ),
    model.RecordImage,
)
IMAGES = Field("image", "tables", IMAGE.about, table=IMAGE, attribute="images")
