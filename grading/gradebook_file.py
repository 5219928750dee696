"""The gradebook as it is opened: nbgrader's tables in one transaction, made where there are none yet."""

from collections.abc import Iterator
from contextlib import closing, contextmanager

import sqlalchemy as sql
from sqlalchemy.exc import DBAPIError

from grading.gradebook_places import GradebookError, empty_gradebook, engine_of, said_by, write_anew

_TABLES = {}  # by kind of database: one version has one layout, and reading it takes a while


class GradebookFile:
    """A gradebook on which several transactions are run, one after the other; made if it is not there.

    With ``reading`` others may go on writing meanwhile.
    """

    def __init__(self, path, *, reading=False):
        self._path = path
        self._engine = engine_of(path, reading=reading)
        self._tables = None

    @contextmanager
    def transaction(self) -> Iterator[tuple[sql.Connection, dict[str, sql.Table]]]:
        """Give connection and tables for one transaction."""
        with self._told(), self._engine.begin() as connection:
            if self._tables is None:
                self._tables = _tables(connection, self._path)
            yield connection, self._tables

    @contextmanager
    def _told(self):
        """Say in one sentence what the database refuses."""
        try:
            yield
        except DBAPIError as error:
            said = said_by(error, self._path)
            message = f"gradebook {self._path} must be a database that can be read and written, got: {said}"
            raise GradebookError(message) from error

    def is_empty(self):
        """Tell whether there are no tables yet."""
        with self._told(), self._engine.connect() as connection:
            return not sql.inspect(connection).get_table_names()

    def forget_deleted(self):
        """Leave nothing of deleted rows in the gradebook."""
        with self._told():
            write_anew(self._path)

    def close(self):
        """Let go of the file."""
        self._engine.dispose()


@contextmanager
def opened(path, *, reading=False) -> Iterator[tuple[sql.Connection, dict[str, sql.Table]]]:
    """Open the gradebook, made if it is not there, in one transaction; give connection and tables.

    ``path`` is a file or a ``GradebookDatabase``.
    """
    with closing(GradebookFile(path, reading=reading)) as file:
        if reading and file.is_empty():
            create_gradebook(path)  # with others kept out: two who came to read would both make it
        with file.transaction() as pair:
            yield pair


def create_gradebook(path):
    """Make an empty gradebook where there is none yet."""
    with opened(path):
        pass


def _tables(connection, path):
    """Return the tables by name; an empty place gets them first, one of another nbgrader is refused."""
    statements = empty_gradebook(path)
    names = sql.inspect(connection).get_table_names()
    if not names:
        for statement in statements:
            connection.exec_driver_sql(statement)
    version = None
    if not names or "alembic_version" in names:
        version = connection.scalar(sql.text("select version_num from alembic_version"))
    if version is None or f"'{version}'" not in statements[-1]:
        message = f"gradebook {path} must be one of this nbgrader version, got layout {version}"
        raise GradebookError(message)
    kind = connection.dialect.name
    if kind not in _TABLES:
        metadata = sql.MetaData()
        metadata.reflect(connection)
        _TABLES[kind] = metadata.tables
    return _TABLES[kind]
