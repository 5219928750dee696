"""Everything that a gradebook holds, without row ids and in one order, to compare one with another."""

import sqlalchemy as sql

from grading.gradebook_file import opened
from grading.gradebook_scores import granted_of

_ROW_IDS = {"id", "assignment_id", "notebook_id", "cell_id"}


def contents(gradebook):
    """Return the rows of each table, with what their references name in place of row ids."""
    with opened(gradebook, reading=True) as (connection, tables):
        names = _names(connection, tables)
        found = {}
        for name, table in tables.items():
            rows = connection.execute(sql.select(table)).mappings().all()
            found[name] = sorted((_plain(row, names) for row in rows), key=repr)
    return found


def _names(connection, tables):
    """Return a name for each row id that others refer to."""
    names = {}
    for table in ("course", "student", "assignment", "notebook", "base_cell"):
        kind = "type" if table == "base_cell" else None
        for row in connection.execute(sql.select(tables[table])).mappings():
            names[row["id"]] = (row.get("name") or row["id"], row[kind] if kind else table)
    for row in connection.execute(sql.select(tables["submitted_assignment"])).mappings():
        names[row["id"]] = (row["student_id"], names[row["assignment_id"]])
    for row in connection.execute(sql.select(tables["submitted_notebook"])).mappings():
        names[row["id"]] = names[row["assignment_id"]]
    return names


def _plain(row, names):
    """Return one row with names for ids, and an extension as the time that it grants."""
    values = {
        key: names.get(value) if key in _ROW_IDS and key != "id" else value for key, value in row.items()
    }
    values.pop("id", None)
    if "extension" in values:
        values["extension"] = granted_of(values["extension"])
    return values
