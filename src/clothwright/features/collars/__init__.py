"""Collars."""
