"""What all tests share: random cases that are the same in every run.

``--hypothesis-profile explore`` draws new ones, to look for what no case has shown yet.
"""

from hypothesis import settings

settings.register_profile("same_cases", derandomize=True)
settings.register_profile("explore", derandomize=False)
settings.load_profile("same_cases")
