"""The project's own environment, `.venv` at its root: made on first use, made again where it is not whole.

Standard library only: this runs before anything is installed. A stamp is written last, so that an environment
without a fitting stamp is known to be unfinished, moved or out of date.
"""

import hashlib
import json
import os
import subprocess
import sys
import time
from contextlib import contextmanager
from pathlib import Path

from set_up_steps import (
    DiskFullError,
    SetUpError,
    clean_variables,
    install,
    make_venv,
    os_failure,
    remove,
)

WORKBOOK = Path(__file__).resolve().parent
ROOT = WORKBOOK.parent
STAMP = "second_plate.json"
MARK = "made_by_second_plate"
STATE = "second_plate"
LOCK_PAUSE_S = 0.3


def venv_folder(root=ROOT):
    """Return the folder of the environment."""
    return root / ".venv"


def venv_python(root=ROOT):
    """Return the Python inside the environment, whether it is there yet or not."""
    parts = ("Scripts", "python.exe") if os.name == "nt" else ("bin", "python")
    return venv_folder(root).joinpath(*parts)


def state_folder(root=ROOT):
    """Return the folder for what JupyterLab remembers, apart from the learner's own Jupyter."""
    return venv_folder(root) / STATE


def prepare(*, root=ROOT, with_tests=False):
    """Make the environment where it is missing or not whole, and return its Python.

    Raises SetUpError with one sentence where it cannot be made.
    """
    files = [root / "requirements.txt"] + ([root / "tests" / "requirements.txt"] if with_tests else [])
    try:
        with only_one(root / ".venv.lock", "Another run is setting up this folder: waiting for it.") as lock:
            bring_up_to_date(root, files, lock)
            write_path_file(root)
            state_folder(root).mkdir(exist_ok=True)
    except (OSError, SetUpError) as error:
        told = error if isinstance(error, SetUpError) else os_failure(error, root)
        if isinstance(told, DiskFullError) and not stamp_path(root).exists():
            clear(venv_folder(root))  # half an environment would keep the disk full
        raise told from error
    except KeyboardInterrupt:
        print("\nStopped during the set-up: what is unfinished is made again next time.", file=sys.stderr)
        raise
    return venv_python(root)


def bring_up_to_date(root, files, lock):
    """Do what is missing between the environment that is there and the one that is wanted."""
    stamp, wanted = read_stamp(root), {relative(path, root): digest(path) for path in files}
    if stamp is not None and stamp | wanted == stamp:
        return
    if stamp is None:
        make_afresh(root, lock)
    stamp_path(root).unlink(missing_ok=True)
    print("Installing packages, which takes a few minutes the first time ...", flush=True)
    install(venv_python(root), files, venv_folder(root), keep_open=lock)
    write_stamp(root, (stamp or {}) | wanted)
    print("The environment is ready.", flush=True)


def make_afresh(root, lock):
    """Make an empty environment, clearing away what an earlier run left half done."""
    folder = venv_folder(root)
    if (folder / MARK).exists():
        print(f"{folder} is unfinished, moved or of another Python: making it again.", flush=True)
        clear(folder)
    elif os.path.lexists(folder):
        aside = folder.with_name(f".venv-before-{time.strftime('%Y%m%d-%H%M%S')}")
        folder.rename(aside)
        print(f"An environment that this project did not make was in the way and is now {aside}.", flush=True)
    print(f"Making the environment of the workbook in {folder} ...", flush=True)
    folder.mkdir()
    (folder / MARK).touch()
    make_venv(folder, keep_open=lock)


def clear(folder):
    """Remove an environment, or say that a running program holds on to it."""
    try:
        remove(folder)
    except PermissionError as error:
        message = f"{folder} is in use: close the workbook's windows, stop its command, and run this again."
        raise SetUpError(message) from error


def relative(path, root):
    """Return the name of a requirement file as the stamp knows it."""
    return path.relative_to(root).as_posix()


def digest(path):
    """Return the digest of what a requirement file asks for, whatever its comments, order and line ends."""
    lines = (line.split(" #")[0].strip() for line in path.read_text(encoding="utf-8").splitlines())
    wanted = sorted(line for line in lines if line and not line.startswith("#"))
    return hashlib.sha256("\n".join(wanted).encode("utf-8")).hexdigest()


def stamp_path(root):
    """Return where the stamp of a whole environment lies."""
    return venv_folder(root) / STAMP


def write_stamp(root, digests):
    """Write the stamp in one go, so that half a stamp is never seen."""
    content = {"python": python_inside(root), "location": str(venv_folder(root)), "requirements": digests}
    draft = stamp_path(root).with_suffix(".draft")
    draft.write_text(json.dumps(content, indent=1), encoding="utf-8")
    draft.replace(stamp_path(root))


def read_stamp(root):
    """Return the digests of what is installed, or None where the environment cannot be trusted."""
    try:
        content = json.loads(stamp_path(root).read_text(encoding="utf-8"))
        here = content["location"] == str(venv_folder(root))
        whole = here and content["python"] == python_inside(root)
        return dict(content["requirements"]) if whole else None
    except (FileNotFoundError, NotADirectoryError, ValueError, KeyError, TypeError):
        return None


def python_inside(root):
    """Return the version of the environment's Python by running it, or an empty text where it fails."""
    try:
        command = [str(venv_python(root)), "-I", "-c", "import sys; print(sys.version)"]
        done = subprocess.run(command, capture_output=True, text=True, check=False)
    except OSError:
        return ""
    return done.stdout.strip() if done.returncode == 0 else ""


def write_path_file(root):
    """Let the environment's Python find the library, the forms and the marking.

    The two lines are relative to the file's own folder, so that no letter of the path can be misread.
    """
    pattern = "Lib/site-packages" if os.name == "nt" else "lib/python*/site-packages"
    packages = next(venv_folder(root).glob(pattern))
    lines = [os.path.relpath(folder, packages) for folder in (root, root / "workbook")]
    text = "\n".join(lines) + "\n"
    target = packages / "second_plate.pth"
    if not target.exists() or target.read_text(encoding="ascii") != text:
        target.write_text(text, encoding="ascii")


def lab_variables(root=ROOT):
    """Return the variables for the environment's programs, which keep the user's own Jupyter out of it."""
    state, others = state_folder(root), ("JUPYTER", "IPYTHON")
    kept = {name: value for name, value in clean_variables().items() if not name.startswith(others)}
    own = {
        "VIRTUAL_ENV": str(venv_folder(root)),
        "PATH": os.pathsep.join((str(venv_python(root).parent), kept.get("PATH", os.defpath))),
    }
    return kept | own | state_variables(state)


def state_variables(state):
    """Return the variables that make JupyterLab and what runs in it remember things in one folder."""
    return {
        "JUPYTER_CONFIG_DIR": str(state / "config"),
        "JUPYTER_DATA_DIR": str(state / "data"),
        "JUPYTER_RUNTIME_DIR": str(state / "runtime"),
        "IPYTHONDIR": str(state / "ipython"),
        "MPLCONFIGDIR": str(state / "matplotlib"),
    }


def in_environment(command, *, folder=ROOT):
    """Run a command of the environment to its end and return its exit code."""
    return subprocess.call([str(part) for part in command], cwd=folder, env=lab_variables())


@contextmanager
def only_one(path, waiting):
    """Hold a lock file, saying so while another run holds it, and give the file number of the lock."""
    with path.open("a+b") as handle:
        if not take(handle):
            print(waiting, flush=True)
            while not take(handle):
                time.sleep(LOCK_PAUSE_S)
        try:
            yield handle.fileno()
        finally:
            give_back(handle)


def take(handle):
    """Try to lock the file for this process; the system gives the lock back should the process die."""
    try:
        if os.name == "nt":
            import msvcrt

            handle.seek(0)
            msvcrt.locking(handle.fileno(), msvcrt.LK_NBLCK, 1)
        else:
            import fcntl

            fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except (BlockingIOError, PermissionError):
        return False
    return True


def give_back(handle):
    """Unlock the file."""
    if os.name == "nt":
        import msvcrt

        handle.seek(0)
        msvcrt.locking(handle.fileno(), msvcrt.LK_UNLCK, 1)
    else:
        import fcntl

        fcntl.flock(handle, fcntl.LOCK_UN)
