"""Blocks: the plain drafts from which styles are cut. One file a block."""
