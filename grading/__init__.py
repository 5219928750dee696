"""Exercises, marking and records of the Second Plate workbook.

Answers are read as data and compared with values that ``secondplate`` computes; no learner's code is run.
"""
