"""Skirts, peplums and what finishes a waist."""
