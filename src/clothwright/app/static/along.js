// A tape laid along an edge, with real figures and a red mark at its end.

import { draw } from './figures.js';

/** The tape along a path that is `length` cm long, from its end when it is walked
 *  `back`; `px` is mm of paper in a pixel. */
export function tapeAlong(path, length, unit, px, x, y, back = false) {
  const whole = path.getTotalLength(), wide = 15 * px, n = Math.max(8, Math.ceil(whole / 4));
  const at = (s) => {
    const t = Math.max(0, Math.min(whole, s));
    const p = path.getPointAtLength(t), a = path.getPointAtLength(Math.max(0, t - 0.5)), b = path.getPointAtLength(Math.min(whole, t + 0.5));
    const l = Math.hypot(b.x - a.x, b.y - a.y) || 1;
    // outside lies to the left of an edge that runs clockwise
    return { x: p.x, y: p.y, nx: (b.y - a.y) / l, ny: -(b.x - a.x) / l };
  };
  const inner = [], outer = [];
  for (let i = 0; i <= n; i++) {
    const p = at(whole * i / n);
    inner.push(`${p.x.toFixed(2)} ${p.y.toFixed(2)}`);
    outer.unshift(`${(p.x + p.nx * wide).toFixed(2)} ${(p.y + p.ny * wide).toFixed(2)}`);
  }
  const g = draw('g', { class: 'tape', transform: `translate(${x} ${y})`, 'aria-hidden': 'true' });
  g.append(draw('path', { class: 'tape-band', d: `M${inner.join('L')}L${outer.join('L')}Z` }));
  const unitMm = unit === 'in' ? 25.4 : 10, parts = unit === 'in' ? 4 : 2;
  const scale = length > 0 ? whole / (length * 10) : 1;
  const every = unit === 'in' ? 1 : unitMm / px < 18 ? 5 : 1;
  for (let i = 1; i * unitMm / parts * scale <= whole + 1e-6; i++) {
    const s = i * unitMm / parts * scale, p = at(back ? whole - s : s), k = i % parts === 0 ? 0.5 : 0.28;
    g.append(draw('line', { class: 'tick', x1: p.x, y1: p.y, x2: p.x + p.nx * wide * k, y2: p.y + p.ny * wide * k }));
    if (i % parts === 0 && (i / parts) % every === 0) {
      const turn = Math.atan2(p.nx, -p.ny) * 180 / Math.PI;
      g.append(draw('text', { class: 'n', transform: `translate(${p.x + p.nx * wide * 0.74} ${p.y + p.ny * wide * 0.74}) rotate(${turn})` }, String(i / parts)));
    }
  }
  const e = at(back ? 0 : whole);
  g.append(draw('line', { class: 'end', x1: e.x - e.nx * wide * 0.4, y1: e.y - e.ny * wide * 0.4, x2: e.x + e.nx * wide * 1.25, y2: e.y + e.ny * wide * 1.25 }));
  return g;
}
