"""What a finished piece shows: allowances, notches, grain, labels, as drawn things."""
