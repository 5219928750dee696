"""The page ``second_plate``: what is left of the plate, how sure that is, and how it is joined again."""
