"""What a question carries, read and checked: each complaint names its field."""
