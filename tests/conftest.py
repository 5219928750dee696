"""What all tests share: random cases that are the same in every run, and tables printed when all is done.

``--hypothesis-profile explore`` draws new ones, to look for what no case has shown yet.
A test gives a table by ``record_property("table", [title, {row: count}])``, or with several counts in a row
and the heads of their columns as a third item. Equal rows are added up, whatever process counted them.
The hook stands here because the process that prints loads no ``conftest`` further down.
"""

from hypothesis import settings

settings.register_profile("same_cases", derandomize=True)
settings.register_profile("explore", derandomize=False)
settings.load_profile("same_cases")


def pytest_terminal_summary(terminalreporter):
    """Print every table that the tests gave."""
    tables = {}
    for report in (each for kind in terminalreporter.stats.values() for each in kind):
        for name, value in report.user_properties if getattr(report, "when", "") == "call" else ():
            if name == "table":
                title, rows, *heads = value
                _add(tables.setdefault(title, {"": heads[0] if heads else ["times"]}), rows)
    for title, rows in tables.items():
        terminalreporter.section(title)
        for line in _lines(rows):
            terminalreporter.line(line)


def _add(table, rows):
    """Add counts to the rows of a table that have the same name."""
    for name, counts in rows.items():
        counts = counts if isinstance(counts, list) else [counts]
        before = table.get(name, [0] * len(counts))
        table[name] = [one + other for one, other in zip(before, counts, strict=True)]


def _lines(table):
    """Give the lines of a table, its sums last, its columns as wide as they need."""
    heads, *rows = table.values()
    table = {**table, "together": [sum(column) for column in zip(*rows, strict=True)]}
    shown = [
        [name, *(f"{each:,}" if isinstance(each, int) else each for each in row)]
        for name, row in table.items()
    ]
    widths = [max(map(len, column)) for column in zip(*shown, strict=True)]
    for name, *cells in shown:
        yield "  ".join([name.ljust(widths[0]), *map(str.rjust, cells, widths[1:])])
