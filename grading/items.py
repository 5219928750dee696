"""Exercises of the bank as QTI 2.1 items, in a content package for any system that reads the standard.

Exported are exercises of numbers, bands, choices and tables of verdicts, each with several draws of its
numbers. An item marks a first try as our own marking does, with the sentence of a slip; units stand behind
the field, as the standard knows none. What needs a figure, an order with part credit or the bench is left
out and named: it would be marked otherwise.
"""

import io
import zipfile
from dataclasses import dataclass
from pathlib import Path
from xml.etree import ElementTree

from grading.exercise import Choice, Choices, Number, Range, Verdicts
from grading.export import write_table
from grading.item_parts import PART_WRITERS, element, plain, text_of
from grading.keys import keys_for
from grading.variants import fill, words
from grading.whole_files import write_whole

ITEM_NAMESPACE = "http://www.imsglobal.org/xsd/imsqti_v2p1"
PACKAGE_NAMESPACE = "http://www.imsglobal.org/xsd/imscp_v1p1"
PACKAGE = "second_plate_items.zip"
LEFT_OUT = "left_out.csv"
MOST_DRAWS = 100
_KINDS = (Number, Range, Choice, Choices, Verdicts)
_WHEN = (2026, 1, 1, 0, 0, 0)  # the same bank and class make the same file


@dataclass(frozen=True, kw_only=True)
class Items:
    """What was written: the package, the table of what was left out, and how many of each."""

    package: Path
    left_out_table: Path
    items: int
    exercises: int
    left_out: int


def write_items(out, exercises, settings, *, draws):
    """Write the package of items and the table of exercises left out into the folder ``out``."""
    out = Path(out)
    out.mkdir(parents=True, exist_ok=True)
    reasons = {each.id: why_left_out(each) for each in exercises.values()}
    chosen = {each: exercises[each] for each, reason in reasons.items() if not reason}
    wanted = [(each, f"item {draw}", 1) for each in chosen for draw in range(1, draws + 1)]
    keys = keys_for(wanted, course_key=settings.course_key, exercises=exercises)
    files = {
        f"{item_id(each, draw)}.xml": item_bytes(chosen[each], keys[each, f"item {draw}", 1], draw)
        for each in chosen
        for draw in range(1, draws + 1)
    }
    write_whole(out / PACKAGE, _package(files))
    left = [[each, reason] for each, reason in reasons.items() if reason]
    write_table(out / LEFT_OUT, ["exercise", "why"], left)
    return Items(
        package=out / PACKAGE,
        left_out_table=out / LEFT_OUT,
        items=len(files),
        exercises=len(chosen),
        left_out=len(left),
    )


def why_left_out(exercise):
    """Return why an exercise cannot become an item, or an empty text."""
    if exercise.figure:
        return "has a figure that is drawn for each learner"
    others = sorted({type(part).__name__ for part in exercise.parts if not isinstance(part, _KINDS)})
    return (
        f"has a part that the standard marks otherwise or not at all: {', '.join(others)}" if others else ""
    )


def item_id(exercise_id, draw):
    """Return the identifier of one draw of an exercise."""
    return f"{exercise_id.replace('.', '-')}-{draw}"


def item_bytes(exercise, key, draw):
    """Return one item as XML."""
    if key.problem:
        message = f"{exercise.id} cannot be drawn and solved: {key.problem}"
        raise ValueError(message)
    filled = words(exercise, key.numbers)
    parts = [PART_WRITERS[type(part)](part, key.keys[part.id], filled) for part in exercise.parts]
    item = element(
        "assessmentItem",
        xmlns=ITEM_NAMESPACE,
        identifier=item_id(exercise.id, draw),
        title=f"{exercise.title} ({draw})",
        adaptive="false",
        timeDependent="false",
    )
    for part in parts:
        item.extend(part.declarations)
    item.extend(_outcomes(sum(part.points for part in exercise.parts)))
    body = ElementTree.SubElement(item, "itemBody")
    for paragraph in fill(exercise.prompt, filled).split("\n\n"):
        body.append(element("p", text=plain(paragraph)))
    for part in parts:
        body.extend(part.body)
    processing = ElementTree.SubElement(item, "responseProcessing")
    for part in parts:
        processing.extend(part.processing)
    for part in parts:
        item.extend(part.feedback)
    return text_of(item)


def _outcomes(points):
    """Return the outcome variables: the score, what it can be at most, and the slips that were seen."""
    for name, value in (("SCORE", 0.0), ("MAXSCORE", points)):
        declared = element("outcomeDeclaration", identifier=name, cardinality="single", baseType="float")
        default = ElementTree.SubElement(declared, "defaultValue")
        default.append(element("value", text=repr(float(value))))
        yield declared
    yield element("outcomeDeclaration", identifier="FEEDBACK", cardinality="multiple", baseType="identifier")


def _package(files):
    """Return the content package of the items: a zip with its manifest and a file for each."""
    data = io.BytesIO()
    with zipfile.ZipFile(data, "w", zipfile.ZIP_DEFLATED) as package:
        for name, content in {"imsmanifest.xml": _manifest(files), **files}.items():
            entry = zipfile.ZipInfo(name, date_time=_WHEN)
            entry.external_attr = 0o644 << 16
            package.writestr(entry, content, zipfile.ZIP_DEFLATED)
    return data.getvalue()


def _manifest(files):
    """Return the manifest of the package."""
    manifest = element("manifest", xmlns=PACKAGE_NAMESPACE, identifier="second-plate-items")
    metadata = ElementTree.SubElement(manifest, "metadata")
    metadata.append(element("schema", text="QTIv2.1 Package"))
    metadata.append(element("schemaversion", text="1.0.0"))
    manifest.append(element("organizations"))
    resources = ElementTree.SubElement(manifest, "resources")
    for name in files:
        resource = element(
            "resource", identifier=f"resource-{name[:-4]}", type="imsqti_item_xmlv2p1", href=name
        )
        resource.append(element("file", href=name))
        resources.append(resource)
    return text_of(manifest)
