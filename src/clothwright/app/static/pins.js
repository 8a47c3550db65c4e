// Pins: they stand where a sentence names a point, and are pulled along their way.

import { draw } from './figures.js';

export class Pins {
  constructor(paper) {
    this.paper = paper;
    this.layer = draw('g');
    this.all = [];
    this.heads = new Map(); // of → g
  }

  of(name) { return this.all.find((p) => p.of === name); }

  /** Every pin at its place. Those that stay are moved, so that a hand or the focus keeps them. */
  show() {
    const { paper } = this, held = paper.pulled?.pin.of;
    const stand = this.all.filter((p) => paper.places[p.piece]);
    const names = new Set(stand.map((p) => p.of));
    for (const [of, g] of this.heads) if (!names.has(of)) { g.remove(); this.heads.delete(of); }
    for (const pin of stand) {
      const [x, y] = paper.places[pin.piece];
      if (!this.heads.has(pin.of)) this.heads.set(pin.of, this.layer.appendChild(this.head(pin)));
      const g = this.heads.get(pin.of);
      const now = {
        'aria-label': pin.name, 'aria-valuenow': pin.value, 'aria-valuetext': paper.say(pin.value),
        'aria-valuemin': pin.low, 'aria-valuemax': pin.high, transform: `translate(${pin.at[0] + x} ${pin.at[1] + y})`,
      };
      for (const [k, v] of Object.entries(now)) {
        if (v == null) g.removeAttribute(k);
        else if (g.getAttribute(k) !== String(v)) g.setAttribute(k, v);
      }
      g.classList.toggle('held', held === pin.of);
    }
  }

  head(pin) {
    return draw('g', { class: 'pin', 'data-pin': pin.of, role: 'slider', tabindex: 0 },
      draw('g', { class: 'pinhead', transform: `scale(${this.paper.px})` },
        draw('line', { x1: 0, y1: 0, x2: 9, y2: 12, class: 'shaft' }), draw('circle', { r: 16, class: 'grip' }),
        draw('circle', { r: 10, class: 'ring' }), draw('circle', { r: 6.5, class: 'head' }), draw('circle', { cx: -2, cy: -2, r: 1.8, class: 'glint' })));
  }

  scale() { for (const g of this.heads.values()) g.firstChild.setAttribute('transform', `scale(${this.paper.px})`); }
}
