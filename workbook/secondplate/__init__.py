"""Engineering library of the Second Plate workbook: pure functions on numbers and arrays.

Nothing here reads the keyboard, draws, or knows about exercises.
The models are for teaching; the vehicle maker's current procedure comes first.
"""
