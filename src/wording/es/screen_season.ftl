# The screen Season.
