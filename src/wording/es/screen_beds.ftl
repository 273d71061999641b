# The screen Beds.
