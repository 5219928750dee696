"""The published schema of xAPI statements, from ``xapi_schema``, compiled into a function."""

import json
from pathlib import Path

import fastjsonschema

_FOLDER = Path(__file__).parent / "xapi_schema"


def _inner(node):
    """Give the members of an object or list with their names."""
    if isinstance(node, dict):
        return node.items()
    return enumerate(node) if isinstance(node, list) else ()


def _take_ids(node, place, places):
    """Take the names off all parts of a schema and note the place of each."""
    if isinstance(node, dict) and isinstance(node.get("id"), str):
        places[node.pop("id")] = place
    for name, inner in _inner(node):
        _take_ids(inner, f"{place}/{name}", places)


def _refer_to_places(node, places):
    """Let every reference to a name lead to its place: the compiler knows only places."""
    if isinstance(node, dict) and node.get("$ref") in places:
        node["$ref"] = places[node["$ref"]]
    for _, inner in _inner(node):
        _refer_to_places(inner, places)


def _compiled():
    """Return a function that raises where a value is not a statement as the schema wants it."""
    schema, formats = (
        json.loads((_FOLDER / name).read_text(encoding="utf-8")) for name in ("1.0.1.json", "formats.json")
    )
    places = {}
    _take_ids(schema, "#", places)
    _refer_to_places(schema, places)
    schema = {"$schema": schema["$schema"], "$ref": places["#statement"], "properties": schema["properties"]}
    return fastjsonschema.compile(schema, formats=formats, detailed_exceptions=False)


_HOLD = _compiled()


def statement_fault(statement):
    """Return what the schema finds wrong with one statement in a sentence, or nothing."""
    try:
        _HOLD(statement)
    except fastjsonschema.JsonSchemaException as error:
        return error.message
    return ""
