// One piece of paper on the table: its outline, lines, edges and name. Only what is new is drawn.

import { draw } from './figures.js';

const look = (line) => `line ${line.is.replaceAll(' ', '-')}${line.solid ? ' solid' : ''}`;

const put = (el, name, value) => { if (el.getAttribute(name) !== value) el.setAttribute(name, value); };

const tell = (el, text) => { if (el.textContent !== text) el.textContent = text; };

/** The piece of an edge's id; a lining's code has a full stop of its own. */
export const pieceOf = (id) => id.slice(0, id.lastIndexOf('.'));

export class Piece {
  constructor(code) {
    this.code = code;
    this.data = null;
    this.edges = new Map(); // id → {data, hit, glow, i}
    this.under = null;
    this.shade = draw('path', { class: 'shade' });
    this.cutout = draw('path', { class: 'cutout' });
    this.lines = draw('g');
    this.rim = draw('g');
    this.label = draw('g', { class: 'label' }, draw('text', { class: 'name' }), draw('text', { class: 'count' }));
    this.dims = draw('g', { class: 'dims' });
    this.g = draw('g', { class: 'piece', 'data-code': code, role: 'group' }, this.shade, this.cutout, this.lines, this.rim, this.label, this.dims);
  }

  take(data) {
    this.data = data;
    for (const el of [this.shade, this.cutout]) put(el, 'd', data.cut);
    data.lines.forEach((line, i) => {
      const el = this.lines.children[i] ?? this.lines.appendChild(draw('path'));
      put(el, 'class', look(line));
      put(el, 'd', line.d);
    });
    while (this.lines.children.length > data.lines.length) this.lines.lastChild.remove();
    if (data.edges.map((e) => e.id).join() !== [...this.edges.keys()].join()) this.rimmed(data.edges);
    for (const e of data.edges) {
      const kept = this.edges.get(e.id);
      kept.data = e;
      for (const el of [kept.hit, kept.glow]) put(el, 'd', e.d);
    }
    tell(this.label.firstChild, data.name);
    tell(this.label.lastChild, `Cut ${data.cuts[0]?.[1] ?? ''}`);
  }

  /** Other edges than before: bands to touch, and what is inked. */
  rimmed(edges) {
    this.edges.clear();
    this.rim.replaceChildren();
    edges.forEach((e, i) => {
      const hit = draw('path', { class: 'hit', 'data-edge': e.id, role: 'button', tabindex: -1 }), glow = draw('path', { class: 'glow' });
      this.rim.append(hit, glow);
      this.edges.set(e.id, { data: e, hit, glow, i });
    });
  }

  /** The kept outline beneath a basted piece, or none. */
  beneath(d) {
    this.under?.remove();
    this.under = d ? draw('path', { class: 'beneath', d }) : null;
    if (this.under) this.cutout.after(this.under);
    this.g.classList.toggle('tried', Boolean(d));
  }
}
