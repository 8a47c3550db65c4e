"""Tops and dresses of knitted cloth."""
