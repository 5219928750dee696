"""Where a gradebook lies: in a file, or in a PostgreSQL database named by its URL.

Both hold nbgrader's own tables, as nbgrader itself makes them there. nbgrader is not loaded, which takes
seconds; tests compare the tables with its own.
"""

from dataclasses import dataclass
from pathlib import Path

import sqlalchemy as sql
from sqlalchemy.exc import ArgumentError

GRADEBOOK_FILE = "gradebook.db"
WAIT_S = 30  # for another program that writes to the gradebook, the formgrader for instance
CONNECT_S = 10  # for the database server to answer
CACHE_KB = 64_000
INSTALL = '.venv/bin/python -m pip install -c tests/requirements.txt ".[postgresql]"'
_EMPTY_GRADEBOOK = Path(__file__).parent / "templates" / "gradebook.sql"
_OUR_LOCK = 0x2ECD97A7E  # any number that other users of the database do not take
# What nbgrader's model makes of the same tables on a server, with types of their own for kinds of cell.
_ON_POSTGRESQL = (
    ("extension DATETIME", "extension INTERVAL"),
    ("DATETIME", "TIMESTAMP WITHOUT TIME ZONE"),
    ("FLOAT NOT NULL,\n    cell_type VARCHAR(8)", "FLOAT NOT NULL,\n    cell_type grade_cell_type"),
    ("cell_type VARCHAR(8)", "cell_type source_cell_type"),
)
_POSTGRESQL_TYPES = (
    "CREATE TYPE grade_cell_type AS ENUM ('code', 'markdown')",
    "CREATE TYPE source_cell_type AS ENUM ('code', 'markdown')",
)
_WITH_LEARNERS = ("grade", "comment", "submitted_notebook", "submitted_assignment", "student")


class GradebookError(ValueError):
    """The gradebook cannot be read or written; the message is one sentence for the instructor."""


@dataclass(frozen=True, kw_only=True)
class GradebookDatabase:
    """A gradebook on a server: its address, and the folder with the log of changes by a person."""

    url: sql.URL
    folder: Path

    def __str__(self):
        """Return the address without its password, and without options, which may hold another."""
        return self.url.set(query={}).render_as_string(hide_password=True)


def gradebook_at(place, folder):
    """Return the gradebook that was asked for: a ``GradebookDatabase``, or the path of a file.

    Without a place it is the file in ``folder``; the log of changes to a database lies in that folder.
    """
    if not place:
        return Path(folder) / GRADEBOOK_FILE
    if "://" not in str(place):
        return Path(place)
    try:
        url = sql.make_url(str(place))
    except (ArgumentError, ValueError):
        url = None
    if url is None or url.drivername not in ("postgresql", "postgresql+psycopg") or not url.database:
        kind = str(place).partition("://")[0]
        message = (
            "gradebook must be a file or a URL such as postgresql+psycopg://user@host:5432/gradebook, "
            f"got one that begins with {kind}:// and is not of this form"
        )
        raise GradebookError(message)
    return GradebookDatabase(url=url.set(drivername="postgresql+psycopg"), folder=Path(folder))


def engine_of(place, *, reading):
    """Return the engine of a gradebook; each transaction keeps other writers out unless it is for reading."""
    engine = plain_engine_of(place)
    if isinstance(place, GradebookDatabase):
        sql.event.listen(engine, "begin", _begin_to_read_there if reading else _begin_to_write_there)
    else:
        sql.event.listen(engine, "begin", _begin_to_read if reading else _begin_to_write)
    return engine


def plain_engine_of(place):
    """Return the engine of a gradebook, for statements outside of transactions."""
    if not isinstance(place, GradebookDatabase):
        url = sql.URL.create("sqlite", database=str(place))
        engine = sql.create_engine(url, connect_args={"timeout": WAIT_S})
        sql.event.listen(engine, "connect", _set_up)
        return engine
    try:
        return sql.create_engine(place.url, connect_args={"connect_timeout": CONNECT_S})
    except ImportError as error:
        message = f"gradebook {place} needs the package psycopg, which is not installed here: run {INSTALL}"
        raise GradebookError(message) from error


def empty_gradebook(place):
    """Return the statements that make an empty gradebook; the last one names the version of its layout."""
    text = _EMPTY_GRADEBOOK.read_text(encoding="utf-8")
    types = ()
    if isinstance(place, GradebookDatabase):
        types = _POSTGRESQL_TYPES
        for here, there in _ON_POSTGRESQL:
            text = text.replace(here, there)
    return [*types, *filter(None, (each.strip() for each in text.split(";\n")))]


def overwrite_deleted(connection):
    """Let a file's pages be overwritten where rows are deleted from now on, which takes a little time."""
    if connection.dialect.name == "sqlite":
        connection.exec_driver_sql("pragma secure_delete = on")


def write_anew(place):
    """Write all rows to fresh pages, so that nothing is left of those that were deleted."""
    statements = (
        [f"VACUUM FULL {each}" for each in _WITH_LEARNERS]
        if isinstance(place, GradebookDatabase)
        else ["VACUUM"]
    )
    engine = plain_engine_of(place)
    with engine.connect().execution_options(isolation_level="AUTOCOMMIT") as connection:
        for statement in statements:
            connection.exec_driver_sql(statement)
    engine.dispose()


def said_by(error, place):
    """Return what a database said, on one line and without the password."""
    text = " ".join(str(error.orig).split())
    if isinstance(place, GradebookDatabase) and place.url.password:
        text = text.replace(str(place.url.password), "***")
    return text


def _set_up(connection, _):
    """Leave transactions to us, and keep more pages of a large gradebook in memory.

    Python's own way begins at the first change, after what the change rests on was read, and ends at each
    table that is made: two programs could add one learner, and a crash could leave half of a gradebook.
    """
    connection.isolation_level = None
    connection.execute("pragma temp_store = memory")  # of some learners at a time; no other folder is needed
    connection.execute(f"pragma cache_size = -{CACHE_KB}")


def _begin_to_write(connection):
    """Wait for other writers now; what is read from here on stays as it is until the end."""
    connection.exec_driver_sql("begin immediate")


def _begin_to_read(connection):
    """Keep what is read as it is until the end, and nobody from writing."""
    connection.exec_driver_sql("begin")


def _begin_to_write_there(connection):
    """Let no other program of ours write until the end; nbgrader waits only for the rows that are changed."""
    connection.exec_driver_sql(f"set local lock_timeout = '{WAIT_S}s'")
    connection.exec_driver_sql(f"select pg_advisory_xact_lock({_OUR_LOCK})")


def _begin_to_read_there(connection):
    """Keep what is read as it is until the end."""
    connection.exec_driver_sql("set transaction isolation level repeatable read")
