# The screen Trays.
