"""From a draft to the finished pattern: what is cut, how often, from which cloth."""
