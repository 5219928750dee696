"""The gradebook as a file: nbgrader's tables opened in one transaction, and made where there are none yet.

nbgrader itself is not loaded, which takes seconds; a test compares the tables with its own.
"""

import itertools
import uuid
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import sqlalchemy as sql
from sqlalchemy.exc import DatabaseError

WAIT_S = 30  # for another program that writes to the gradebook, the formgrader for instance
_EMPTY_GRADEBOOK = Path(__file__).parent / "templates" / "gradebook.sql"


class GradebookError(ValueError):
    """The gradebook cannot be read or written; the message is one sentence for the instructor."""


@contextmanager
def opened(path) -> Iterator[tuple[sql.Connection, dict[str, sql.Table]]]:
    """Open the gradebook file, made if it is not there, in one transaction; give connection and tables."""
    engine = sql.create_engine(sql.URL.create("sqlite", database=str(path)), connect_args={"timeout": WAIT_S})
    try:
        with engine.begin() as connection:
            yield connection, _tables(connection, path)
    except DatabaseError as error:
        message = f"gradebook {path} must be a database that can be read and written, got: {error.orig}"
        raise GradebookError(message) from error
    finally:
        engine.dispose()


def create_gradebook(path):
    """Make an empty gradebook where there is none yet."""
    with opened(path):
        pass


def _tables(connection, path):
    """Return the tables by name; an empty file gets them first, one of another nbgrader is refused."""
    statements = [each.strip() for each in _EMPTY_GRADEBOOK.read_text(encoding="utf-8").split(";\n")]
    if not sql.inspect(connection).get_table_names():
        for statement in filter(None, statements):
            connection.exec_driver_sql(statement)
    metadata = sql.MetaData()
    metadata.reflect(connection)
    tables = metadata.tables
    version = (
        connection.scalar(sql.select(tables["alembic_version"])) if "alembic_version" in tables else None
    )
    if version is None or f"'{version}'" not in statements[-2] + statements[-1]:
        message = f"gradebook {path} must be one of this nbgrader version, got layout {version}"
        raise GradebookError(message)
    return tables


def row_ids():
    """Give row ids as nbgrader wants them, 32 characters; rising ones are several times faster to index."""
    prefix = uuid.uuid4().hex[:20]
    return (f"{prefix}{count:012x}" for count in itertools.count())
