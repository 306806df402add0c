"""From illuminance to a stop, and what the shutter does with light that pulses."""
