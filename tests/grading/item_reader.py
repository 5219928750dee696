"""An independent reader of QTI 2.1 items: checks their structure, and marks an answer the way they say.

The rules are those of the standard's information model for the elements that we use, written down for these
tests. Seen in the schema's text of version 2.1.1: two expressions under `equal`, fields within text, values
under a default. The others are from memory. The schema itself is not kept here, as its licence forbids.
"""

import re
from xml.etree import ElementTree

NAMESPACE = "{http://www.imsglobal.org/xsd/imsqti_v2p1}"
IDENTIFIER = re.compile(r"[A-Za-z_][A-Za-z0-9_.-]*")
EXPRESSIONS = "and|or|not|isNull|equal|lte|match|member|multiple|sum|variable|baseValue|mapResponse"
_ANY = rf"(?:(?:{EXPRESSIONS}) )"
_RULES = "(?:(?:responseCondition|setOutcomeValue) )*"
# Element: attributes that it must have, that it may have, and its children as a pattern over their names.
STRUCTURE = {
    "assessmentItem": (
        {"identifier", "title", "adaptive", "timeDependent"},
        {"label", "toolName", "toolVersion"},
        "(responseDeclaration )*(outcomeDeclaration )*(itemBody )?(responseProcessing )?(modalFeedback )*",
    ),
    "responseDeclaration": (
        {"identifier", "cardinality"},
        {"baseType"},
        "(defaultValue )?(correctResponse )?(mapping )?",
    ),
    "outcomeDeclaration": ({"identifier", "cardinality"}, {"baseType", "normalMaximum"}, "(defaultValue )?"),
    "correctResponse": (set(), set(), "(value )+"),
    "defaultValue": (set(), set(), "(value )+"),
    "value": (set(), {"baseType"}, ""),
    "mapping": ({"defaultValue"}, {"lowerBound", "upperBound"}, "(mapEntry )+"),
    "mapEntry": ({"mapKey", "mappedValue"}, {"caseSensitive"}, ""),
    "itemBody": (set(), {"class"}, "((p|choiceInteraction) )+"),
    "p": (set(), set(), "(textEntryInteraction )*"),
    "textEntryInteraction": ({"responseIdentifier"}, {"expectedLength"}, ""),
    "choiceInteraction": (
        {"responseIdentifier", "shuffle", "maxChoices"},
        {"minChoices"},
        "(prompt )?(simpleChoice )+",
    ),
    "prompt": (set(), set(), ""),
    "simpleChoice": ({"identifier"}, {"fixed"}, ""),
    "responseProcessing": (set(), set(), _RULES),
    "responseCondition": (set(), set(), "responseIf (responseElseIf )*(responseElse )?"),
    "responseIf": (set(), set(), _ANY + _RULES),
    "responseElseIf": (set(), set(), _ANY + _RULES),
    "setOutcomeValue": ({"identifier"}, set(), _ANY),
    "and": (set(), set(), f"{_ANY}+"),
    "or": (set(), set(), f"{_ANY}+"),
    "not": (set(), set(), _ANY),
    "isNull": (set(), set(), _ANY),
    "equal": ({"toleranceMode"}, {"tolerance"}, f"{_ANY}{{2}}"),
    "lte": (set(), set(), f"{_ANY}{{2}}"),
    "match": (set(), set(), f"{_ANY}{{2}}"),
    "member": (set(), set(), f"{_ANY}{{2}}"),
    "multiple": (set(), set(), f"{_ANY}*"),
    "sum": (set(), set(), f"{_ANY}+"),
    "variable": ({"identifier"}, set(), ""),
    "baseValue": ({"baseType"}, set(), ""),
    "mapResponse": ({"identifier"}, set(), ""),
    "modalFeedback": ({"outcomeIdentifier", "identifier", "showHide"}, {"title"}, "(p )*"),
}


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
    if name not in STRUCTURE:
        yield f"{name} is no element of an item"
        return
    needed, allowed, children = STRUCTURE[name]
    given = set(node.attrib)
    if not needed <= given <= needed | allowed:
        yield f"{name} has the attributes {sorted(given)}"
    inner = "".join(f"{_name(child)} " for child in node)
    if not re.fullmatch(children, inner):
        yield f"{name} holds {inner}"
    for attribute in ("identifier", "responseIdentifier", "outcomeIdentifier", "mapKey"):
        if attribute in given and not IDENTIFIER.fullmatch(node.get(attribute)):
            yield f"{name} has the {attribute} {node.get(attribute)!r}"
    choices = [child.get("identifier") for child in node if _name(child) == "simpleChoice"]
    if len(set(choices)) < len(choices):
        yield f"{name} offers a choice twice"


def mark_item(data, responses):
    """Return ``(score, feedback shown)`` that an item gives to responses by name, computed as it says."""
    root = ElementTree.fromstring(data)
    values = {"SCORE": 0.0, "FEEDBACK": []}
    mappings = {}
    for declared in root.findall(f"{NAMESPACE}responseDeclaration"):
        values[declared.get("identifier")] = responses.get(declared.get("identifier"))
        mapping = declared.find(f"{NAMESPACE}mapping")
        if mapping is not None:
            mappings[declared.get("identifier")] = mapping
    for rule in root.find(f"{NAMESPACE}responseProcessing"):
        _run(rule, values, mappings)
    shown = {each.get("identifier") for each in root.findall(f"{NAMESPACE}modalFeedback")}
    return values["SCORE"], set(values["FEEDBACK"]) & shown


def _run(rule, values, mappings):
    """Carry out one rule of the processing."""
    if _name(rule) == "setOutcomeValue":
        values[rule.get("identifier")] = _value(rule[0], values, mappings)
        return
    for branch in rule:
        if _value(branch[0], values, mappings) is True:
            for inner in branch[1:]:
                _run(inner, values, mappings)
            return


def _value(node, values, mappings):
    """Return the value of an expression; None stands for the standard's NULL."""
    name = _name(node)
    if name == "variable":
        return values[node.get("identifier")]
    if name == "baseValue":
        return float(node.text) if node.get("baseType") == "float" else node.text
    if name == "mapResponse":
        return _mapped(mappings[node.get("identifier")], values[node.get("identifier")] or [])
    inner = [_value(each, values, mappings) for each in node]
    if name == "isNull":
        return inner[0] is None or inner[0] == []
    if name == "multiple":
        return [one for each in inner for one in (each if isinstance(each, list) else [each])]
    if name == "not":
        return None if inner[0] is None else not inner[0]
    if name in ("and", "or"):
        return (all if name == "and" else any)(each is True for each in inner)
    if any(each is None for each in inner):
        return None
    return _OPERATIONS[name](node, *inner)


def _equal(node, left, right):
    """Compare two numbers within a tolerance, its ends included."""
    if node.get("toleranceMode") == "exact":
        return left == right
    below, above = map(float, node.get("tolerance").split())
    return right - below <= left <= right + above


def _mapped(mapping, chosen):
    """Add up what each chosen value is mapped to, within the bounds."""
    table = {each.get("mapKey"): float(each.get("mappedValue")) for each in mapping}
    total = sum(table.get(each, float(mapping.get("defaultValue"))) for each in set(chosen))
    return min(max(total, float(mapping.get("lowerBound"))), float(mapping.get("upperBound")))


_OPERATIONS = {
    "equal": _equal,
    "lte": lambda node, left, right: left <= right,
    "match": lambda node, left, right: left == right,
    "member": lambda node, one, many: one in many,
    "sum": lambda node, *terms: sum(terms),
}
