"""A usual stud on a true machine, for tests of the virtual bench."""

from secondplate import bench

CHART = bench.chart_settings(stud_diameter_mm=6)
# A machine that does what it shows, on a usual rivet.
TRUE_JOB = bench.WeldJob(
    head_diameter_mm=7.75, web_mm=1.1, rivet_hold_n=2000.0, current_share=1.0, voltage_v=30.0
)


def plain_weld(settings, job=TRUE_JOB):
    """Weld without scatter."""
    return bench.weld(settings, job, seed=None, number=1)
