"""The gradebook as a file: nbgrader's tables opened in one transaction, and made where there are none yet.

nbgrader itself is not loaded, which takes seconds; a test compares the tables with its own.
"""

import itertools
import secrets
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path

import sqlalchemy as sql
from sqlalchemy.exc import DatabaseError

WAIT_S = 30  # for another program that writes to the gradebook, the formgrader for instance
CACHE_KB = 64_000
_EMPTY_GRADEBOOK = Path(__file__).parent / "templates" / "gradebook.sql"


class GradebookError(ValueError):
    """The gradebook cannot be read or written; the message is one sentence for the instructor."""


class GradebookFile:
    """A gradebook on which several transactions are run, one after the other; made if it is not there.

    With ``reading`` others may go on writing meanwhile.
    """

    def __init__(self, path, *, reading=False):
        self._path = path
        url = sql.URL.create("sqlite", database=str(path))
        self._engine = sql.create_engine(url, connect_args={"timeout": WAIT_S})
        sql.event.listen(self._engine, "connect", _set_up)
        sql.event.listen(self._engine, "begin", _begin_to_read if reading else _begin_to_write)
        self._tables = None

    @contextmanager
    def transaction(self) -> Iterator[tuple[sql.Connection, dict[str, sql.Table]]]:
        """Give connection and tables for one transaction."""
        try:
            with self._engine.begin() as connection:
                if self._tables is None:
                    self._tables = _tables(connection, self._path)
                yield connection, self._tables
        except DatabaseError as error:
            message = (
                f"gradebook {self._path} must be a database that can be read and written, got: {error.orig}"
            )
            raise GradebookError(message) from error

    def close(self):
        """Let go of the file."""
        self._engine.dispose()


def _set_up(connection, _):
    """Leave transactions to us, and keep more pages of a large gradebook in memory.

    Python's own way begins at the first change, after what the change rests on was read, and ends at each
    table that is made: two programs could add one learner, and a crash could leave half of a gradebook.
    """
    connection.isolation_level = None
    connection.execute(f"pragma cache_size = -{CACHE_KB}")


def _begin_to_write(connection):
    """Wait for other writers now; what is read from here on stays as it is until the end."""
    connection.exec_driver_sql("begin immediate")


def _begin_to_read(connection):
    """Keep what is read as it is until the end, and nobody from writing."""
    connection.exec_driver_sql("begin")


@contextmanager
def opened(path, *, reading=False) -> Iterator[tuple[sql.Connection, dict[str, sql.Table]]]:
    """Open the gradebook file, made if it is not there, in one transaction; give connection and tables."""
    with closing(GradebookFile(path, reading=reading)) as file, file.transaction() as pair:
        yield pair


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
    """Give row ids, unlike those of any other run; rising ones are several times faster to index.

    nbgrader takes up to 32 characters. Half of that makes a gradebook half the size.
    """
    prefix = f"{secrets.randbits(36):09x}"
    return map((prefix + "%07x").__mod__, itertools.count())
