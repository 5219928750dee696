"""Packages of one module, written by hand as wheels, so that pip can install something without an index."""

import os
import zipfile

FIXED = "Wheel-Version: 1.0\nGenerator: by hand\nRoot-Is-Purelib: true\nTag: py3-none-any\n"


def write_wheel(folder, name, code, *, version="1.0", filling_bytes=0):
    """Write a package of one module, with so many bytes to fill a disk, and return its file."""
    path = folder / f"{name}-{version}-py3-none-any.whl"
    about = f"{name}-{version}.dist-info"
    members = {
        f"{name}.py": code,
        f"{name}_filling.bin": os.urandom(filling_bytes),
        f"{about}/METADATA": f"Metadata-Version: 2.1\nName: {name}\nVersion: {version}\n",
        f"{about}/WHEEL": FIXED,
    }
    with zipfile.ZipFile(path, "w", zipfile.ZIP_STORED) as wheel:
        for member, content in members.items():
            wheel.writestr(member, content)
        wheel.writestr(
            f"{about}/RECORD", "".join(f"{member},,\n" for member in [*members, f"{about}/RECORD"])
        )
    return path
