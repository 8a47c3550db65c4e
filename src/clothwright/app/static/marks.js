// What the checks say, at its place: a running stitch along the edge, and a ticket tied to it.

import { draw, figured, make } from './figures.js';
import { narrow } from './phone.js';
import { pieceOf } from './piece.js';

const HEAD = { true: 'Not to be cut so', false: 'Look again' };
const SIGN = { true: '×', false: '?' };

export class Marks {
  constructor(paper) {
    this.paper = paper;
    this.layer = draw('g', { class: 'marks' });
    this.box = document.querySelector('#remark');
    this.found = [];
    this.places = []; // {key, ticket, at, grave, said: [finding]}
    this.kept = null; // the place whose slip is held open
  }

  /** One ticket a place, with all that is said there. */
  lay() {
    const { paper } = this, held = this.kept?.key, focus = document.activeElement?.dataset?.ticket;
    const by = new Map();
    for (const f of this.found) {
      if (!f.piece || !paper.places[f.piece]) continue;
      const key = `${f.piece} ${f.at}`;
      if (!by.has(key)) by.set(key, { key, said: [], at: f.at.map((v, i) => v + paper.places[f.piece][i]) });
      by.get(key).said.push(f);
    }
    this.places = [...by.values()];
    for (const p of this.places) p.grave = p.said.some((f) => f.grave);
    this.layer.replaceChildren();
    for (const p of this.places) {
      for (const id of new Set(p.said.flatMap((f) => f.edges))) this.stitch(id);
    }
    for (const p of this.places) {
      p.ticket = this.ticket(p);
      this.layer.append(p.ticket);
    }
    this.settle();
    if (focus) this.layer.querySelector(`[data-ticket="${CSS.escape(focus)}"]`)?.focus();
    const still = this.places.find((p) => p.key === held);
    if (held && !still) this.close(); else if (still) this.tell(still, true);
  }

  /** Whether one of some pieces carries a mark. */
  on(codes) { return this.found.some((f) => codes.has(f.piece) || f.edges.some((id) => codes.has(pieceOf(id)))); }

  stitch(id) {
    const edge = this.paper.edge(id);
    if (!edge) return;
    const at = this.paper.places[edge.hit.closest('.piece').dataset.code];
    this.layer.append(draw('path', { class: 'against', d: edge.data.d, transform: `translate(${at[0]} ${at[1]})` }));
  }

  ticket(p) {
    const { grave } = p;
    const says = p.said.map((f) => `${HEAD[f.grave]}: ${f.say}`).join(' ');
    const g = draw('g', { class: `ticket${grave ? ' grave' : ''}`, 'data-ticket': p.key, role: 'button', tabindex: 0, 'aria-expanded': 'false', 'aria-label': says, transform: `translate(${p.at[0]} ${p.at[1]})` },
      draw('g', {}, draw('circle', { class: 'grip', cy: 14, r: 16 }), draw('path', { class: 'string', d: 'M0 0V8' }),
        draw('path', { class: 'tag', d: 'M-5 7H5L9 11V27H-9V11Z' }), draw('text', { y: 22.5 }, SIGN[grave])));
    for (const on of ['pointerenter', 'focus']) g.addEventListener(on, () => { if (!this.kept && !this.quiet) this.tell(p); });
    for (const off of ['pointerleave', 'blur']) g.addEventListener(off, () => { if (!this.kept) this.box.hidden = true; });
    return g;
  }

  /** Tickets keep their size, and the slip stays beside its ticket, at any enlargement. */
  settle() {
    for (const { ticket } of this.places) ticket?.firstChild.setAttribute('transform', `scale(${this.paper.px})`);
    if (!this.box.hidden && this.told) this.beside(this.told);
  }

  open(ticket, go = false) {
    const p = this.places.find((q) => q.ticket === ticket);
    if (!p) return;
    if (this.kept === p && !go) { this.close(); return; }
    this.paper.frame(p.said[0].piece);
    this.tell(p, true);
    this.paper.room.say(p.said.map((f) => f.say).join(' '));
    if (go) this.box.focus();
  }

  /** The place where a finding stands, if it stands on the paper. */
  at(f) { return this.places.find((p) => p.said.includes(f)); }

  /** Open the next place, the grave ones first. */
  next() {
    const all = [...this.places].sort((a, b) => b.grave - a.grave);
    const p = all[(all.indexOf(this.kept) + 1) % all.length];
    if (p) this.open(p.ticket, true);
  }

  tell(p, kept = false) {
    this.told = p;
    if (kept) this.kept = p;
    for (const q of this.places) q.ticket.setAttribute('aria-expanded', String(kept && q === p));
    const { room } = this.paper, act = (words, go) => make('button', { type: 'button', class: 'w ink', onclick: () => { this.close(); go(); } }, words);
    const word = p.said.find((f) => f.word)?.word, edge = p.said.find((f) => f.edges.length)?.edges[0];
    const head = HEAD[p.grave];
    this.box.setAttribute('aria-label', head);
    const say = p.said.map((f) => { const el = make('p'); el.append(figured(f.say)); return el; });
    this.box.replaceChildren(make('h3', {}, head), ...say);
    if (kept) {
      this.box.append(make('div', { class: 'do' }, word && act('Change it', () => room.slip.show(word)),
        edge && act('Take the edge in hand', () => this.paper.select(edge)), act('Put it away', () => this.back(p.ticket))));
    }
    this.box.hidden = false;
    this.beside(p);
  }

  beside(p) {
    const table = this.box.parentElement.getBoundingClientRect(), t = p.ticket.getBoundingClientRect(), b = this.box.getBoundingClientRect();
    if (narrow()) { // above or below, whichever leaves the ticket in sight
      this.box.style.left = '6px';
      this.box.style.top = `${t.top - table.top > table.height / 2 ? 6 : table.height - b.height - 22}px`;
      return;
    }
    const right = t.right + 6 + b.width < table.right - 6;
    const x = right ? t.right + 6 : t.left - 6 - b.width;
    const y = t.top + t.height / 2 - 24;
    this.box.style.left = `${Math.max(6, Math.min(table.width - b.width - 6, x - table.left))}px`;
    this.box.style.top = `${Math.max(6, Math.min(table.height - b.height - 40, y - table.top))}px`;
  }

  close(focus = false) {
    const was = this.kept, inside = this.box.contains(document.activeElement);
    this.kept = this.told = null;
    this.box.hidden = true;
    for (const q of this.places) q.ticket?.setAttribute('aria-expanded', 'false');
    if (focus && was && inside) this.back(was.ticket);
  }

  /** The focus goes back to a ticket, whose slip stays away. */
  back(ticket) {
    this.quiet = true;
    ticket.focus();
    this.quiet = false;
  }
}
