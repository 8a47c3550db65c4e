// The tape: a number is pulled under a fixed mark, stepped, or written.

import { draw, figured, make, say } from './figures.js';

const INCH = 62; // px of the strip for an inch; a centimetre has its own, wider scale
const PER = { in: INCH, cm: 33 };

/** The tape of a number. `set(cm, live)` pulls it; `write(text)` gives typed text;
 *  `rule()` returns it to its rule. `update(behind)` takes what changed elsewhere. */
export class Tape {
  constructor(behind, unit, { set, write, rule, why }) {
    Object.assign(this, { behind, unit, set, write, rule, why });
    this.value = behind.value;
    this.el = make('div', { class: 'pull', role: 'group', 'aria-label': behind.name });
    this.less = make('button', { type: 'button', class: 'step', 'aria-label': 'Less', onclick: () => this.step(-1) }, '−');
    this.more = make('button', { type: 'button', class: 'step', 'aria-label': 'More', onclick: () => this.step(1) }, '+');
    this.strip = make('div', { class: 'strip', role: 'slider', tabindex: '0', 'aria-label': behind.name });
    this.scale = draw('svg', { width: 1, height: 46, 'aria-hidden': 'true' });
    this.strip.append(this.scale, make('div', { class: 'mark' }));
    this.line = make('p', { class: 'line' });
    this.input = make('input', {
      class: 'typed', inputmode: 'text', autocomplete: 'off', spellcheck: 'false',
      'aria-label': `${behind.name}, write it`, placeholder: 'write it',
    });
    this.el.append(
      make('div', { class: 'row' }, this.less, this.strip, this.more),
      make('div', { class: 'under' }, this.line, this.input),
    );
    this.listen();
    this.show();
  }

  get grain() { return this.behind.grain; }

  clamp(v) {
    const { low, high } = this.behind;
    const whole = Math.round(v / this.grain) * this.grain;
    return Math.min(high, Math.max(low, whole));
  }

  say(v) {
    if (this.behind.length) return say(v, this.unit);
    return this.behind.grain === 0.5 ? `${v.toFixed(1)}°` : v.toFixed(2).replace(/0$/, '');
  }

  update(behind) {
    this.behind = behind;
    if (!this.pulling) this.value = behind.value;
    this.show();
  }

  /** A pin that stands for the number is pulled. */
  follow(value) {
    this.value = value;
    this.show();
  }

  pull(v, live) {
    const next = this.clamp(v);
    if (live && Math.abs(next - this.value) < 1e-9) return;
    this.value = next;
    this.show();
    this.set(next, live);
  }

  step(by) { this.pull(this.value + by * this.grain * (this.behind.length && this.unit === 'in' ? 2 : 1), false); }

  listen() {
    const { strip, input } = this;
    strip.addEventListener('pointerdown', (e) => {
      strip.setPointerCapture(e.pointerId);
      this.pulling = { x: e.clientX, v: this.value };
      strip.focus({ preventScroll: true });
    });
    strip.addEventListener('pointermove', (e) => {
      if (!this.pulling) return;
      this.pull(this.pulling.v - (e.clientX - this.pulling.x) / this.px(), true);
    });
    const let_go = () => {
      if (!this.pulling) return;
      const moved = Math.abs(this.value - this.pulling.v) > 1e-9;
      this.pulling = null;
      if (moved) this.set(this.value, false);
    };
    strip.addEventListener('pointerup', let_go);
    strip.addEventListener('pointercancel', let_go);
    strip.addEventListener('keydown', (e) => {
      const way = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 }[e.key];
      if (way) {
        e.preventDefault();
        const whole = this.behind.length ? (this.unit === 'in' ? 2.54 : 1) : this.grain * 10;
        this.pull(this.value + way * (e.shiftKey ? whole : this.grain), false);
      } else if (e.key === 'Home' && this.behind.rule) {
        e.preventDefault();
        this.rule();
      } else if (/^[0-9.,]$/.test(e.key) && !e.ctrlKey && !e.metaKey) {
        input.focus();
      }
    });
    input.addEventListener('keydown', (e) => {
      if (e.key === 'Enter' && input.value.trim()) {
        e.preventDefault();
        this.write(input.value.trim());
        input.value = '';
        this.strip.focus({ preventScroll: true });
      }
    });
  }

  px() { return this.behind.length ? PER[this.unit] / (this.unit === 'in' ? 2.54 : 1) : 62 / (this.grain * 10); }

  show() {
    const { strip, behind } = this;
    strip.setAttribute('aria-valuemin', behind.low);
    strip.setAttribute('aria-valuemax', behind.high);
    strip.setAttribute('aria-valuenow', this.value);
    strip.setAttribute('aria-valuetext', this.say(this.value));
    this.ticks();
    const hers = behind.hers ? ' Inked by you' : ' By rule';
    this.line.replaceChildren(figured(behind.line));
    if (behind.hers && behind.rule) {
      const back = make('button', { type: 'button', class: 'w pencil', onclick: () => this.rule() });
      back.append(figured(behind.rule.say));
      this.line.append(`${hers}; the rule says `, back, '.');
    } else if (behind.key) this.line.append(`${hers}.`);
    if (behind.key) this.line.append(' ', make('button', { type: 'button', class: 'w pencil', onclick: () => this.why() }, 'Why?'));
  }

  ticks() {
    const inches = this.behind.length && this.unit === 'in';
    const one = this.behind.length ? (inches ? 2.54 : 1) : this.grain * 10;
    const parts = inches ? 8 : 10;
    const at = this.value / one, px = this.px() * one;
    const out = [];
    const from = Math.floor((at - 190 / px) * parts), to = Math.ceil((at + 190 / px) * parts);
    for (let i = Math.max(from, Math.ceil(this.behind.low / one * parts - 1e-6)); i <= Math.min(to, this.behind.high / one * parts + 1e-6); i++) {
      const x = (i / parts - at) * px;
      const whole = i % parts === 0, half = i % (parts / 2) === 0, quarter = inches && i % 2 === 0;
      const top = whole ? 22 : half ? 29 : quarter ? 34 : 38;
      out.push(draw('line', { x1: x, x2: x, y1: 46, y2: top, class: whole ? 'tick whole' : 'tick' }));
      if (whole) {
        const n = this.behind.length ? i / parts : +(i / parts * one).toFixed(2);
        out.push(draw('text', { x, y: 18, class: 'n' }, String(n)));
      }
    }
    this.scale.replaceChildren(...out);
  }
}
