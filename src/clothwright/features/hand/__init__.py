"""The dressmaker's own steps."""
