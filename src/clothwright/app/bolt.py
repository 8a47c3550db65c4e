"""The cloth on the table of one slip: its lays, the search, and what a hand does.

A search goes on in a program of its own and tells each better lay; a hand may move a
piece at any time, which ends the search. What is kept lies in the book with the state
of the order that it was laid for. Nothing here knows a shape: `lay` does.
"""

import threading
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

from clothwright.app.lying import (
    LONGER,
    MOVES,
    QUICK,
    SECONDS,
    Leaves,
    Lying,
    Spoken,
    as_kept,
    as_tried,
    hold,
    kept_lay,
    leaf_name,
    sentence,
    to_keep,
)
from clothwright.order import Fold, OrderError, Pattern, pattern
from clothwright.units import Unit

if TYPE_CHECKING:
    from clothwright.lay import Lay
    from clothwright.lay.byhand import Board, Laid, Places
    from clothwright.lay.seeking import Found, Seeking


@dataclass
class Bolt:
    """The cloths of a slip."""

    leaves: Leaves
    news: Callable[[], None] = lambda: None
    """Called, from any thread, when something lies otherwise."""

    at: str = ""
    """The cloth that is looked at; none when nobody stands at it."""

    lying: dict[str, Lying] = field(default_factory=dict)
    seeking: "Seeking | None" = None
    sought: str = ""
    """The cloth that is being laid."""

    searches: int = 0
    bettered: bool = False
    """This search has found something to put in place of what lay there."""

    share: float = 0.0
    dragging: bool = False
    refused: dict[str, str] = field(default_factory=dict)
    """Why a cloth cannot be laid."""

    waiting: list[str] = field(default_factory=list)
    spoken: Spoken | None = None
    finished: Pattern | None = None
    told: dict[Unit, dict[str, Any]] = field(default_factory=dict)
    lock: threading.RLock = field(default_factory=threading.RLock)

    # -- what a page asks for --------------------------------------------------------
    def hand(self, op: Mapping[str, Any], spoken: Spoken) -> None:
        """Do what a hand does. Raises OrderError with a sentence."""
        from clothwright.lay import LayError

        done = _HANDS.get(str(op.get("hand")))
        if done is None:
            raise OrderError("the cloth cannot be handled so")
        with self.lock:
            try:
                self.take_up(spoken)
                done(self, op)
                if op["hand"] in MOVES and not op.get("live") and self.at in self.lying:
                    hold(self.leaves, self.at, self.lying[self.at], spoken)
            except LayError as e:
                raise OrderError(sentence(e)) from e
            finally:
                self._changed()

    def take_up(self, spoken: Spoken) -> None:
        """Take up what the slip says; lays are looked at anew when it changed."""
        from clothwright.lay import LayError

        with self.lock:
            old, self.spoken = self.spoken, spoken
            if old is not None and old.draft is spoken.draft:
                return
            self.finished = None
            self._end()
            self.waiting.clear()
            self.refused.clear()
            lying, self.lying = self.lying, {}
            for key, was in lying.items():
                fold = spoken.cloths[key].fold if key in spoken.cloths else None
                if fold not in (None, was.board.fold):
                    continue
                try:
                    board = self._board(key, was.board.fold, was.board.gap)
                    laid = board.laid(was.laid.lay.placed, saving=was.laid.lay.saving)
                except LayError:
                    continue
                kept = kept_lay(self.leaves, key)
                as_kept = kept.placed if kept else None
                self.lying[key] = Lying(board, laid, as_kept)
            if self.at:
                self._open(self.at)
                if self.at in self.lying and self.lying[self.at].laid.faults:
                    self._seek(self.at, SECONDS)
            self._changed()

    def amount(self, key: str) -> "Laid | None":
        """The lay that says how much of a cloth is bought, if there is one."""
        found = self.lying.get(key)
        return found.laid if found else None

    def take_all_kept(self) -> "list[Lay]":
        """The lays that are kept with the order as it stands; each is laid, unless
        another lies on the table."""
        from clothwright.lay import cloths_of

        with self.lock:
            out = []
            for key in cloths_of(self._pattern()):
                lying = self.lying.get(key)
                if lying is None and self._take_kept(key):
                    lying = self.lying[key]
                if lying is not None and lying.kept is not None:
                    kept = lying.board.laid(lying.kept, saving=lying.laid.lay.saving)
                    out.append(kept.lay)
            return out

    # -- hands -----------------------------------------------------------------------
    def _look(self, op: Mapping[str, Any]) -> None:
        self.at = str(op.get("of", "shell"))
        self._open(self.at)

    def _leave(self, op: Mapping[str, Any]) -> None:
        self.at = ""

    def _open(self, key: str) -> None:
        if key in self.lying or (self.seeking and self.sought == key):
            return
        kept = self._take_kept(key)
        if not self._take_tried(key) and not kept:
            self._seek(key, SECONDS)

    def _all(self, op: Mapping[str, Any]) -> None:
        """Lay, for a moment each, what has not been laid: its length is wanted."""
        from clothwright.lay import cloths_of

        for key in cloths_of(self._pattern()):
            cloth = self._spoken().cloths.get(key)
            known = cloth is not None and cloth.width is not None
            known = known and key not in (*self.waiting, self.sought, *self.lying)
            if known and not self._take_kept(key):
                self.waiting.append(key)
        self._next()

    def _find(self, op: Mapping[str, Any]) -> None:
        self._seek(self._at(), LONGER if op.get("longer") else SECONDS)

    def _stop(self, op: Mapping[str, Any]) -> None:
        if self.seeking is not None:
            self.seeking.stop()

    def _move(self, op: Mapping[str, Any]) -> None:
        lying, i = self._piece(op)
        placed = lying.laid.lay.placed
        x, y = lying.board.middle(placed, i)
        if "at" in op:
            x, y = (float(v) for v in op["at"])
        else:
            dx, dy = (float(v) for v in op["by"])
            x, y = x + dx, y + dy
        if not (-500 <= x <= 5000 and -500 <= y <= 1000):
            raise OrderError("that is too far from the cloth")
        self._lie(lying, lying.board.moved(placed, i, x, y), live=bool(op.get("live")))

    def _turn(self, op: Mapping[str, Any]) -> None:
        lying, i = self._piece(op)
        self._lie(lying, lying.board.turned(lying.laid.lay.placed, i))

    def _swap(self, op: Mapping[str, Any]) -> None:
        lying, i = self._piece(op)
        if not lying.board.has_hands(i):
            raise OrderError("this piece has to lie as it does; only two layers swap")
        self._lie(lying, lying.board.swapped(lying.laid.lay.placed, i))

    def _back(self, op: Mapping[str, Any]) -> None:
        lying = self._lying()
        if not lying.past:
            raise OrderError("no piece was moved")
        self._end()
        was, others = lying.past.pop(), lying.laid.lay.others
        if (was.fold, was.gap) != (lying.board.fold, lying.board.gap):
            lying.board = self._board(self.at, was.fold, was.gap)
        lying.laid = lying.board.laid(was.placed, saving=was.saving, others=others)

    def _keep(self, op: Mapping[str, Any]) -> None:
        lying = self._lying()
        if self.seeking is not None and self.sought == self.at:
            raise OrderError("a shorter lay is looked for; stop it first, or wait")
        text = to_keep(lying, self._spoken())
        self.leaves.put_leaf(leaf_name(self.at), text, of_state=True)
        lying.kept = lying.laid.lay.placed

    # -- inside ----------------------------------------------------------------------
    def _spoken(self) -> Spoken:
        if self.spoken is None:
            raise OrderError("nothing lies on the table yet")
        return self.spoken

    def _pattern(self) -> Pattern:
        if self.finished is None:
            self.finished = pattern(self._spoken().draft)
        return self.finished

    def _board(self, key: str, fold: Fold, gap: float | None = None) -> "Board":
        from clothwright.lay.byhand import Board
        from clothwright.lay.plan import GAP

        return Board(self._pattern(), key, fold, GAP if gap is None else gap)

    def _at(self) -> str:
        if not self.at:
            raise OrderError("choose a cloth first")
        return self.at

    def _lying(self) -> Lying:
        found = self.lying.get(self._at())
        if found is None:
            raise OrderError("nothing is laid yet; wait for the first lay")
        return found

    def _piece(self, op: Mapping[str, Any]) -> tuple[Lying, int]:
        lying, i = self._lying(), op.get("piece")
        if not isinstance(i, int) or not 0 <= i < len(lying.laid.lay.placed):
            raise OrderError("there is no such piece on this cloth")
        return lying, i

    def _lie(self, lying: Lying, placed: "Places", *, live: bool = False) -> None:
        """Let the pieces lie so; a drag is one move, however many places it passes."""
        if self.sought == self.at:
            self._end()
        laid = lying.board.laid(
            placed, saving=lying.laid.lay.saving, others=lying.laid.lay.others
        )
        if not self.dragging:
            lying.remember()
        self.dragging = live
        lying.laid = laid

    def _take_kept(self, key: str) -> bool:
        """Lay a cloth as it was kept; False when it was not, or cannot lie so."""
        return self._take(
            key, as_kept(self.leaves, key, self._pattern(), self._spoken())
        )

    def _take_tried(self, key: str) -> bool:
        """Lay a cloth as a hand has left it; False when none has, or it cannot lie
        so."""
        was = self.lying.get(key)
        spoken = self._spoken()
        return self._take(key, as_tried(self.leaves, key, self._pattern(), spoken, was))

    def _take(self, key: str, found: Lying | None) -> bool:
        if found is not None:
            self.lying[key] = found
        return found is not None

    def _seek(self, key: str, seconds: float) -> None:
        from clothwright.lay.seeking import Seeking

        self._end()
        spoken = self._spoken()
        cloth = spoken.cloths.get(key)
        if cloth is None or cloth.width is None:
            self.refused[key] = (
                f"The width of the {key} is not known; measure it between its outer "
                "edges at the narrowest place, and write it in the sentence."
            )
            return
        self.refused.pop(key, None)
        self.sought, self.share = key, 0.0
        self.searches += 1
        self.bettered = key not in self.lying
        mine = self.searches
        self.seeking = Seeking(
            spoken.text,
            "the slip",
            spoken.house,
            key,
            cloth.fold,
            seconds,
            found=lambda found: self._found(mine, key, found),
            refused=lambda why: self._refuse(mine, key, why),
        )

    def _found(self, search: int, key: str, found: "Found") -> None:
        from clothwright.lay import LayError

        with self.lock:
            if self.searches != search or self.sought != key:
                return
            self.share = found.share
            try:
                self._better(key, found)
            except LayError as e:
                self.refused[key] = sentence(e)
            if found.done:
                self._searched()
            self._changed()
        self.news()

    def _better(self, key: str, found: "Found") -> None:
        """Lay the pieces as a search has found them, where that is better."""
        was = self.lying.get(key)
        board = was.board if was else None
        if board is None or board.fold is not found.fold:
            board = self._board(key, found.fold)
        same = was is not None and was.laid.lay.placed == found.placed
        cloth = found.length * board.spread.lengths
        if was is not None and was.beats(cloth) and not (found.done and same):
            return
        laid = board.laid(found.placed, saving=found.saving, others=found.others)
        past = was.past if was else []
        if was is not None and not self.bettered:
            was.remember()
            self.bettered = True
        self.lying[key] = Lying(board, laid, was.kept if was else None, past)

    def _refuse(self, search: int, key: str, why: str) -> None:
        with self.lock:
            if self.searches != search or self.sought != key:
                return
            self.refused[key] = sentence(why)
            self._searched()
            self._changed()
        self.news()

    def _searched(self) -> None:
        self.seeking, self.sought = None, ""
        self._next()

    def _next(self) -> None:
        if self.seeking is None and self.waiting:
            self._seek(self.waiting.pop(0), QUICK)

    def _end(self) -> None:
        if self.seeking is not None:
            self.seeking.end()
        self.seeking, self.sought = None, ""

    def close(self) -> None:
        """End what goes on; the slip is put away."""
        with self.lock:
            self._end()
            self.waiting.clear()

    def _changed(self) -> None:
        self.told = {}


_HANDS: Mapping[str, Callable[[Bolt, Mapping[str, Any]], None]] = {
    "look": Bolt._look,
    "leave": Bolt._leave,
    "all": Bolt._all,
    "find": Bolt._find,
    "stop": Bolt._stop,
    "move": Bolt._move,
    "turn": Bolt._turn,
    "swap": Bolt._swap,
    "back": Bolt._back,
    "keep": Bolt._keep,
}
