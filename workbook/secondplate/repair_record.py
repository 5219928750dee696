"""What a record of a repair holds, in the order of the job.

The form that the vehicle maker, the insurer or the law asks for comes first. This list is what shops do, no
more.
"""

from secondplate.ordered_steps import order_faults, ordered_steps

# In the order in which they can be written.
RECORD_ENTRIES = ordered_steps("repair_record")
RECORD_ENTRY_NAMES = tuple(entry.name for entry in RECORD_ENTRIES)


def record_gaps(done):
    """Return what is missing or out of order in a record.

    Parameters
    ----------
    done : sequence of str
        Names of the entries in the order in which they were written [-]

    Returns
    -------
    tuple of str
        One sentence for each fault, with its reason; empty where all is there [-]

    Raises
    ------
    ValueError
        If an entry is not in the list or stands twice.

    Notes
    -----
    Source: practice, record of a repair.

    Examples
    --------
    >>> record_gaps(RECORD_ENTRY_NAMES)
    ()
    >>> record_gaps([name for name in RECORD_ENTRY_NAMES if name != "trial on scrap"])
    ("trial on scrap is missing: settings that were not tried are a guess on somebody's car",)
    """
    return order_faults(done, RECORD_ENTRIES)
