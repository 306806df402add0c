"""How well a light shows colours: one published metric a module."""
