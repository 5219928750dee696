"""Archives of hand-ins made by hand, sound or not."""

import json
import zipfile

MANIFEST = {
    "format": "second plate hand-in",
    "version": 1,
    "learner": "ann",
    "display_name": "Ann",
    "course": "test-class",
    "bank": "test",
    "made_at": "2026-11-25T08:30:15+00:00",
}


def zip_of(path, members, *, manifest=MANIFEST, packing=zipfile.ZIP_DEFLATED):
    """Write an archive of names and bytes with a manifest, or without where it is None; return its path."""
    with zipfile.ZipFile(path, "w", packing) as archive:
        if manifest is not None:
            archive.writestr(
                "hand_in.json", manifest if isinstance(manifest, (str, bytes)) else json.dumps(manifest)
            )
        for name, data in members:
            archive.writestr(name, data)
    return path
