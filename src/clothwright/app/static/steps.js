// The replay of the hand draft, one step at a time.

import { draw, figured, make } from './figures.js';
import { capital } from './paper.js';

const LARGE = 1.8; // letters and ruler for the back row of a class

export class Steps {
  constructor(el, room) {
    this.el = el;
    this.room = room;
    this.i = 0;
    this.steps = [];
    this.hidden = false;
    this.teaching = false;
    this.el.addEventListener('keydown', (e) => this.key(e));
    new ResizeObserver(() => { if (this.steps[this.i] && this.figure?.isConnected) this.paint(this.steps[this.i]); }).observe(this.el);
  }

  /** Keys of a lesson, as a hand-held pointer sends them too. */
  key(e) {
    if (!this.teaching || e.target.matches('input')) return;
    const by = { ArrowRight: 1, PageDown: 1, ArrowLeft: -1, PageUp: -1 }[e.key];
    if (by) { e.preventDefault(); e.stopPropagation(); this.go(by); }
    if (e.key === 'Escape') { e.stopPropagation(); this.teach(false); }
  }

  /** Large type over the whole window, for a class to read along. */
  teach(on) {
    this.teaching = on;
    document.body.classList.toggle('teaching', on);
    document.querySelector('#slip').inert = on;
    if (on) document.documentElement.requestFullscreen?.().catch(() => {});
    else if (document.fullscreenElement) document.exitFullscreen();
    this.show();
    this.el.querySelector(on ? '.next' : '.teach')?.focus();
    this.room.say(on ? `Large type. Step ${this.i + 1}. Arrows turn the steps, Escape leaves.` : 'Back at the slip.');
  }

  async open() {
    const answer = await this.room.ask('steps');
    if (answer.is !== 'steps') return this.room.refused(answer);
    this.steps = answer.steps;
    this.i = Math.min(this.i, this.steps.length - 1);
    this.show();
  }

  go(by) {
    const next = this.i + by;
    if (next < 0 || next >= this.steps.length) return;
    const way = by > 0 ? '.next' : '.back', held = this.el.contains(document.activeElement);
    this.i = next;
    this.show();
    if (held) (this.el.querySelector(`${way}:enabled`) ?? this.el.querySelector('.next:enabled, .back:enabled'))?.focus();
    this.room.say(`Step ${this.i + 1}. ${this.steps[this.i].say}`);
  }

  show() {
    const s = this.steps[this.i];
    if (!s) return;
    const figure = make('div', { class: 'figure' });
    this.figure = figure;
    const told = make('p', { class: 'told' });
    if (this.hidden) told.append(make('button', { type: 'button', class: 'w ink', onclick: () => { told.replaceChildren(figured(s.say)); } }, 'Tell me'));
    else told.append(figured(s.say));
    const say = 'speechSynthesis' in window ? make('button', { type: 'button', class: 'w ink', onclick: () => { speechSynthesis.cancel(); speechSynthesis.speak(new SpeechSynthesisUtterance(s.say)); } }, 'Say it') : null;
    this.el.replaceChildren(figure, make('article', { class: 'note lesson', 'aria-label': 'The step' },
      make('div', { class: 'of' }, make('span', {}, `Step ${this.i + 1} of ${this.steps.length}`), make('span', {}, `for the ${s.part}`)),
      told,
      make('div', { class: 'do' },
        make('button', { type: 'button', class: 'w ink back', disabled: this.i === 0, onclick: () => this.go(-1) }, 'Step before'),
        make('button', { type: 'button', class: 'w ink next', disabled: this.i === this.steps.length - 1, onclick: () => this.go(1) }, 'Next step'),
      ),
      make('div', { class: 'do' }, say,
        make('button', { type: 'button', class: 'w ink', 'aria-pressed': String(this.hidden), onclick: () => { this.hidden = !this.hidden; this.show(); } }, this.hidden ? 'Show me all' : 'From here by yourself'),
        make('button', { type: 'button', class: 'w ink teach', 'aria-pressed': String(this.teaching), onclick: () => this.teach(!this.teaching) }, this.teaching ? 'Back to the slip' : 'Teach it'),
        make('a', { class: 'w ink sheet', href: `${this.room.base}/sheets/steps.pdf`, target: '_blank', rel: 'noopener' }, 'Print the sheet'),
      ),
      make('label', { class: 'jump' }, 'Go to step ', make('input', { class: 'typed', type: 'number', min: 1, max: this.steps.length, value: this.i + 1, onchange: (e) => { const n = e.target.valueAsNumber; if (n >= 1 && n <= this.steps.length) { this.i = n - 1; this.show(); } } }))));
    this.paint(s);
  }

  /** The step at half scale (smaller where the table is small), the ruler laid where it lies. */
  paint(s) {
    const { figure } = this;
    const half = 96 / 25.4 / (this.teaching ? 1 : 2); // px in a mm of paper: half scale, or full for a class
    const box = bounds(s);
    const room = figure.getBoundingClientRect();
    const air = 34;
    const fits = Math.min((room.width - 2 * air) / Math.max(box.w, 40), (room.height - 2 * air) / Math.max(box.h, 40));
    const k = Math.min(half, fits > 0 ? fits : half);
    const w = room.width / k, h = room.height / k;
    const svg = draw('svg', { viewBox: `${box.x + box.w / 2 - w / 2} ${box.y + box.h / 2 - h / 2} ${w} ${h}`, role: 'img', 'aria-label': `Drawing of this step: ${s.makes}` });
    const px = (this.teaching ? LARGE : 1) / k;
    for (const hand of ['guide', 'old', 'pencil', 'ink']) for (const [h, d] of s.drawn) if (h === hand) svg.append(draw('path', { class: `drawn ${hand}`, d }));
    for (const r of s.rulers) svg.append(this.ruler(r, px));
    const taken = []; // where letters stand already; the most wanted are placed first
    const marks = [...s.new.map((m) => [...m, 'new']), ...s.marks.filter((m) => m[3]).map(([n, x, y]) => [n, x, y, 'named']), ...s.marks.filter((m) => !m[3]).map(([n, x, y]) => [n, x, y, 'other'])];
    svg.append(...marks.map((m) => mark(...m, px, taken)).reverse().flat());
    figure.replaceChildren(svg, make('div', { class: 'scale' }, k >= half - 1e-6 ? (this.teaching ? 'full scale' : 'half scale') : `1 : ${(96 / 25.4 / k).toFixed(1)}`));
  }

  /** A ruler that begins at the mark and reaches past the new one. */
  ruler([x0, y0, x1, y1], px) {
    const long = Math.hypot(x1 - x0, y1 - y0), turn = Math.atan2(y1 - y0, x1 - x0) * 180 / Math.PI;
    const inch = this.room.unit === 'in', unit = inch ? 25.4 : 10, parts = inch ? 8 : 2;
    const wide = 17 * px, end = Math.ceil(long / unit + 0.4) * unit;
    const g = draw('g', { class: 'ruler', transform: `translate(${x0} ${y0}) rotate(${turn})` });
    g.append(draw('rect', { x: 0, y: 0, width: end, height: wide, rx: 1 * px }));
    for (let i = 1; i * unit / parts <= end + 1e-6; i++) {
      const x = i * unit / parts, whole = i % parts === 0;
      if (unit / parts / px < 2.5 && !whole && i % (parts / 2)) continue;
      g.append(draw('line', { x1: x, x2: x, y1: 0, y2: wide * (whole ? 0.45 : i % (parts / 2) ? 0.2 : 0.3) }));
      if (whole && (unit / px > 14 || (i / parts) % 5 === 0)) g.append(draw('text', { x: x - 1 * px, y: wide * 0.86, 'font-size': 9.5 * px }, String(i / parts)));
    }
    g.append(draw('line', { class: 'to', x1: long, x2: long, y1: -4 * px, y2: wide + 4 * px }));
    return g;
  }
}

/** A dot with its letter, at the first of four places round it that is free. */
function mark(name, x, y, kind, px, taken) {
  const size = { new: 17, named: 14, other: 11 }[kind] * px, wide = 0.55 * size * name.length, off = 6 * px;
  const places = [[x + off, y - 5 * px], [x - off - wide, y - 5 * px], [x + off, y + 5 * px + 0.7 * size], [x - off - wide, y + 5 * px + 0.7 * size]];
  const clear = ([a, b]) => !taken.some((t) => a < t.x + t.w && t.x < a + wide && b - size < t.y && t.y - t.h < b);
  const [a, b] = places.find(clear) ?? places[0];
  taken.push({ x: a, y: b, w: wide, h: size });
  const letter = draw('text', { class: `letter ${kind}`, x: a, y: b, 'font-size': size }, name);
  letter.style.strokeWidth = `${3 * px}px`;
  return [draw('circle', { class: `dot ${kind}`, cx: x, cy: y, r: (kind === 'new' ? 4 : 2.4) * px }), letter];
}

/** What a step takes up, mm. */
function bounds(s) {
  const probe = draw('svg', { width: 0, height: 0 });
  const g = draw('g');
  probe.append(g);
  document.body.append(probe);
  for (const [, d] of s.drawn) g.append(draw('path', { d }));
  for (const [, x, y] of [...s.marks, ...s.new]) g.append(draw('circle', { cx: x, cy: y, r: 1 }));
  for (const [x0, y0, x1, y1] of s.rulers) g.append(draw('path', { d: `M${x0} ${y0}L${x1} ${y1}` }));
  const b = g.getBBox();
  probe.remove();
  return { x: b.x, y: b.y, w: b.width, h: b.height };
}
