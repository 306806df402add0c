# What follows is not numpy's: what it knows of the machine's numbers is worked out when somebody
# asks, not at each start.

_register_at_once = _register_known_types  # noqa: F821
_machar = _get_machar  # noqa: F821


def _register_known_types():
    """Nothing yet."""


def _get_machar(ftype):
    if not _KNOWN_TYPES:  # noqa: F821
        _register_at_once()
    return _machar(ftype)
