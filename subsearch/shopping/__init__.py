"""Purchases: choices and offers in, the shopping list and its files out."""
