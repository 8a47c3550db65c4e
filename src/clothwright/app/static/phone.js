// On a phone the table frames the piece in hand, and the slip is drawn up and down over it.

export const narrow = () => matchMedia('(max-width: 45em)').matches;

const RESTS = ['head', 'half', 'full'];
const SAID = { head: 'The slip: its head only', half: 'The slip: half drawn', full: 'The slip: all of it' };
const FAR = 24; // px of a drag that are meant

export class Phone {
  constructor(room) {
    this.room = room;
    this.handle = document.querySelector('#handle');
    this.name = document.querySelector('#framed');
    this.rest('half');
    this.hands();
    for (const b of document.querySelectorAll('#turn [data-by]')) b.addEventListener('click', () => this.turn(+b.dataset.by));
    this.look = document.querySelector('#to-look-at');
    this.look.addEventListener('click', () => room.paper.marks.next());
    this.name.addEventListener('click', () => room.paper.frame(room.paper.framed ? null : this.last));
  }

  /** The slip rests at its head, half drawn, or full. */
  rest(to) {
    document.body.dataset.rest = to;
    this.handle.setAttribute('aria-label', SAID[to]);
  }

  draw(by) { this.rest(RESTS[Math.max(0, Math.min(2, RESTS.indexOf(document.body.dataset.rest) + by))]); }

  hands() {
    const { handle } = this;
    let from = null;
    handle.addEventListener('pointerdown', (e) => { from = e.clientY; handle.setPointerCapture(e.pointerId); });
    handle.addEventListener('pointerup', (e) => {
      const by = from === null ? 0 : e.clientY - from;
      from = null;
      this.dragged = Math.abs(by) > FAR;
      if (this.dragged) this.draw(by < 0 ? 1 : -1);
    });
    handle.addEventListener('click', () => {
      if (!this.dragged) this.rest(document.body.dataset.rest === 'half' ? 'head' : 'half');
      this.dragged = false;
    });
    handle.addEventListener('keydown', (e) => {
      const by = { ArrowUp: 1, ArrowDown: -1 }[e.key];
      if (by) { e.preventDefault(); this.draw(by); }
    });
  }

  /** The next piece, as they lie. */
  turn(by) {
    const { paper } = this.room, codes = [...paper.pieces.keys()];
    const i = codes.indexOf(paper.framed ?? this.last);
    paper.frame(codes[(i + by + codes.length) % codes.length]);
  }

  /** How many places the checks have marked, for what lies out of sight. */
  marked(n) {
    this.look.hidden = !n;
    this.look.textContent = `${n} to look at`;
  }

  /** The paper frames a piece, or all of it. */
  framed(code) {
    const { paper } = this.room, all = paper.whole.on ? 'The whole body' : 'All pieces';
    if (code) this.last = code;
    this.name.textContent = code ? paper.pieces.get(code).data.name : all;
    this.name.setAttribute('aria-label', code ? `${this.name.textContent}. Show ${all[0].toLowerCase()}${all.slice(1)}` : `${all}. Show one`);
  }
}
