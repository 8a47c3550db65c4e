"""Pockets set on, or into, the cloth."""
