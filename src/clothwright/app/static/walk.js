// Walking a seam: the mate comes over, lies on the start and rolls along the stitch line.

import { draw, say, still } from './figures.js';
import { capital } from './paper.js';
import { pieceOf } from './piece.js';

const TIME = 5000, COMING = 0.2;

/** One side of a seam as a line that can be measured along, in table coordinates. */
class Side {
  constructor(paper, runs) {
    this.runs = runs.map(([id, back]) => {
      const code = pieceOf(id);
      const path = paper.edge(id).glow, [x, y] = paper.places[code];
      return { id, code, path, back, x, y, length: path.getTotalLength() };
    });
    this.length = this.runs.reduce((sum, r) => sum + r.length, 0);
    this.codes = [...new Set(this.runs.map((r) => r.code))];
  }

  /** Point, heading and run at a length along the side. */
  at(s) {
    let rest = Math.max(0, Math.min(this.length, s));
    let run = this.runs.at(-1);
    for (const r of this.runs) {
      if (rest <= r.length + 1e-6) { run = r; break; }
      rest -= r.length;
    }
    rest = Math.min(rest, run.length);
    const way = (t) => run.path.getPointAtLength(run.back ? run.length - t : t);
    const p = way(rest), a = way(Math.max(0, rest - 0.6)), b = way(Math.min(run.length, rest + 0.6));
    return { x: p.x, y: p.y, turn: Math.atan2(b.y - a.y, b.x - a.x), run };
  }
}

export class Walk {
  constructor(paper, room) { this.paper = paper; this.room = room; }

  /** Walk a seam by its code; resolves when it is over or stopped. */
  async go(code) {
    this.stop();
    const { paper } = this, seam = paper.seams.get(code);
    if (!seam || seam.twin) return;
    let fixed = new Side(paper, seam.left), moving = new Side(paper, seam.right);
    let turned = false;
    if (fixed.codes.length > moving.codes.length) { [fixed, moving] = [moving, fixed]; turned = true; }
    const g = draw('g', { class: 'walk-marks' });
    const self = fixed.codes.some((c) => moving.codes.includes(c));
    this.now = { seam, fixed, moving, turned, g, self };
    paper.svg.classList.add('walking');
    for (const c of [...fixed.codes, ...moving.codes]) paper.pieces.get(c).g.classList.add('walks');
    for (const c of moving.codes) {
      const p = paper.pieces.get(c);
      p.walking = true;
      if (!self) paper.layer.append(p.g);
    }
    paper.over.replaceChildren(g);
    this.room.say(`Walking: ${seam.name}, from the ${seam.start || 'start'}.`);
    if (still()) await this.stills(); else await this.roll();
  }

  async stills() {
    const run = this.now;
    const marks = this.marks();
    for (const s of [0, marks[Math.floor(marks.length / 2)] ?? run.fixed.length / 2, run.fixed.length]) {
      if (this.now !== run) return;
      this.show(s, 1);
      await new Promise((r) => setTimeout(r, 1200));
    }
    if (this.now === run) this.end();
  }

  roll() {
    const run = this.now;
    return new Promise((done) => {
      let spent = 0, last = performance.now();
      const frame = (t) => {
        if (this.now !== run) return done();
        if (!this.held) spent += t - last;
        last = t;
        const u = Math.min(1, spent / TIME);
        const come = Math.min(1, u / COMING), s = Math.max(0, (u - COMING) / (1 - COMING));
        this.show(s * Math.max(run.fixed.length, run.moving.length), come * come * (3 - 2 * come));
        if (u < 1) requestAnimationFrame(frame);
        else { this.end(); done(); }
      };
      requestAnimationFrame(frame);
    });
  }

  marks() {
    const { seam, turned } = this.now;
    return seam.notches.map((n) => 10 * n[turned ? 1 : 0]);
  }

  /** The mate at a length `s` mm along, `come` of the way over (0 to 1). */
  show(s, come) {
    const { fixed, moving, g, seam, turned, self } = this.now, { paper } = this;
    const a = fixed.at(s), b = moving.at(s);
    if (!self) {
      const home = { x: b.run.x, y: b.run.y };
      let turn = a.turn - b.turn;
      turn = Math.atan2(Math.sin(turn), Math.cos(turn)) * come;
      const goal = { x: a.x + a.run.x, y: a.y + a.run.y }, from = { x: b.x + home.x, y: b.y + home.y };
      const x = goal.x * come + from.x * (1 - come), y = goal.y * come + from.y * (1 - come);
      for (const c of moving.codes) if (c !== b.run.code) { const p = paper.pieces.get(c); p.walking = false; paper.place(c); p.walking = true; }
      paper.pieces.get(b.run.code).g.setAttribute('transform', `translate(${x} ${y}) rotate(${turn * 180 / Math.PI}) translate(${-b.x} ${-b.y})`);
    }
    const pricks = [0, ...seam.notches.map((n) => 10 * n[turned ? 1 : 0]), fixed.length]
      .filter((m) => m <= s + 0.5)
      .map((m) => { const p = fixed.at(m); return draw('circle', { class: 'prick', cx: p.x + p.run.x, cy: p.y + p.run.y, r: 4 * paper.px }); });
    g.replaceChildren(...pricks);
  }

  end() {
    const { fixed, moving, seam, g } = this.now, { paper } = this;
    const gap = (moving.length - fixed.length) / 10, e = fixed.at(fixed.length);
    const told = paper.apart(seam);
    const at = { x: e.x + e.run.x, y: e.y + e.run.y };
    const flag = draw('g', { class: 'flag', transform: `translate(${at.x} ${at.y}) scale(${paper.px})` });
    const text = draw('text', { y: 36 }, told);
    flag.append(draw('rect', { x: -told.length * 4.2 - 10, y: 18, width: told.length * 8.4 + 20, height: 28, rx: 3 }), text);
    if (Math.abs(gap) > 0.02) {
      const over = Math.abs(gap) * 10;
      const dx = Math.cos(e.turn) * over, dy = Math.sin(e.turn) * over, nx = -Math.sin(e.turn) * 14 * paper.px, ny = Math.cos(e.turn) * 14 * paper.px;
      g.append(draw('path', { class: 'gap', d: `M${at.x - nx} ${at.y - ny}L${at.x + nx} ${at.y + ny}M${at.x + dx - nx} ${at.y + dy - ny}L${at.x + dx + nx} ${at.y + dy + ny}` }));
    }
    g.append(flag);
    this.room.say(`${capital(seam.name)}: ${say(seam.lengths[0], this.room.unit)} and ${say(seam.lengths[1], this.room.unit)}. ${told} ${seam.holds ? 'The seam meets.' : 'It does not meet.'}`);
  }

  hold() { if (this.now) this.held = !this.held; return Boolean(this.now); }

  stop() {
    if (!this.now) return;
    const { paper } = this;
    this.now = null;
    this.held = false;
    paper.svg.classList.remove('walking');
    for (const p of paper.pieces.values()) { p.walking = false; p.g.classList.remove('walks'); }
    paper.placeAll();
    paper.select(paper.selected, false);
  }
}
