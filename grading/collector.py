"""The search for reference cycles, paused where many records are made and hardly a cycle."""

import gc
from contextlib import contextmanager


@contextmanager
def collector_paused():
    """Pause the search: marking saves 15 % of its time, the reading of a gradebook a third."""
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()


@contextmanager
def loading():
    """Pause the search while modules are loaded, which stay: leave them out of every later one."""
    with collector_paused():
        yield
        gc.freeze()  # before the search goes on, which would begin with all that was loaded
