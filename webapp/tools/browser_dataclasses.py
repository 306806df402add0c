# What follows is not Python's: a method is compiled when it is first called. Most of a class's
# six never are, and to compile them all is a third of the kernel's import.

_compiled = _create_fn  # noqa: F821


def _create_fn(name, *args, **more):
    method = None

    def later(self, *values, **named):
        nonlocal method
        if method is None:
            method = _compiled(name, *args, **more)
            method.__qualname__ = later.__qualname__
            for place in type(self).__mro__:
                if place.__dict__.get(name) is later:
                    setattr(place, name, method)
        return method(self, *values, **named)

    later.__name__ = name
    return later
