"""The book: what is kept, what it means, and what is made of it."""
