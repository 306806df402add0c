"""Evenkelvin: every light on the set, one white."""

__version__ = "0.1.0"
