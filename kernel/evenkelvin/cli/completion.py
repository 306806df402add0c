"""Completion of the commands in a shell, made by shtab."""

from __future__ import annotations

import argparse
from importlib import import_module

from evenkelvin.cli.outcome import Outcome, Read, told
from evenkelvin.problem import Problem

SHELLS = ("bash", "zsh", "tcsh")


def completion(options: argparse.Namespace, read: Read) -> Outcome:
    """Return the script that the shell is to read."""
    try:
        shtab = import_module("shtab")
    except ImportError:
        raise Problem(
            "",
            told("This needs the package shtab: pip install 'evenkelvin[completion]'."),
        ) from None
    return Outcome(shtab.complete(options.parser, options.shell))
