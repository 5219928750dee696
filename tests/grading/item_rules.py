"""The structure of a QTI 2.1 item as the standard's schema has it, and what is wrong with one.

The schema's own licence forbids keeping it here. pyslet, a library of standards in learning under the BSD
licence, quotes it class by class in its docstrings; the rules are made from those pieces. ``_WRITTEN`` and
``_NAMES`` are what pyslet does not quote, from memory, and only as far as our items use it.
"""

import inspect
import re
import warnings
from xml.etree import ElementTree

with warnings.catch_warnings(action="ignore"):  # its oldest lines are older than some rules of Python
    from pyslet.qtiv2 import content, core, expressions, interactions, items, processing, variables

NAMESPACE = f"{{{core.IMSQTI_NAMESPACE}}}"
_XSD = "{http://www.w3.org/2001/XMLSchema}"
_PIECE = re.compile(r"<xsd:(attributeGroup|group) name.*?</xsd:\1>", re.DOTALL)
_IDENTIFIER = re.compile(r"[A-Za-z_][A-Za-z0-9_.-]*")
_EXPRESSION = "(?:and|or|not|isNull|equal|lte|match|member|multiple|sum|variable|baseValue|mapResponse) "
_NAMES = {
    "expression.ElementGroup": _EXPRESSION,
    "responseRule.ElementGroup": "(?:responseCondition|setOutcomeValue) ",
    "block.ElementGroup": "(?:p|choiceInteraction) ",
    "flowStatic.ElementGroup": "p ",
    "inlineStatic.ElementGroup": "span ",
    "lookupTable.ElementGroup": "matchTable ",
}
# Attributes that an element must have and may have, and its children.
_WRITTEN = {
    "responseDeclaration.AttrGroup": ({"identifier", "cardinality"}, {"baseType"}),
    "blockInteraction.AttrGroup": ({"responseIdentifier"}, set()),
    "textEntryInteraction.AttrGroup": ({"responseIdentifier"}, {"expectedLength"}),
    "simpleChoice.AttrGroup": ({"identifier"}, {"fixed"}),
    "correctResponse.ContentGroup": "(?:value )+",
    "p.ContentGroup": "(?:textEntryInteraction )*",
}


def _pieces():
    """Return the pieces of the schema that pyslet quotes, by name."""
    found = {}
    for module in (content, expressions, interactions, items, processing, variables):
        for _, kind in inspect.getmembers(module, inspect.isclass):
            for piece in _PIECE.finditer(vars(kind).get("__doc__") or ""):
                (node,) = ElementTree.fromstring(f'<x xmlns:xsd="{_XSD[1:-1]}">{piece[0]}</x>')
                found[node.get("name")] = node
    return found


_PIECES = _pieces()
_ELEMENTS = {name.partition(".")[0] for name in (*_PIECES, *_WRITTEN)}


def _attributes(group):
    """Return the attributes that a group of them asks for, and those that it allows besides."""
    if group in _WRITTEN:
        return _WRITTEN[group]
    needed, allowed = set(), set()
    for node in _PIECES.get(group, ()):
        if node.tag == f"{_XSD}attributeGroup":
            inner_needed, inner_allowed = _attributes(node.get("ref"))
            needed, allowed = needed | inner_needed, allowed | inner_allowed
        else:
            (needed if node.get("use") == "required" else allowed).add(node.get("name") or node.get("ref"))
    return needed, allowed


def _children(group):
    """Return the children of a group as a pattern over their names, each with a space behind it."""
    if group in _WRITTEN or group in _NAMES:
        return _WRITTEN.get(group) or _NAMES[group]
    pattern = ""
    for node in _PIECES[group].iterfind(f"{_XSD}sequence/*") if group in _PIECES else ():
        name, most = node.get("ref"), node.get("maxOccurs", "1").replace("unbounded", "")
        inner = f"{name} " if node.tag == f"{_XSD}element" else _children(name)
        pattern += f"(?:{inner}){{{node.get('minOccurs', '1')},{most}}}"
    return pattern


def structure_faults(data):
    """Give every fault in the structure of one item: elements, attributes, order, identifiers, references."""
    root = ElementTree.fromstring(data)
    if root.tag != f"{NAMESPACE}assessmentItem":
        yield f"the root is {root.tag}"
    for node in root.iter():
        yield from _node_faults(node)
    declared = [each.get("identifier") for each in root if each.tag.endswith("Declaration")]
    yield from (f"{each} is declared twice" for each in set(declared) if declared.count(each) > 1)
    for node in root.iter():
        name = node.get("responseIdentifier") or node.get("outcomeIdentifier")
        name = name or (node.get("identifier") if _name(node) in ("variable", "setOutcomeValue") else None)
        if name and name not in declared:
            yield f"{_name(node)} names {name}, which is not declared"


def _name(node):
    """Return an element's name without its namespace."""
    return node.tag.removeprefix(NAMESPACE)


def _node_faults(node):
    """Give the faults of one element."""
    name = _name(node)
    if name not in _ELEMENTS:
        yield f"{name} is no element of an item"
        return
    needed, allowed = _attributes(f"{name}.AttrGroup")
    given = set(node.attrib)
    if not needed <= given <= needed | allowed:
        yield f"{name} has the attributes {sorted(given)}"
    inner = "".join(f"{_name(child)} " for child in node)
    if not re.fullmatch(_children(f"{name}.ContentGroup"), inner):
        yield f"{name} holds {inner}"
    for attribute in ("identifier", "responseIdentifier", "outcomeIdentifier", "mapKey"):
        if attribute in given and not _IDENTIFIER.fullmatch(node.get(attribute)):
            yield f"{name} has the {attribute} {node.get(attribute)!r}"
    choices = [child.get("identifier") for child in node if _name(child) == "simpleChoice"]
    if len(set(choices)) < len(choices):
        yield f"{name} offers a choice twice"
