"""What all tests share: random cases that are the same in every run, and tables printed when all is done.

``--hypothesis-profile explore`` draws new ones, to look for what no case has shown yet.
A test gives a table by ``record_property("table of ...", [heads, *rows])``; rows of one name are added up,
whatever test they are of and in whatever process they were counted.
"""

from hypothesis import settings

settings.register_profile("same_cases", derandomize=True)
settings.register_profile("explore", derandomize=False)
settings.load_profile("same_cases")


def pytest_terminal_summary(terminalreporter):
    """Print every table that the tests gave."""
    tables = {}
    for reports in terminalreporter.stats.values():
        for report in reports:
            if getattr(report, "when", "") == "call":
                for title, table in report.user_properties:
                    if title.startswith("table of "):
                        _add(tables.setdefault(title, {}), table)
    for title, rows in sorted(tables.items()):
        terminalreporter.section(title)
        for line in _lines(rows):
            terminalreporter.write_line(line)


def _add(rows, table):
    """Add up the numbers of rows that have the same name."""
    for name, *cells in table:
        before = rows.get(name)
        both = (
            cells if before is None else [_sum(one, other) for one, other in zip(before, cells, strict=True)]
        )
        rows[name] = both


def _sum(one, other):
    """Add two numbers; heads stay as they are."""
    return one if isinstance(one, str) else one + other


def _lines(rows):
    """Give the lines of a table, its columns as wide as they need."""
    heads, *_ = rows.values()
    sums = [sum(cells[place] for cells in list(rows.values())[1:]) for place in range(len(heads))]
    shown = {
        name: [str(each) if isinstance(each, str) else f"{each:,}" for each in cells]
        for name, cells in rows.items()
    }
    shown["together"] = [f"{each:,}" for each in sums]
    first = max(map(len, shown))
    widths = [max(map(len, column)) for column in zip(*shown.values(), strict=True)]
    for name, cells in shown.items():
        yield "  ".join(
            [name.ljust(first), *(cell.rjust(width) for cell, width in zip(cells, widths, strict=True))]
        )
