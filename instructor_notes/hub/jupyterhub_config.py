"""JupyterHub for the learners of a school on one Linux machine; `../hub.md` says how to install and run it.

Run by root in a folder of its own, where it keeps its database and its cookie secret:
`/srv/second_plate/.venv/bin/jupyterhub -f <this file>`. What a school has to look at is marked SCHOOL.
"""

import os
import sys
from pathlib import Path

c = get_config()  # noqa: F821 (JupyterHub gives it to the file that it reads)

GB = 1024**3
LEARNER_BYTES = 0.5 * GB  # server and two pages of one learner, measured by tests/benchmarks/hub.py
KEPT_FREE = 0.25  # share of the machine's memory for the system, the hub and the files that it reads
IDLE_S = 60 * 60  # a page that nothing happens on for so long is stopped, then the server; answers stay
PROXY = Path(__file__).resolve().parent / "node_modules" / ".bin" / "configurable-http-proxy"

# Where it listens: on this machine only. SCHOOL: put the school's web server with TLS before it, or give the
# machine's own address with ssl_key and ssl_cert; passwords must not cross a network in plain text.
c.JupyterHub.bind_url = "http://127.0.0.1:8000"
if PROXY.exists():
    c.ConfigurableHTTPProxy.command = [str(PROXY)]

# Who may come in: users of this system who are in one group, with the password that they have there.
# SCHOOL: name the group, or put in an authenticator for the school's own directory, which must name users of
# this system. Nobody can make an account, and nobody is an administrator of the hub.
c.JupyterHub.authenticator_class = "pam"
c.PAMAuthenticator.allowed_groups = {"second_plate_learners"}
c.Authenticator.allow_all = False

# What each learner gets: a process of the learner's own user, with this file's Python and an own folder.
c.JupyterHub.spawner_class = "localprocess"
c.Spawner.cmd = [sys.executable, "-m", "hub_server"]
c.Spawner.args = [
    f"--MappingKernelManager.cull_idle_timeout={IDLE_S}",
    "--MappingKernelManager.cull_interval=60",
    "--MappingKernelManager.cull_connected=True",  # a window left open over night is idle too
    f"--ServerApp.shutdown_no_activity_timeout={IDLE_S}",
]
c.Spawner.environment = dict.fromkeys(("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS"), "1")  # share the cores
c.Spawner.disable_user_config = True
c.Spawner.start_timeout = 180  # a whole class signs in within a minute
c.Spawner.http_timeout = 180

# Memory: hub_server.py holds each process to this. A limit for all processes of a learner together takes a
# spawner that the system enforces it for: see the note.
c.Spawner.mem_limit = "1.5G"
memory_bytes = os.sysconf("SC_PAGE_SIZE") * os.sysconf("SC_PHYS_PAGES")
c.JupyterHub.active_server_limit = max(1, int(memory_bytes * (1 - KEPT_FREE) / LEARNER_BYTES))
