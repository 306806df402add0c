"""What stands in for a module that the start imports by name only.

The first use of anything in it reads the module itself, which lies beside it, into its place.
"""


def __getattr__(name):
    if name.startswith("__") and name != "__all__":
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    import marshal

    place = globals()
    if place.pop("__getattr__", None):
        code = __loader__.get_data(__file__.removesuffix(".pyc") + "_later.pyc")
        exec(marshal.loads(code[16:]), place)
    try:
        return place[name]
    except KeyError:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}") from None
