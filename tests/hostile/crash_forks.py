"""Processes to be killed: split off ready to work, so that a kill costs no start of Python.

A process names the step it is in, in memory that its parent sees too, so a kill is known by what it hit.
"""

import gc
import mmap
import os
import signal
import struct
import sys
import time
import traceback
from contextlib import suppress
from select import select

_COUNT = struct.Struct("=II")
LOOK_S = 0.0002
RAISED = 70  # exit code of work that raised something


class Steps:
    """The step that a process is in, and how many it began; ``log`` may list ``(time, step)``."""

    def __init__(self, names):
        """Begin in no step."""
        self._memory = mmap.mmap(-1, _COUNT.size)
        self._names = ["", *names]
        self.log = None

    @property
    def now(self):
        """Name the step."""
        return self._names[_COUNT.unpack(self._memory[:])[1]]

    @property
    def begun(self):
        """Count the steps that were begun."""
        return _COUNT.unpack(self._memory[:])[0]

    def begin(self, name):
        """Go into a step."""
        self._memory[:] = _COUNT.pack(self.begun + 1, self._names.index(name))
        if self.log is not None:
            self.log.append((time.perf_counter(), name))

    def during(self, name, function):
        """Return the function, which names its step while it runs."""

        def named(*arguments, **more):
            before = self.now
            self.begin(name)
            try:
                return function(*arguments, **more)
            finally:
                self.begin(before)

        return named


class Child:
    """``work`` in a process of its own and a group of its own, with what it prints in a file.

    It ends by the code that work exits with, 0, or 70 where work raised something.
    """

    def __init__(self, work, *, output=os.devnull):
        """Split it off."""
        sys.stdout.flush()
        sys.stderr.flush()
        self._all_ended, held_open = os.pipe()  # its end is seen once the whole group is gone
        self.id = os.fork()
        if not self.id:
            os.close(self._all_ended)
            os._exit(_worked(work, output))
        os.close(held_open)
        with suppress(OSError):  # the child may have done it already, or ended
            os.setpgid(self.id, self.id)

    def killed(self, steps, moment):
        """Kill the whole group at ``(number of the step, seconds into it)``; return the exit code."""
        number, seconds = moment
        while steps.begun <= number and not select([self._all_ended], [], [], LOOK_S)[0]:
            pass
        time.sleep(seconds)
        with suppress(ProcessLookupError):
            os.killpg(self.id, signal.SIGKILL)
        return self.ended()

    def ended(self):
        """Wait for all of the group; return the exit code, negative where a signal ended the process."""
        _, status = os.waitpid(self.id, 0)
        os.read(self._all_ended, 1)
        os.close(self._all_ended)
        return os.waitstatus_to_exitcode(status)


def _worked(work, output):
    """Do the work with its output going to a file; return the exit code."""
    code = RAISED
    gc.disable()  # a search would touch, and so copy, all that was loaded before
    try:
        os.setpgid(0, 0)
        handle = os.open(output, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, 0o666)
        os.dup2(handle, 1)
        os.dup2(handle, 2)
        sys.stdout, sys.stderr = (os.fdopen(os.dup(each), "w", encoding="utf-8") for each in (1, 2))
        work()
        code = 0
    except SystemExit as end:
        code = end.code or 0
    except BaseException:  # noqa: BLE001, whatever it is, the exit code and the output tell it
        traceback.print_exc()
    with suppress(OSError):
        sys.stdout.flush()
        sys.stderr.flush()
    return code


def done(work, *, output=os.devnull):
    """Do work in a process of its own to the end and return its exit code."""
    return Child(work, output=output).ended()


def kill_myself():
    """End this process and its group as a power cut would."""
    os.killpg(0, signal.SIGKILL)
