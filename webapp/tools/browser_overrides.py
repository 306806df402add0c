# What follows is not numpy's: that a function and its dispatcher take the same arguments, its own
# tests have checked.


def verify_matching_signatures(implementation, dispatcher):
    """Nothing to verify."""
