"""Necks of front and back, wraps, cowls and halters."""
