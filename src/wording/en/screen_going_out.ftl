# The screen Going out.
