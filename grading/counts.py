"""Counts in words."""


def how_many(count, word, several=""):
    """Write a count with its noun; ``several`` is the plural where it takes more than an s."""
    return f"{count} {word if count == 1 else several or f'{word}s'}"


def count_answers(count):
    """Write a count of answers."""
    return how_many(count, "answer")
