// The table: pieces of paper at true proportion. Hands touch edges, pull pins, walk seams.

import { breadth, draw, say } from './figures.js';
import { tapeAlong } from './along.js';
import { Marks } from './marks.js';
import { narrow } from './phone.js';
import { Piece, pieceOf } from './piece.js';
import { Pins } from './pins.js';
import { Whole } from './whole.js';

const AIR = 14; // mm of bare table round the pieces

export class Paper {
  constructor(svg, room) {
    this.svg = svg;
    this.room = room;
    this.pieces = new Map(); // code → Piece
    this.places = {};
    this.seams = new Map();
    this.under = new Map();
    this.view = null;
    this.px = 1; // millimetres of paper in a pixel of the screen
    this.selected = null;
    this.unsaid = new Set(); // codes of pieces that a reader has yet to be told of
    this.withDims = false;
    this.framed = null; // on a phone: the code of the piece that the table frames
    this.build();
    this.hands();
  }

  build() {
    const kraft = draw('linearGradient', { id: 'kraft', x1: 0, y1: 0, x2: 1, y2: 1 },
      draw('stop', { offset: 0, class: 'kraft-hi' }), draw('stop', { offset: 1, class: 'kraft-lo' }));
    this.layer = draw('g');
    this.over = draw('g', { class: 'over' });
    this.pins = new Pins(this);
    this.marks = new Marks(this);
    this.whole = new Whole(this);
    this.svg.append(draw('defs', {}, kraft), this.whole.layer, this.layer, this.marks.layer, this.over, this.pins.layer);
  }

  // -- what lies there ------------------------------------------------------------
  update(parts) {
    const fresh = new Set(), sewn = new Set(); // codes of what is new, and of what is sewn otherwise
    for (const [name, value] of Object.entries(parts)) {
      const [kind, code] = [name.slice(0, name.indexOf(' ')), name.slice(name.indexOf(' ') + 1)];
      if (kind === 'piece') { fresh.add(code); this.piece(code, value); }
      if (kind === 'seam') { for (const [id] of value ? [...value.left, ...value.right] : []) sewn.add(pieceOf(id)); if (value) this.seams.set(code, value); else this.seams.delete(code); }
      if (kind === 'under') { if (value) this.under.set(code, value); else this.under.delete(code); this.pieces.get(code)?.beneath(value); }
    }
    for (const code of [...fresh, ...sewn]) this.unsaid.add(code);
    if (parts.places) { this.places = parts.places; this.grown = true; this.placeAll(); }
    if (parts.rows) this.whole.rows = parts.rows;
    if (parts.lifted !== undefined) this.svg.classList.toggle('lifted', parts.lifted);
    if (parts.pins) this.pins.all = parts.pins;
    if (parts.pins || parts.places) this.pins.show();
    if (parts.findings) this.marks.found = parts.findings;
    const moved = fresh.size || parts.places;
    if (parts.findings || parts.places || this.marks.on(fresh)) this.marks.lay();
    if (moved || parts.rows) this.whole.lay();
    if (this.framed === null && !this.view) this.frame(['FC', 'F'].find((c) => this.pieces.has(c)) ?? [...this.pieces.keys()][0]);
    else if (this.framed && !this.pieces.has(this.framed)) this.frame(null);
    else if (this.grown && !this.moved && !this.room.pulling) this.fit(true);
    if (this.selected && moved) this.select(this.selected, false);
  }

  piece(code, data) {
    const old = this.pieces.get(code);
    if (!data) { old?.g.remove(); this.pieces.delete(code); this.grown = true; return; }
    const p = old ?? new Piece(code);
    this.grown ||= !old || p.data.box.join() !== data.box.join();
    p.take(data);
    if (!old) {
      this.layer.append(p.g);
      this.pieces.set(code, p);
      p.beneath(this.under.get(code));
      this.place(code);
    }
    this.dimensions(p);
  }

  place(code) {
    const at = this.places[code], p = this.pieces.get(code);
    if (at && p && !p.walking) p.g.setAttribute('transform', `translate(${at[0]} ${at[1]})`);
  }

  placeAll() { for (const code of this.pieces.keys()) this.place(code); }

  /** What a reader hears, of the pieces that are others since it was last told. */
  tell() {
    for (const code of this.unsaid) if (this.pieces.has(code)) this.words(this.pieces.get(code));
    this.unsaid.clear();
  }

  /** What a reader hears of a piece and its edges. */
  words(p) {
    const { data } = p;
    const n = data.edges.length;
    p.g.setAttribute('aria-label', `${data.name}. ${data.cuts.map(([cloth, how]) => `${capital(cloth)}: cut ${how}`).join('. ')}. ${n} edges.`);
    for (const { data: e, hit, i } of p.edges.values()) {
      hit.setAttribute('aria-label', `${data.name}, ${e.name}, ${this.say(e.length)}. ${this.sewn(e).join(' ')} Edge ${i + 1} of ${n}.`);
    }
  }

  say(cm) { return say(cm, this.room.unit); }

  retell() { for (const p of this.pieces.values()) { this.words(p); this.dimensions(p); } this.select(this.selected, false); }

  edge(id) { return this.pieces.get(pieceOf(id))?.edges.get(id); }

  /** Sentences on what an edge is sewn to. */
  sewn(e) {
    const out = [];
    for (const code of e.seams) {
      const s = this.seams.get(code);
      if (!s) continue;
      if (s.twin) { out.push('Sewn to its own twin.'); continue; }
      const left = s.left.some(([id]) => id === e.id);
      const mates = (left ? s.right : s.left).map(([id]) => this.named(id)).filter(Boolean);
      const length = s.lengths[left ? 1 : 0];
      out.push(`${capital(s.name)}: sewn to the ${mates.join(' and the ')}, ${this.say(length)}. ${this.apart(s)}`);
    }
    if (!out.length) out.push({ fold: 'Laid on the fold; not sewn.', 'finished edge': 'Finished by itself: a hem or a neatened edge.' }[e.is] ?? '');
    return out;
  }

  named(id) {
    const edge = this.edge(id);
    return edge ? `${this.pieces.get(pieceOf(id)).data.name.toLowerCase()}, ${edge.data.name}` : '';
  }

  /** How two sides of a seam compare. */
  apart(s) {
    if (!s.holds) return `${this.say(Math.abs(s.ease))} too ${s.ease > s.plan ? 'long' : 'short'}.`;
    if (this.say(Math.abs(s.ease)) === this.say(0)) return 'Both agree.';
    if (s.kind === 'plain seam') return s.ease > 0 ? `${this.say(s.ease)} to ease.` : `${this.say(-s.ease)} stretched on.`;
    return `${this.say(Math.abs(s.ease))} ${s.ease > 0 ? 'longer' : 'shorter'}, as it should be.`;
  }

  // -- touching -------------------------------------------------------------------
  select(id, tell = true) {
    for (const el of this.svg.querySelectorAll('.glow.on, .glow.mate')) el.classList.remove('on', 'mate');
    this.over.replaceChildren();
    if (tell) this.marks.close();
    this.selected = id && this.edge(id) ? id : null;
    if (this.selected) {
      const { data, glow } = this.edge(id);
      let back = false;
      glow.classList.add('on');
      for (const code of data.seams) {
        const s = this.seams.get(code);
        if (!s || s.twin) continue;
        const left = s.left.some(([e]) => e === id);
        back = Boolean((left ? s.left : s.right).find(([e]) => e === id)[1]);
        for (const [mate] of left ? s.right : s.left) this.edge(mate)?.glow.classList.add('mate');
      }
      const [x, y] = this.places[pieceOf(id)] ?? [0, 0];
      if (tell) this.frame(pieceOf(id));
      this.over.append(tapeAlong(glow, data.length, this.room.unit, this.px, x, y, back));
    }
    if (tell) this.room.touched(this.selected);
  }

  dimensions(p) {
    p.dims.replaceChildren();
    if (!this.withDims) return;
    for (const { data, glow } of p.edges.values()) {
      const whole = glow.getTotalLength(), mid = glow.getPointAtLength(whole / 2);
      const a = glow.getPointAtLength(whole / 2 - 1), b = glow.getPointAtLength(whole / 2 + 1);
      let turn = Math.atan2(b.y - a.y, b.x - a.x) * 180 / Math.PI;
      // inside lies to the right of an edge that runs clockwise
      const nx = -(b.y - a.y), ny = b.x - a.x, n = Math.hypot(nx, ny) || 1;
      if (turn > 90 || turn <= -90) turn += 180;
      p.dims.append(draw('text', {
        class: 'dim', transform: `translate(${mid.x} ${mid.y}) rotate(${turn})`,
        'data-nx': nx / n, 'data-ny': ny / n, 'data-x': mid.x, 'data-y': mid.y, 'data-turn': turn, 'data-length': whole,
      }, say(data.length, this.room.unit, false)));
    }
    this.settle(p);
  }

  /** Keep words inside the piece, and figures clear of their edge, at any size. */
  settle(p) {
    const [x, y, room, across, down] = p.data.label;
    const { name } = p.data, { px } = this, count = p.label.lastChild;
    // a name as large as it may stand, along the piece when that leaves more room
    const wide = breadth(name), least = 9 * px;
    let along = down > 1.2 * across && wide * 8.25 * px > across;
    const long = along ? down : across;
    let size = Math.min(16.5 * px, 1.1 * room, 1.9 * long / wide);
    if (size < least) { // over the lines then, rather than too small to be read
      const [left, top, w, h] = p.data.box;
      along = h > w;
      if (Math.min(...(along ? [y - top, top + h - y] : [x - left, left + w - x])) > 0.5 * wide * least) size = least;
    }
    const both = !this.withDims && size >= 12 * px && 0.95 * size <= room && 0.31 * size * count.textContent.length <= long;
    p.label.setAttribute('transform', `translate(${x} ${y}) rotate(${along ? -90 : 0}) scale(${size / 16.5}) translate(0 ${both ? -3 : 4.5})`);
    p.label.style.display = size < 6 * px ? 'none' : '';
    count.style.display = both ? '' : 'none';
    for (const t of p.dims.children) {
      const off = 15 * this.px, d = t.dataset;
      t.style.display = d.length < t.textContent.length * 7.5 * this.px ? 'none' : '';
      t.setAttribute('transform', `translate(${+d.x + d.nx * off} ${+d.y + d.ny * off}) rotate(${d.turn})`);
    }
  }

  showDimensions(on) {
    this.withDims = on;
    for (const p of this.pieces.values()) { this.dimensions(p); this.settle(p); }
  }

  // -- hands -------------------------------------------------------------------------
  hands() {
    const { svg } = this;
    const touches = new Map();
    svg.addEventListener('pointerdown', (e) => {
      if (e.button) return;
      touches.set(e.pointerId, { x: e.clientX, y: e.clientY });
      const pin = e.target.closest?.('.pin');
      if (pin && touches.size === 1) {
        const p = this.pins.of(pin.dataset.pin);
        this.pulled = { pin: p, from: this.at(e), value: p.value, id: e.pointerId };
        svg.setPointerCapture(e.pointerId);
        this.room.showWord(p.of);
        e.preventDefault();
        return;
      }
      const hit = e.target.closest?.('.hit'), ticket = e.target.closest?.('.ticket');
      this.drag = { x: e.clientX, y: e.clientY, hit, ticket, moved: false };
    });
    svg.addEventListener('pointermove', (e) => {
      if (this.pulled?.id === e.pointerId) return this.pulling(e, true);
      if (!touches.has(e.pointerId)) return;
      const before = touches.get(e.pointerId);
      if (touches.size === 2) {
        const [a, b] = touches.values();
        const old = Math.hypot(a.x - b.x, a.y - b.y);
        touches.set(e.pointerId, { x: e.clientX, y: e.clientY });
        const [c, d] = touches.values();
        const now = Math.hypot(c.x - d.x, c.y - d.y);
        const dx = (c.x + d.x - a.x - b.x) / 2, dy = (c.y + d.y - a.y - b.y) / 2;
        this.show({ ...this.view, x: this.view.x - dx * this.px, y: this.view.y - dy * this.px }, true);
        if (old && now) this.zoom(old / now, (c.x + d.x) / 2, (c.y + d.y) / 2);
        this.drag = null;
        return;
      }
      touches.set(e.pointerId, { x: e.clientX, y: e.clientY });
      if (!this.drag) return;
      const dx = e.clientX - this.drag.x, dy = e.clientY - this.drag.y;
      if (!this.drag.moved && Math.hypot(dx, dy) < 5) return;
      if (!this.drag.moved) svg.setPointerCapture(e.pointerId);
      this.drag.moved = true;
      this.show({ ...this.view, x: this.view.x - (e.clientX - before.x) * this.px, y: this.view.y - (e.clientY - before.y) * this.px }, true);
    });
    const up = (e) => {
      touches.delete(e.pointerId);
      if (this.pulled?.id === e.pointerId) { this.pulling(e, false); this.pulled = null; this.pins.show(); return; }
      if (this.drag && !this.drag.moved && e.type === 'pointerup') {
        if (this.drag.ticket) this.marks.open(this.drag.ticket);
        else this.select(this.drag.hit?.dataset.edge ?? null);
      }
      this.drag = null;
    };
    svg.addEventListener('pointerup', up);
    svg.addEventListener('pointercancel', up);
    svg.addEventListener('wheel', (e) => {
      e.preventDefault();
      this.zoom(Math.exp(Math.max(-60, Math.min(60, e.deltaY)) / 300), e.clientX, e.clientY);
    }, { passive: false });
    svg.addEventListener('keydown', (e) => this.key(e));
    new ResizeObserver(() => { if (this.view) (this.moved ? this.show(this.view, true) : this.fit()); }).observe(svg);
  }

  /** A pin is pulled along its way; across it nothing moves. */
  pulling(e, live) {
    const { pin, from, value } = this.pulled, now = this.at(e);
    const along = ((now.x - from.x) * pin.way[0] + (now.y - from.y) * pin.way[1]) / 10;
    this.room.pull(pin, value + along, live);
  }

  key(e) {
    if (e.ctrlKey || e.metaKey) return;
    const ticket = e.target.closest?.('.ticket');
    if (ticket && (e.key === 'Enter' || e.key === ' ')) { e.preventDefault(); this.marks.open(ticket, true); return; }
    const pin = e.target.closest?.('.pin');
    const arrow = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[e.key];
    if (pin && arrow) {
      const p = this.pins.of(pin.dataset.pin);
      const along = arrow[0] * p.way[0] + arrow[1] * p.way[1];
      const way = Math.abs(along) > 0.2 ? Math.sign(along) : Math.sign(arrow[0] - arrow[1]);
      e.preventDefault();
      this.room.pull(p, p.value + way * this.room.grain * (e.shiftKey ? 8 : 1), false);
      return;
    }
    if (e.altKey && arrow) {
      e.preventDefault();
      this.show({ ...this.view, x: this.view.x + arrow[0] * this.view.w / 10, y: this.view.y + arrow[1] * this.view.h / 10 }, true);
      return;
    }
    const codes = [...this.pieces.keys()];
    const hit = e.target.closest?.('.hit');
    const code = hit ? pieceOf(hit.dataset.edge) : this.piece_in_hand ?? codes[0] ?? '';
    const steps = [...(this.pieces.get(code)?.edges.values() ?? [])];
    if (arrow && codes.length) {
      e.preventDefault();
      if (hit && arrow[0]) {
        const i = steps.findIndex((s) => s.hit === hit);
        this.focusEdge(steps[(i + arrow[0] + steps.length) % steps.length]);
      } else {
        const i = codes.indexOf(code);
        const step = arrow[0] || arrow[1];
        this.focusPiece(codes[(i + (this.piece_in_hand || hit ? step : 0) + codes.length) % codes.length]);
      }
    } else if (e.key === 'Enter' || e.key === ' ') {
      e.preventDefault();
      if (hit) this.select(hit.dataset.edge);
      else if (this.piece_in_hand) this.focusEdge(steps[0]);
    } else if (e.key === 'Escape') { this.select(null); this.svg.focus(); } else if (e.key === '+' || e.key === '=') this.zoom(0.8);
    else if (e.key === '-') this.zoom(1.25);
    else if (e.key === '0') { this.moved = false; this.fit(); } else if (this.room.key(e.key)) e.preventDefault();
  }

  focusPiece(code) {
    this.piece_in_hand = code;
    const g = this.pieces.get(code).g;
    for (const p of this.pieces.values()) p.g.classList.toggle('in-hand', p.g === g);
    g.setAttribute('tabindex', -1);
    g.focus();
  }

  focusEdge(edge) { edge?.hit.focus(); if (edge) this.select(edge.data.id); }

  // -- the view -----------------------------------------------------------------------
  /** Where an event lies on the table, mm. */
  at(e) {
    const m = this.svg.getScreenCTM();
    return m ? new DOMPoint(e.clientX, e.clientY).matrixTransform(m.inverse()) : { x: 0, y: 0 };
  }

  /** Show a piece as large as it goes where the screen is small; null shows all. */
  frame(code) {
    if (code === this.framed && this.view) return;
    this.framed = code;
    this.room.framed(code);
    if (narrow() || !this.view) this.fit();
  }

  /** All that is framed, as large as it goes; `grown`: where it does not fill the view as before. */
  fit(grown = false) {
    let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
    const one = narrow() && this.pieces.has(this.framed);
    const body = narrow() && this.whole.on && !one ? new Set(this.whole.rows.flat()) : null; // a small screen leaves small pieces out
    for (const [code, p] of this.pieces) {
      const at = this.places[code];
      if (!at || one && code !== this.framed || body && !body.has(code)) continue;
      const [x, y, w, h] = p.data.box;
      x0 = Math.min(x0, x + at[0]); y0 = Math.min(y0, y + at[1]);
      x1 = Math.max(x1, x + w + at[0]); y1 = Math.max(y1, y + h + at[1]);
    }
    if (this.whole.box && !one) x1 = Math.max(x1, this.whole.box);
    if (x1 <= x0) return;
    this.grown = false;
    const view = { x: x0 - AIR, y: y0 - AIR, w: x1 - x0 + 2 * AIR, h: y1 - y0 + 2 * AIR };
    if (grown && this.view && Object.keys(view).every((k) => Math.abs(view[k] - this.view[k]) < 0.01)) return;
    this.show(view, false);
  }

  zoom(by, cx, cy) {
    const box = this.svg.getBoundingClientRect();
    const p = this.at({ clientX: cx ?? box.left + box.width / 2, clientY: cy ?? box.top + box.height / 2 });
    const k = Math.max(0.05, Math.min(20, by));
    if (this.view.w * k > 20000 || this.view.w * k < 10) return;
    this.show({ x: p.x + (this.view.x - p.x) * k, y: p.y + (this.view.y - p.y) * k, w: this.view.w * k, h: this.view.h * k }, true);
  }

  show(view, moved) {
    this.view = view;
    this.moved = moved;
    this.svg.setAttribute('viewBox', `${view.x} ${view.y} ${view.w} ${view.h}`);
    this.measure();
    this.svg.style.setProperty('--px', `${this.px}px`);
    this.pins.scale();
    this.marks.settle();
    for (const p of this.pieces.values()) this.settle(p);
    if (this.selected) this.select(this.selected, false);
    this.room.scaled(this.px, this.view.x);
  }

  /** How large the paper is seen. Asked once for a view: each asking lays the page out. */
  measure() {
    const box = this.svg.getBoundingClientRect();
    this.px = box.width ? Math.max(this.view.w / box.width, this.view.h / box.height) : 1;
  }
}

export const capital = (s) => s.slice(0, 1).toUpperCase() + s.slice(1);
