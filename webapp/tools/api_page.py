"""dist/api.html: every question to the kernel, from the docstrings, readable offline."""

from __future__ import annotations

import ast
import re
from html import escape
from pathlib import Path

KERNEL = Path(__file__).resolve().parents[2] / "kernel" / "evenkelvin"
POLICY = "default-src 'none'; style-src 'self'; base-uri 'none'; form-action 'none'"
#: A reference such as :mod:`evenkelvin.requests.meant`, and plain code in double backquotes.
_REFERENCE = re.compile(r":\w+:`~?([^`]+)`|``([^`]+)``")


def asks() -> dict[str, str]:
    """Each question and the module that answers it, as ``desk.ASKS`` has them."""
    for node in ast.parse((KERNEL / "desk.py").read_text("utf-8")).body:
        if isinstance(node, ast.AnnAssign) and ast.unparse(node.target) == "ASKS" and node.value:
            found: dict[str, str] = ast.literal_eval(node.value)
            return found
    raise LookupError("desk.py has no ASKS")


def docstring(module: str, function: str = "") -> str:
    """The docstring of a module of the kernel, or of one of its functions."""
    tree = ast.parse(KERNEL.joinpath(*module.split(".")).with_suffix(".py").read_text("utf-8"))
    if not function:
        return ast.get_docstring(tree) or ""
    for node in tree.body:
        if isinstance(node, ast.FunctionDef) and node.name == function:
            return ast.get_docstring(node) or ""
    raise LookupError(f"{module} has no {function}")


def page() -> str:
    """The whole page: how to ask, what questions carry in common, then each question."""
    readers = sorted(
        path.stem for path in (KERNEL / "requests").glob("*.py") if path.stem != "__init__"
    )
    parts = [
        _part("ask", "ask", docstring("asking"), docstring("asking", "ask")),
        _part("answer", "desk.answer", docstring("desk"), docstring("desk", "answer")),
        "<h2>Questions</h2>",
        *(
            _part(
                ask, f"“{ask}”", docstring(f"asks.{module}"), docstring(f"asks.{module}", "reply")
            )
            for ask, module in asks().items()
        ),
        "<h2>What questions carry in common</h2>",
        *(_part(f"in-{name}", name, docstring(f"requests.{name}")) for name in readers),
    ]
    links = " · ".join(f'<a href="#{ask}">{ask}</a>' for ask in asks())
    return (
        '<!doctype html>\n<html lang="en" data-theme="dark">\n<head>\n<meta charset="utf-8">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f'<meta http-equiv="Content-Security-Policy" content="{POLICY}">\n'
        '<meta name="referrer" content="no-referrer">\n'
        "<title>Evenkelvin: the kernel in Python</title>\n"
        '<link rel="stylesheet" href="./styles.css">\n</head>\n<body>\n<main class="api">\n'
        '<p><a href="./">Evenkelvin</a></p>\n<h1>The kernel in Python</h1>\n'
        f"<nav>{links}</nav>\n" + "\n".join(parts) + "\n</main>\n</body>\n</html>\n"
    )


def _part(anchor: str, title: str, *texts: str) -> str:
    told = "".join(f"<pre>{_marked(text)}</pre>" for text in texts if text)
    return f'<section id="{anchor}"><h3>{escape(title)}</h3>{told}</section>'


def _marked(text: str) -> str:
    return _REFERENCE.sub(lambda found: f"<code>{found[1] or found[2]}</code>", escape(text))
