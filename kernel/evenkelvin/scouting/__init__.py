"""What a location asks: gel for its windows, an order, where the sun will be."""
