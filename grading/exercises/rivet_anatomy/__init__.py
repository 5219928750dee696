"""The page ``rivet_anatomy``: its exercises, grouped by idea in one module each."""
