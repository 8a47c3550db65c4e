"""Sleeves, their fullness and their ends."""
