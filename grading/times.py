"""Times as nbgrader keeps them: in UTC, without time zone, without fractions of a second."""

from datetime import datetime


def utc(text):
    """Read an ISO time, with or without its offset, and return it in UTC without time zone."""
    moment = datetime.fromisoformat(text)
    offset = moment.utcoffset()
    if offset is not None:
        moment = moment.replace(tzinfo=None) - offset
    return moment.replace(microsecond=0)
