"""Settings of the invented inputs: no time limit for one example, since other work may slow the machine."""

from hypothesis import settings

settings.register_profile("library", deadline=None)
settings.load_profile("library")
