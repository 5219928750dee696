# ruff: noqa: UP032, UP036
"""Which Python may run this project; written so that any Python since 2.7 can read it and complain."""

import subprocess
import sys

OLDEST = (3, 11)
NEWEST = (3, 13)
PROBE = "import sys; print('%d.%d' % sys.version_info[:2])"


def version_text(version):
    """Write a version the way people say it, `3.11`."""
    return "{}.{}".format(*version[:2])


def complaint(version):
    """Return the sentence about a Python version that this project was not made for, or an empty text."""
    said = "this is Python {}, and the workbook needs Python {} to {}".format(
        version_text(version), version_text(OLDEST), version_text(NEWEST)
    )
    if tuple(version[:2]) < OLDEST:
        return "Too old: {}: install Python {} and start with that.".format(said, version_text(NEWEST))
    if tuple(version[:2]) > NEWEST:
        return "Newer than tried: {}; going on, but if it fails, install Python {}.".format(
            said, version_text(NEWEST)
        )
    return ""


def prints_version(command, version):
    """Tell whether a command is really a Python of this version, by running it."""
    try:
        probe = subprocess.Popen(command + ["-c", PROBE], stdout=subprocess.PIPE, stderr=subprocess.PIPE)
    except OSError:  # no such command
        return False
    printed = probe.communicate()[0]
    return probe.returncode == 0 and printed.decode("ascii", "replace").strip() == version_text(version)


def fitting_python():
    """Return the command of a fitting Python that is also on this machine, newest first, or None."""
    for minor in range(NEWEST[1], OLDEST[1] - 1, -1):
        version = (3, minor)
        for command in (["python" + version_text(version)], ["py", "-" + version_text(version)]):
            if prints_version(command, version):
                return command
    return None


def require_python():
    """Go on where this Python fits; else start the same command with one that does, or complain."""
    sentence = complaint(sys.version_info)
    if not sentence:
        return
    command = fitting_python()
    if command:
        here = version_text(sys.version_info)
        sys.stderr.write("Using {} instead of Python {}.\n".format(" ".join(command), here))
        sys.exit(subprocess.call(command + sys.argv))
    if sys.version_info[:2] < OLDEST:
        sys.exit(sentence)
    sys.stderr.write(sentence + "\n")
