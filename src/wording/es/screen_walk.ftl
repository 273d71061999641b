# The screen Walk.
