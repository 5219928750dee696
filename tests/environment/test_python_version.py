"""Which Python versions are taken, and what is said of the others."""

import sys

import pytest

import python_version


@pytest.mark.parametrize("version", [(3, 11), (3, 12, 1), (3, 13)])
def test_versions_that_fit(version):
    """Nothing is said of a Python that the project was tried with."""
    assert python_version.complaint(version) == ""


@pytest.mark.parametrize("version", [(2, 7), (3, 6), (3, 10, 13)])
def test_older_versions(version):
    """An older Python is too old, and the newest that fits is named."""
    said = python_version.complaint(version)
    assert said.startswith(f"Too old: this is Python {version[0]}.{version[1]}, ")
    assert said.endswith("install Python 3.13 and start with that.")


def test_newer_version_is_tried():
    """A Python newer than was tried gives a warning that names what to do if it fails."""
    said = python_version.complaint((3, 15))
    assert said.startswith("Newer than tried: this is Python 3.15")
    assert "going on" in said


def test_newer_version_goes_on_where_no_other_is_found(monkeypatch, capsys):
    """With nothing but a newer Python on the machine the command goes on after the warning."""
    monkeypatch.setattr(python_version.sys, "version_info", (3, 15, 0, "final", 0))
    monkeypatch.setattr(python_version, "fitting_python", lambda: None)
    python_version.require_python()
    assert "Newer than tried" in capsys.readouterr().err


def test_command_of_another_version_is_not_taken(tmp_path):
    """A command is taken only for the version that it really prints, and not where it fails."""
    here = sys.version_info[:2]
    assert python_version.prints_version([sys.executable], here)
    assert not python_version.prints_version([sys.executable], (3, 10))
    assert not python_version.prints_version([str(tmp_path / "none")], here)
