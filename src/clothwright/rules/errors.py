"""What can go wrong with numbers. Each error says it in a plain sentence."""


class RuleError(ValueError):
    """A number that cannot be had. `str()` is the sentence for the user."""


class UnknownNumber(RuleError):
    """A name that no rule, measure or choice has."""

    def __init__(self, key: str) -> None:
        super().__init__(
            f"there is no number called {key}; "
            "`clothwright why ORDER` without a name lists them all"
        )
        self.key = key


class Missing(RuleError):
    """A measure that is neither taken nor can be estimated."""

    def __init__(self, key: str, wanted_for: tuple[str, ...]) -> None:
        self.key, self.wanted_for = key, wanted_for
        what = ", ".join(wanted_for[:4]) + (" and more" if len(wanted_for) > 4 else "")
        what = f"; it is needed for {what}" if what else ""
        super().__init__(f"{key} is missing{what}: take it and write it down")


class CyclicRule(RuleError):
    """Rules that need each other in a ring."""

    def __init__(self, ring: tuple[str, ...]) -> None:
        self.ring = ring
        if len(ring) == 1:
            said = f"the rule {ring[0]} needs itself: write it"
        else:
            said = f"the rules {', '.join(ring)} each need the other: write one of them"
        super().__init__(f"{said} with measures or a number only")


class OutOfBounds(RuleError):
    """A number outside what its rule allows."""

    def __init__(self, sentence: str, key: str) -> None:
        self.key = key
        super().__init__(sentence)
