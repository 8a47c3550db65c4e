"""Facings and linings, drafted on the trued halves."""
