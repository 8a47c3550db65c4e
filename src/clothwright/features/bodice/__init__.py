"""The bodice: armholes, shoulders, darts, panel lines, yokes and the waist."""
