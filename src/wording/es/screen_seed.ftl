# The screen Seed.
