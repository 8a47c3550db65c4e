// One slip: the sentences at the left, the table beside them.

import { Beside } from './beside.js';
import { Cloth } from './cloth.js';
import { Cost } from './cost.js';
import { figured, make, say } from './figures.js';
import { Making } from './making.js';
import { Notes } from './notes.js';
import { Paper } from './paper.js';
import { Phone } from './phone.js';
import { Slip } from './slip.js';
import { Steps } from './steps.js';
import { Walk } from './walk.js';
import { Wire } from './wire.js';

const $ = (q) => document.querySelector(q);
const main = $('#slip');

const WORKED = new Set(['lay', 'laying', 'slip Cloth', 'slip Making', 'slip Cost']); // what has its own voice

class Room {
  constructor() {
    this.base = main.dataset.base;
    this.unit = localStorage.getItem('unit') ?? main.dataset.unit;
    this.phone = new Phone(this);
    this.paper = new Paper($('#sheet'), this);
    this.walker = new Walk(this.paper, this);
    this.notes = new Notes($('#notes'), this);
    this.beside = new Beside($('#notes'), this);
    this.steps = new Steps($('#steps'), this);
    this.cloth = new Cloth($('#cloth'), this);
    this.making = new Making($('#making'), this);
    this.cost = new Cost($('#cost'), this);
    this.slip = new Slip($('#sentences'), this);
    const url = new URL(`${this.base}/table`, location.href);
    url.protocol = url.protocol.replace('http', 'ws');
    this.wire = new Wire(url, this.unit, (parts, m) => this.update(parts, m), (up, n) => this.line(up, n));
    this.acts();
  }

  get grain() { return this.unit === 'in' ? 2.54 / 16 : 0.1; }

  /** While a number is pulled the table stays where it is. */
  get pulling() { return Boolean(this.paper.pulled || this.slip?.open?.tape?.pulling); }

  /** What changed: the paper is told first, then all else. */
  update(parts, message) {
    this.paper.update(parts);
    this.redrawn ||= Object.keys(parts).some((p) => p.startsWith('piece '));
    if (message.is === 'paper') return;
    const { redrawn } = this;
    this.redrawn = false;
    this.paper.tell();
    this.slip.update(parts);
    this.onTable();
    if (parts.hand) this.hand(parts.hand);
    if (parts.head) this.head(parts.head);
    if (parts.findings) { this.found = parts.findings; this.notes.findings(parts.findings, this.paper.marks); this.phone.marked(this.paper.marks.places.length); }
    if (this.slip.at === 'Steps' && redrawn) this.steps.open();
    this.worked(parts, redrawn);
    if (message.refused) this.refused(message.refused);
    else if (redrawn || !Object.keys(parts).length || Object.keys(parts).some((p) => !WORKED.has(p))) this.spoken();
    document.body.dataset.revision = message.revision;
  }

  /** What changed of the cloth, the making, the cost, where she stands at it. */
  worked(parts, redrawn) {
    const { at } = this.slip, drawn = redrawn || 'slip Style' in parts || 'slip Measures' in parts;
    if ('lay' in parts) this.cloth.update(parts.lay);
    if (at === 'Making' && (drawn || parts['slip Making'])) this.making.open();
    if (at === 'Cost' && (drawn || parts.laying || parts['slip Cost'] || parts['slip Cloth'])) this.cost.open();
  }

  onTable() {
    $('#on').textContent = `${this.paper.pieces.size} pieces`;
    $('#whole').textContent = this.paper.whole.on ? 'the whole body' : 'half the body';
    $('#unfold').setAttribute('aria-pressed', String(this.paper.whole.on));
  }

  /** The other half is laid beside the first, or folded away. */
  unfold(on) {
    this.phone.rest(on ? 'head' : 'half');
    this.paper.whole.unfold(on);
    this.onTable();
    this.say(on ? 'The whole body, unfolded on the centre front.' : 'Half the body.');
  }

  head(h) {
    $('#client').textContent = h.client;
    $('#garment').textContent = [h.garment, h.wanted && `wanted ${h.wanted}`].filter(Boolean).join(', ');
  }

  hand(h) {
    this.canUnpick = h.unpick;
    $('#unpick').disabled = !h.unpick && !this.cloth.data?.moves;
    $('#again').disabled = !h.again;
    document.body.classList.toggle('basting', h.basting);
    const b = $('#basted');
    b.hidden = !h.basting;
    b.querySelector('span').textContent = h.tried ? `${h.tried === 1 ? 'One change is' : `${h.tried} changes are`} basted, not kept.` : 'Basting: what you change now is tried, not kept.';
    $('#baste').setAttribute('aria-pressed', String(h.basting));
    this.saidLast = h.said;
  }

  spoken() {
    const bad = (this.found ?? []).filter((f) => f.grave).length;
    const seams = [...this.paper.seams.values()].filter((s) => !s.twin).length;
    const meet = this.paper.svg.classList.contains('lifted') ? 'The order cannot be drawn yet.' : bad ? `${bad} to mend.` : `All ${seams} seams meet.`;
    this.say([this.saidLast && `${this.saidLast.replace(/\.$/, '')}.`, meet].filter(Boolean).join(' '));
  }

  /** One polite line that speaks a moment after the last change. */
  say(text) {
    clearTimeout(this.saying);
    $('#edge-live').textContent = text;
    this.saying = setTimeout(() => { $('#live').textContent = text; }, 600);
  }

  line(up, waiting) {
    document.body.classList.toggle('lost', !up);
    if (!up) this.say(waiting ? `The workroom does not answer; ${waiting} ${waiting === 1 ? 'change waits' : 'changes wait'} here.` : 'The workroom does not answer; reading goes on.');
    else if (this.wasLost) this.say('The workroom answers again.');
    this.wasLost = !up;
  }

  /** Take back the last move of a piece on the cloth, or else of the order. */
  unpick() {
    if (this.slip.at === 'Cloth' && this.cloth.data?.moves) return this.cloth.hand('back');
    return this.change({ do: 'unpick' });
  }

  // -- changes ---------------------------------------------------------------------
  async change(op) {
    $('#refusal').hidden = true;
    document.body.classList.add('waiting');
    const refusal = await this.wire.change(op);
    document.body.classList.remove('waiting');
    return refusal;
  }

  set(of, cm, live) { return this.wire.change({ do: 'set', of, cm, live }); }

  ask(what, more) { return this.wire.ask(what, more); }

  pull(pin, cm, live) {
    const whole = Math.round(cm / this.grain) * this.grain;
    const v = Math.min(pin.high ?? Infinity, Math.max(pin.low ?? 0, whole));
    if (live && Math.abs(v - (this.pulledTo ?? NaN)) < 1e-9) return;
    this.pulledTo = live ? v : undefined;
    this.set(pin.of, v, live);
  }

  refused(r) {
    const box = $('#refusal');
    box.hidden = false;
    box.replaceChildren(figured(r.say));
    if (r.nearest) {
      const { say: words, ...op } = r.nearest;
      const b = make('button', { type: 'button', class: 'w ink', onclick: () => this.change(op) });
      b.append(figured(words));
      box.append(' ', b, '.');
    }
    box.append(' ', make('button', { type: 'button', class: 'w pencil', onclick: () => { box.hidden = true; } }, 'Leave it'));
    this.say(r.say);
  }

  async why(of) {
    const mine = this.inHand = {};
    const answer = await this.ask('why', { of });
    if (mine !== this.inHand) return; // she has touched something else meanwhile
    if (answer.is === 'why') this.notes.why(answer);
    else this.refused(answer);
  }

  // -- the table ---------------------------------------------------------------------
  touched(id) {
    this.slip.open?.own?.touched(id);
    this.walker.stop();
    this.inHand = {};
    this.notes.edge(this.paper, id);
    this.phone.rest(id ? 'head' : 'half');
    if (id) this.say(`${this.paper.edge(id).hit.getAttribute('aria-label')}`);
  }

  edgeIs(of) { return this.paper.selected === of; }

  walk(code) {
    this.phone.rest('head');
    return this.walker.go(code);
  }

  /** A seam's sentence was touched: take its first edge in hand and walk it. */
  seam(code) {
    const s = this.paper.seams.get(code);
    if (!s) return;
    this.paper.select(s.left[0][0]);
    this.walk(code);
  }

  async walkAll() {
    for (const [code, s] of this.paper.seams) {
      if (s.twin) continue;
      await this.walk(code);
      if (!this.walker.now) return;
      if (!s.holds) return;
      await new Promise((r) => setTimeout(r, 900));
      if (!this.walker.now) return;
    }
    this.walker.stop();
  }

  framed(code) { this.phone.framed(code); }

  /** A word is open: where a pin stands for it, its piece is framed. */
  opened(of) {
    this.phone.rest('half');
    const pin = this.paper.pins.of(of);
    if (pin) this.paper.frame(pin.piece);
  }

  showWord(of) { this.slip.show(of); }

  /** Letters that act while the table has the focus; true when one did. */
  key(k) {
    const id = this.paper.selected;
    if (k === 'd' || k === 'D') { $('#dims').click(); return true; }
    if ((k === 'y' || k === 'Y') && id) { this.why(id); return true; }
    if ((k === 'w' || k === 'W') && id) {
      const code = this.paper.edge(id).data.seams.find((c) => !this.paper.seams.get(c)?.twin);
      if (code) this.walk(code);
      return true;
    }
    return false;
  }

  stood(name) {
    document.body.dataset.at = name;
    this.saidLast = '';
    this.spoken(); // what was said elsewhere is over
    this.phone.rest(['Steps', 'Cloth', 'Making', 'Cost'].includes(name) ? 'head' : 'half');
    if (name === 'Steps') { this.walker.stop(); this.steps.open(); }
    if (name === 'Cloth') this.cloth.open();
    else this.cloth.leave();
    if (name === 'Making') this.making.open();
    if (name === 'Cost') this.cost.stand();
  }

  scaled(px, x) {
    const rule = $('#rule');
    const unitMm = this.unit === 'in' ? 25.4 : 10, parts = this.unit === 'in' ? 4 : 1;
    const wide = rule.getBoundingClientRect().width;
    const ticks = [];
    const step = unitMm / parts / px;
    const every = [1, 2, 5, 10, 20, 50].find((k) => k * unitMm / px > 40) ?? 100;
    const fine = step > 4 ? 1 : parts;
    for (let i = 0; i * step < wide && i < 4000; i += fine) {
      const whole = i % parts === 0;
      ticks.push(`M${(i * step).toFixed(1)} 0v${whole ? ((i / parts) % every ? 9 : 13) : 6}`);
    }
    const svg = $('#rule svg');
    const numbers = [];
    for (let n = every; n * unitMm / px < wide - 40; n += every) {
      const t = document.createElementNS('http://www.w3.org/2000/svg', 'text');
      t.setAttribute('x', n * unitMm / px);
      t.setAttribute('y', 25);
      t.textContent = n;
      numbers.push(t);
    }
    const path = document.createElementNS('http://www.w3.org/2000/svg', 'path');
    path.setAttribute('d', ticks.join(''));
    svg.replaceChildren(path, ...numbers);
  }

  // -- words at the head of the table ---------------------------------------------------
  acts() {
    $('#unpick').addEventListener('click', () => this.unpick());
    $('#again').addEventListener('click', () => this.change({ do: 'again' }));
    $('#baste').addEventListener('click', () => this.change({ do: document.body.classList.contains('basting') ? 'stitch' : 'baste' }));
    $('#stitch').addEventListener('click', () => this.change({ do: 'stitch' }));
    $('#unbaste').addEventListener('click', () => this.change({ do: 'unpick' }));
    $('#walk-all').addEventListener('click', () => this.walkAll());
    $('#dims').addEventListener('click', (e) => {
      const on = e.currentTarget.getAttribute('aria-pressed') !== 'true';
      e.currentTarget.setAttribute('aria-pressed', String(on));
      this.paper.showDimensions(on);
    });
    for (const b of [$('#whole'), $('#unfold')]) b.addEventListener('click', () => this.unfold(!this.paper.whole.on));
    $('#unit').addEventListener('click', () => {
      this.unit = this.unit === 'in' ? 'cm' : 'in';
      localStorage.setItem('unit', this.unit);
      this.wire.unit = this.unit;
      this.slip.close();
      this.wire.change({ do: 'unit', to: this.unit });
      this.paper.retell();
      if (this.paper.selected) this.notes.edge(this.paper, this.paper.selected);
      if (this.paper.view) this.paper.show(this.paper.view, this.paper.moved);
    });
    addEventListener('keydown', (e) => {
      const typing = e.target.matches?.('input, textarea, select');
      if ((e.ctrlKey || e.metaKey) && e.key.toLowerCase() === 'z' && !typing) {
        e.preventDefault();
        if (e.shiftKey) this.change({ do: 'again' }); else this.unpick();
      } else if (e.key === 'F6') {
        e.preventDefault();
        if ($('#sentences').contains(document.activeElement)) ({ Cloth: this.cloth.first(), Making: $('#making'), Cost: $('#cost') }[this.slip.at] ?? $('#sheet')).focus();
        else this.slip.paras.get(this.slip.at).word.focus();
      } else if (e.key === '/' && !typing) {
        e.preventDefault();
        this.slip.stand('Style');
        this.slip.writing.focus();
      } else if (e.key === ' ' && this.walker.now && !typing) {
        e.preventDefault();
        this.walker.hold();
      } else if (e.key === '.' && !typing) document.body.classList.add('beneath');
      else if (e.key === 'Escape') { this.walker.stop(); this.paper.marks.close(true); }
    });
    addEventListener('keyup', (e) => { if (e.key === '.') document.body.classList.remove('beneath'); });
    const hold = $('#unpick');
    hold.addEventListener('pointerdown', () => { this.holding = setTimeout(() => document.body.classList.add('beneath'), 400); });
    for (const t of ['pointerup', 'pointerleave', 'pointercancel']) hold.addEventListener(t, () => { clearTimeout(this.holding); document.body.classList.remove('beneath'); });
  }
}

window.room = new Room();
