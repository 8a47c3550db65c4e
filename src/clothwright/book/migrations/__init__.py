"""How older books are brought up to date: one step a file in `versions`.

A step that was published is never changed. No step may rebuild a table that others
refer to: with foreign keys on, dropping the old table would empty the others.
"""
