// The cloth on the table: the lay to scale, pieces that a hand moves, the checker's answer.

import { breadth, draw, figured, make, say } from './figures.js';
import { narrow } from './phone.js';
import { ClothNote, called } from './clothnote.js';

const WIDE = { left: 26, top: 34, right: 80, bottom: 24 }, SMALL = { left: 8, top: 32, right: 26, bottom: 12 }; // px round the cloth
const EVERY = { in: [2.54, 6], cm: [1, 10] }; // a mark of the ruler, and marks to a number

export class Cloth {
  constructor(el, room) {
    Object.assign(this, { el, room, data: null, held: null, piece: null, want: 'shell' });
    this.figure = make('div', { class: 'figure' });
    this.svg = draw('svg', { role: 'group', 'aria-label': 'The cloth with its pieces. Tab goes from piece to piece; arrows move it, T turns it end for end, S swaps its hand.' });
    this.said = make('div', { class: 'remark', hidden: true });
    this.figure.append(this.svg, this.said);
    this.note = new ClothNote(this);
    this.el.append(make('h2', { class: 'sr' }, 'The cloth'), this.figure, this.note.el);
    this.marks();
    new ResizeObserver(() => this.paint()).observe(this.figure);
  }

  open(key = this.want) {
    this.want = key;
    this.stands = true;
    this.hand('look', { of: key });
  }

  leave() {
    if (this.stands) this.hand('leave', { of: this.want });
    this.stands = false;
  }

  /** Something that a hand does; the workroom answers with the cloth as it lies. */
  hand(hand, more = {}) { return this.room.change({ do: 'lay', hand, of: this.data?.cloth ?? this.want, ...more }); }

  first() { return this.nodes?.[this.piece ?? 0]?.g ?? this.note.el; }

  update(data) {
    const before = this.data;
    this.data = data;
    document.querySelector('#unpick').disabled = !this.room.canUnpick && !data?.moves;
    if (!data && this.stands) this.open(); // the workroom was opened anew
    if (!data) return;
    if (data.cloth !== before?.cloth) this.piece = null;
    if (this.stands) this.paint();
    this.tell(before);
  }

  /** What changed, for who listens. */
  tell(before) {
    const d = this.data;
    if (this.held || !d.pieces || d.seeking || !this.stands) return;
    const p = d.pieces[this.piece];
    const wrong = d.pieces.filter((x) => x.faults.length).length;
    if (p && before?.pieces && this.moved) this.room.say(`${called(p)} ${p.faults.join(', ') || 'lies well'}. The lay is ${d.told} long; to buy ${d.buy.told}.`);
    else if (d.length !== before?.length) this.room.say(`The lay is ${d.told} long; to buy ${d.buy.told}.${wrong ? ` ${wrong} pieces do not lie well.` : ''}`);
    this.moved = false;
  }

  // -- drawing ---------------------------------------------------------------------
  paint() {
    const d = this.data, { clientWidth: wide, clientHeight: high } = this.figure;
    this.note.show(d);
    if (!d?.pieces || !wide) { this.svg.replaceChildren(); this.nodes = null; this.key = ''; return this.remark(); }
    if (!this.held) {
      const ROOM = narrow() ? SMALL : WIDE;
      const far = Math.max(d.buy.at, d.length) + 8;
      this.scale = Math.min((wide - ROOM.left - ROOM.right) / (far + d.buy.lost), (high - ROOM.top - ROOM.bottom) / d.width);
      const drawnHigh = d.width * this.scale;
      this.x0 = ROOM.left + d.buy.lost * this.scale;
      this.y0 = ROOM.top + Math.max(0, Math.min(40, (high - ROOM.top - ROOM.bottom - drawnHigh) / 3));
    }
    this.svg.setAttribute('viewBox', `0 0 ${wide} ${high}`);
    const key = JSON.stringify([d.cloth, d.fold, d.width, d.pieces.map((p) => [p.code, p.d, p.hand]), wide, high, this.room.unit, this.scale]);
    if (key !== this.key) { this.key = key; this.rebuild(); }
    this.cloth();
    d.pieces.forEach((p, i) => this.place(p, i));
    this.remark();
  }

  x(cm) { return this.x0 + cm * this.scale; }

  y(cm) { return this.y0 + cm * this.scale; }

  rebuild() {
    const focus = this.nodes?.findIndex((n) => n.g === document.activeElement) ?? -1;
    this.ground = draw('g', { 'aria-hidden': 'true' });
    this.nodes = this.data.pieces.map((p, i) => this.node(p, i));
    this.svg.replaceChildren(this.ground, ...this.nodes.map((n) => n.g));
    if (focus >= 0) this.nodes[focus]?.g.focus();
  }

  /** The cloth itself: its edges, fold, selvedges, stripes, ruler, and where it is cut. */
  cloth() {
    const d = this.data, s = this.scale, out = [], end = d.buy.at;
    const left = this.x(-d.buy.lost), right = this.x(Math.max(end, d.length)) + 22, top = this.y(0), bottom = this.y(d.width);
    out.push(draw('rect', { class: 'stuff', x: left, y: top, width: right - left, height: bottom - top }));
    const line = (cls, x1, y1, x2, y2) => out.push(draw('line', { class: cls, x1, y1, x2, y2 }));
    const words = (cls, x, y, text, turn) => out.push(draw('text', { class: cls, x, y, transform: turn ? `rotate(${turn} ${x} ${y})` : null }, text));
    const [along, across] = d.repeat;
    if (along) for (let x = 0; x < end; x += along) line('stripe', this.x(x), top, this.x(x), bottom);
    if (across) for (let y = across / 2; y < d.width; y += across) line('stripe', left, this.y(y), right, this.y(y));
    for (const f of d.flaws) out.push(draw('rect', { class: 'flaw', x: this.x(f[0]), y: this.y(f[1]), width: (f[2] - f[0]) * s, height: (f[3] - f[1]) * s }));
    for (const edge of new Set(d.bands.flat())) if (edge > 0.01 && edge < d.width - 0.01) line('selvedge', left, this.y(edge), right, this.y(edge));
    [[0, top, 5], [d.width, bottom, 3]].forEach(([, y, off], i) => {
      line(d.folds[i] ? 'on-fold' : 'edge', left, y, right, y);
      words(narrow() ? 'small' : 'small start', narrow() ? right - 3 : right + 5, narrow() ? y + (i ? -4 : 11) : y + off, d.folds[i] ? 'fold' : d.layers === 2 ? 'selvedges' : 'selvedge');
    });
    line('edge', left, top, left, bottom);
    line('cut-here', this.x(end), top - 8, this.x(end), bottom + 8);
    words('small', this.x(end) + 13, (top + bottom) / 2, `cut here: ${d.buy.told}`, 90);
    this.ruler(out, end, top - 8);
    this.ground.replaceChildren(...out);
  }

  ruler(out, end, y) {
    const [mark, many] = EVERY[this.room.unit], px = mark * this.scale;
    const fine = px > 4 ? 1 : many / 2, ticks = [];
    for (let i = 0; i * mark <= end; i += fine) ticks.push(`M${this.x(i * mark).toFixed(1)} ${y}v${i % many ? -4 : -8}`);
    out.push(draw('path', { class: 'marks', d: ticks.join('') }));
    const step = px * many > 26 ? many : many * 2;
    for (let i = 0; i * mark <= end - mark; i += step) out.push(draw('text', { class: 'small mid', x: this.x(i * mark), y: y - 11 }, String(i)));
  }

  node(p, i) {
    const s = this.scale, [lx, ly, r, long] = p.label.map((v) => v * s);
    const path = draw('path', { class: 'cutout', d: p.d, transform: `scale(${s})` });
    const g = draw('g', { class: 'laid', tabindex: 0, role: 'button', 'data-piece': i, 'aria-pressed': 'false' }, path);
    const size = Math.min(15, 1.1 * r, (1.9 * long) / breadth(p.name));
    if (size > 6.5) {
      const name = draw('text', { class: 'name', x: lx, y: ly - 1 }, p.name);
      name.style.fontSize = `${size}px`;
      g.append(name);
      if (p.hand && r > size * 1.5) g.append(draw('text', { class: 'which', x: lx, y: ly + size * 0.95 }, p.hand));
    }
    const half = Math.min(34, Math.max(9, r * 0.9)), gy = ly + Math.min(r * 0.75, Math.max(size * 1.7, 9));
    const back = p.turned ? -1 : 1;
    const head = (x, way) => `M${x - 5 * way} ${gy - 3}L${x} ${gy}L${x - 5 * way} ${gy + 3}`;
    g.append(draw('path', { class: 'grain', d: `M${lx - half} ${gy}H${lx + half}${head(lx + half * back, back)}${p.heads === 2 ? head(lx - half * back, -back) : ''}` }));
    const sign = draw('text', { class: 'sign', x: lx, y: ly - Math.max(size, 8) - 2 }, '×');
    g.append(sign);
    this.hands(g, i);
    return { g, path, sign };
  }

  place(p, i) {
    const { g, sign } = this.nodes[i];
    if (this.held?.i !== i || !this.held.at) g.setAttribute('transform', `translate(${this.x(p.at[0]).toFixed(1)} ${this.y(p.at[1]).toFixed(1)})`);
    g.classList.toggle('wrong', p.faults.length > 0);
    g.classList.toggle('in-hand', this.piece === i);
    g.setAttribute('aria-pressed', String(this.piece === i));
    sign.style.display = p.faults.length ? '' : 'none';
    g.setAttribute('aria-label', `${called(p)}, ${p.cut}. ${p.faults.length ? `It ${p.faults.join('; it ')}.` : 'It lies well.'}`);
  }

  /** What the checker says of the piece in hand, at the piece. */
  remark() {
    const p = this.data?.pieces?.[this.piece], n = this.nodes?.[this.piece];
    this.said.hidden = !p?.faults.length || !n;
    if (this.said.hidden) return;
    this.said.replaceChildren(make('h3', {}, called(p)), ...p.faults.map((f) => { const line = make('p'); line.append(figured(`${f[0].toUpperCase()}${f.slice(1)}.`)); return line; }));
    const box = n.path.getBoundingClientRect(), all = this.figure.getBoundingClientRect();
    const wide = this.said.offsetWidth, high = this.said.offsetHeight;
    const x = Math.max(4, Math.min(all.width - wide - 4, box.left - all.left + box.width / 2 - wide / 2));
    const below = box.bottom - all.top + 8;
    const y = below + high < all.height ? below : Math.max(4, box.top - all.top - high - 8);
    this.said.style.left = `${x}px`;
    this.said.style.top = `${y}px`;
  }

  // -- flaws -----------------------------------------------------------------------
  /** A flaw is drawn round on the cloth; a tap marks one of 2 cm. */
  marks() {
    const spot = (e) => { const r = this.svg.getBoundingClientRect(); return [(e.clientX - r.left - this.x0) / this.scale, (e.clientY - r.top - this.y0) / this.scale]; };
    const box = (a, b) => (Math.hypot(a[0] - b[0], a[1] - b[1]) < 0.7 ? [a[0] - 1, a[1] - 1, a[0] + 1, a[1] + 1] : [0, 1].map((k) => Math.min(a[k], b[k])).concat([0, 1].map((k) => Math.max(a[k], b[k]))));
    this.svg.addEventListener('pointerdown', (e) => {
      if (!this.marking || e.button) return;
      e.preventDefault();
      this.svg.setPointerCapture(e.pointerId);
      this.round = { from: spot(e), el: draw('rect', { class: 'flaw' }) };
      this.svg.append(this.round.el);
    });
    this.svg.addEventListener('pointermove', (e) => {
      if (!this.round) return;
      const [l, t, r, b] = box(this.round.from, spot(e));
      Object.entries({ x: this.x(l), y: this.y(t), width: (r - l) * this.scale, height: (b - t) * this.scale }).forEach(([k, v]) => this.round.el.setAttribute(k, v));
    });
    const end = (e) => {
      if (!this.round) return;
      const found = box(this.round.from, spot(e));
      this.round.el.remove();
      this.round = null;
      this.mark(false);
      if (e.type === 'pointerup') this.flawed(found);
    };
    this.svg.addEventListener('pointerup', end);
    this.svg.addEventListener('pointercancel', end);
  }

  mark(on) {
    this.marking = on;
    this.svg.classList.toggle('marking', on);
    this.paint();
  }

  /** A flaw as it is typed behind the cloth's word: size, then place on the open cloth. */
  flawed([left, top, right, bottom]) {
    const d = this.data, near = Math.max(top, 0), far = Math.min(bottom, d.width), at = Math.max(left + d.buy.lost, 0);
    if (far - near < 0.1 || right + d.buy.lost - at < 0.1) return;
    const [long, wide, along, across] = [right + d.buy.lost - at, far - near, at, d.near_edge + near].map((v) => (v / EVERY[this.room.unit][0]).toFixed(2));
    const one = `${long} by ${wide} at ${along} and ${across}`;
    this.room.change({ do: 'choose', of: `cloth:${d.cloth}.flaws`, to: [d.flaws_typed, one].filter(Boolean).join('; '), unit: this.room.unit });
  }

  // -- hands -----------------------------------------------------------------------
  take(i) {
    if (this.piece === i) return;
    this.piece = i;
    this.paint();
  }

  hands(g, i) {
    g.addEventListener('focus', () => this.take(i));
    g.addEventListener('keydown', (e) => this.keyed(e, i));
    g.addEventListener('pointerdown', (e) => {
      if (e.button || this.marking) return;
      e.preventDefault();
      g.focus({ preventScroll: true });
      g.setPointerCapture(e.pointerId);
      const p = this.data.pieces[i], b = this.nodes[i].path.getBBox();
      this.held = { i, from: [e.clientX, e.clientY], at: null, start: p.at, middle: [b.x + b.width / 2 + p.at[0], b.y + b.height / 2 + p.at[1]], fold: p.on_fold };
    });
    g.addEventListener('pointermove', (e) => {
      const h = this.held;
      if (h?.i !== i) return;
      const by = [(e.clientX - h.from[0]) / this.scale, (e.clientY - h.from[1]) / this.scale];
      if (!h.at && Math.hypot(...by) * this.scale < 4) return;
      h.at = h.middle.map((v, k) => v + by[k]);
      const dy = h.fold ? 0 : by[1];
      g.setAttribute('transform', `translate(${this.x(h.start[0] + by[0]).toFixed(1)} ${this.y(h.start[1] + dy).toFixed(1)})`);
      this.move(i, { at: h.at, live: true });
    });
    const drop = () => {
      const h = this.held;
      if (h?.i !== i) return;
      this.held = null;
      if (h.at) this.move(i, { at: h.at });
    };
    g.addEventListener('pointerup', drop);
    g.addEventListener('pointercancel', drop);
  }

  move(i, more) {
    this.moved = true;
    return this.room.wire.change({ do: 'lay', hand: 'move', of: `piece ${i}`, piece: i, ...more });
  }

  keyed(e, i) {
    const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[e.key];
    if (way && !e.altKey) {
      e.preventDefault();
      const step = this.room.grain * (e.shiftKey ? (this.room.unit === 'in' ? 16 : 10) : 1);
      this.move(i, { by: way.map((v) => v * step) });
    } else if (/^[ts]$/i.test(e.key) && !e.ctrlKey && !e.metaKey) this.act(e.key.toLowerCase() === 't' ? 'turn' : 'swap');
    else if (e.key === 'Escape') { this.piece = null; this.paint(); }
  }

  act(hand) {
    this.moved = true;
    return this.hand(hand, { piece: this.piece });
  }
}
