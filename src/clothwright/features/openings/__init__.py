"""Openings and what fastens them."""
