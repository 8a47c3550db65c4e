// The other half of the body, unfolded on the centre front.

import { draw } from './figures.js';

export class Whole {
  constructor(paper) {
    this.paper = paper;
    this.on = false;
    this.rows = [];
    this.layer = draw('g', { class: 'other-half', 'aria-hidden': 'true' });
    this.box = null;
  }

  /** Where a row of pieces folds: at the front's fold, else beside its last piece. */
  axis(row) {
    const { pieces, places } = this.paper;
    const code = row.at(-1), { data, edges } = pieces.get(code);
    const fold = [...edges.values()].find((e) => e.data.is === 'fold');
    if (!fold) return places[code][0] + data.box[0] + data.box[2] + 15;
    const b = fold.hit.getBBox();
    return places[code][0] + b.x + b.width;
  }

  lay() {
    const { pieces, places } = this.paper;
    if (!this.on && this.box === null) return;
    this.layer.replaceChildren();
    this.box = null;
    if (!this.on) return;
    let right = -Infinity;
    for (const row of this.rows.map((r) => r.filter((c) => pieces.has(c) && places[c])).filter((r) => r.length)) {
      const x = this.axis(row);
      for (const code of row) {
        const [px, py] = places[code], { g, data } = pieces.get(code);
        const turned = draw('g', { class: 'piece', transform: `translate(${2 * x - px} ${py}) scale(-1 1)` });
        for (const part of g.querySelectorAll('.cutout, .line')) turned.append(part.cloneNode());
        this.layer.append(turned);
        right = Math.max(right, 2 * x - px - data.box[0]);
      }
    }
    this.box = right;
  }

  unfold(on) {
    if (on) this.from = this.paper.framed;
    this.on = on;
    this.paper.svg.classList.toggle('unfolded', on);
    this.lay();
    this.paper.moved = false;
    this.paper.framed = on ? null : this.from ?? null;
    this.paper.room.framed(this.paper.framed);
    this.paper.fit();
  }
}
