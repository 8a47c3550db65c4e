"""Trousers."""
