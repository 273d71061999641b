# The screen Journal.
