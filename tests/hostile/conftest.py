"""What the hostile tests came to, as a table at the end of the run."""

from collections import Counter, defaultdict


def pytest_terminal_summary(terminalreporter):
    """Print every ``[title, {what: how many}]`` that a test recorded as its property "table", added up."""
    table = defaultdict(Counter)
    reports = [each for kind in terminalreporter.stats.values() for each in kind]
    for report in reports:
        for name, value in report.user_properties if getattr(report, "when", "") == "call" else ():
            if name == "table":
                table[value[0]].update(value[1])
    if table:
        terminalreporter.section("hostile and broken input")
    for title, counts in table.items():
        terminalreporter.line(f"{title} ({counts.total()})")
        for what, count in counts.most_common():
            terminalreporter.line(f"  {count:>7}  {what}")
