"""Invented orders and measures, for a first try and for the demo."""
