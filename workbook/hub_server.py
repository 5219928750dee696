"""One learner's server under a hub: pages in the learner's home, in the same JupyterLab as `open.py` opens.

The hub runs `python -m hub_server` as the learner's own user of the system. Code and tables are read from the
one copy on the machine, which no learner can write; pages, answers and settings lie in the learner's home.
"""

import os
import shutil
import sys
from pathlib import Path

from environment import WORKBOOK, state_variables
from grading.learners import HOME_FOLDER, LEARNER_FILE, save_learner
from lab_server import START_PAGE, page_arguments

STATE = ".second_plate"  # what JupyterLab remembers
PAGES = ("*.ipynb", "[0-9]_*/*.ipynb")
NOBODY_ELSE = 0o077  # the mask of everything that the server and its pages write


def main(arguments):
    """Lay out what is missing and become the learner's server; the hub's own arguments go to it."""
    os.umask(NOBODY_ELSE)
    folder, state = Path.home() / HOME_FOLDER, Path.home() / STATE
    lay_out(folder, learner=os.environ["JUPYTERHUB_USER"])
    state.mkdir(exist_ok=True)
    os.environ.update(state_variables(state))
    limit_memory(os.environ.get("MEM_LIMIT"))
    os.chdir(folder)
    os.execv(sys.executable, [sys.executable, *server_arguments(folder, state), *arguments])


def server_arguments(folder, state):
    """Return what stands behind Python to start the server; where it listens comes from the hub."""
    return [
        "-m",
        "jupyterhub.singleuser",
        f"--ServerApp.default_url=/doc/tree/{START_PAGE}",
        "--KernelManager.transport_encryption=required",  # others on the machine could listen at its ports
        *page_arguments(state=state, root_folder=folder),
    ]


def lay_out(folder, *, learner):
    """Copy the pages that are not there yet, and sign the learner in under the name that the hub knows.

    A page that is there stays as it is: a learner may have written in it. The class file is not copied, so
    the class's own holds for everybody, and a date that the instructor moves is moved for all.
    """
    folder.mkdir(exist_ok=True)
    folder.chmod(0o777 & ~NOBODY_ELSE)
    for page in (page for pattern in PAGES for page in sorted(WORKBOOK.glob(pattern))):
        copy = folder / page.relative_to(WORKBOOK)
        if not copy.exists():
            copy.parent.mkdir(exist_ok=True)
            draft = copy.with_name(f".{copy.name}.new")
            shutil.copyfile(page, draft)  # without the original's permissions
            draft.replace(copy)
    if not (folder / LEARNER_FILE).exists():
        save_learner(folder, learner)


def limit_memory(most_bytes):
    """Let no process of this server take more memory than the hub says; nothing is set where it says nothing.

    The limit is that of each process: of the server, and of every page's kernel.
    """
    if most_bytes:
        import resource  # not on Windows, where no hub runs

        resource.setrlimit(resource.RLIMIT_DATA, (int(most_bytes), int(most_bytes)))


if __name__ == "__main__":
    main(sys.argv[1:])
