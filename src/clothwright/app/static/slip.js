// The slip: sentences whose words are the controls.

import { figured, make } from './figures.js';
import { OwnSteps } from './byhand.js';
import { Tape } from './tape.js';
import { choiceDrawing } from './choices.js';
import { narrow } from './phone.js';

const PARAGRAPHS = ['Measures', 'Style', 'Seams', 'Steps', 'Cloth', 'Making', 'Fitting', 'Cost'];

export class Slip {
  /** `room` makes changes and asks; see main.js. */
  constructor(el, room) {
    this.el = el;
    this.room = room;
    this.at = 'Style';
    this.open = null; // the word in hand: {of, el (its chooser), tape}
    this.paras = new Map();
    this.build();
  }

  build() {
    this.list = make('div', { class: 'paras', tabindex: '-1' });
    for (const name of PARAGRAPHS) {
      const word = make('button', { type: 'button', class: 'subject', onclick: () => this.stand(name) }, name);
      const body = make('div', { class: 'body' });
      const para = make('section', { class: 'para', 'data-name': name, 'aria-label': name }, word, body);
      this.paras.set(name, { para, body, word, sentences: new Map() });
      this.list.append(para);
    }
    this.words = make('nav', { class: 'words', 'aria-label': 'Paragraphs' }, ...PARAGRAPHS.map((n) => make('button', { type: 'button', 'data-to': n, onclick: () => this.stand(n) }, n)));
    const line = make('form', { class: 'writing', onsubmit: (e) => this.written(e) });
    this.writing = make('input', { class: 'more', placeholder: 'and what else?', autocomplete: 'off', spellcheck: 'false', 'aria-label': 'Add to the style: write a part, such as boat neck or lining' });
    this.heard = make('div', { class: 'heard', 'aria-live': 'polite' });
    this.shelf = make('div', { class: 'shelf', hidden: true });
    this.all = make('button', { type: 'button', class: 'w ink', 'aria-expanded': 'false', onclick: () => this.showShelf(this.shelf.hidden) }, 'See all there is');
    this.writing.addEventListener('input', () => {
      this.meant = null;
      this.showShelf(false);
      clearTimeout(this.pause);
      this.pause = setTimeout(() => this.listen(), 120);
    });
    line.append(this.writing, this.all, this.heard, this.shelf);
    this.el.append(this.list, line, this.words);
    this.stand('Style', false);
    this.el.addEventListener('keydown', (e) => {
      if (e.key === 'Escape' && this.open) { e.stopPropagation(); this.close(true); }
      if (e.key === 'PageDown' || e.key === 'PageUp') {
        const i = PARAGRAPHS.indexOf(this.at) + (e.key === 'PageDown' ? 1 : -1);
        if (PARAGRAPHS[i]) { e.preventDefault(); this.stand(PARAGRAPHS[i]); this.paras.get(PARAGRAPHS[i]).word.focus(); }
      }
    });
  }

  /** Stand in a paragraph: it opens, and the table turns to what it is about. */
  stand(name, tell = true) {
    this.at = name;
    for (const [n, p] of this.paras) {
      p.para.toggleAttribute('data-on', n === name);
      p.word.setAttribute('aria-current', n === name ? 'true' : 'false');
    }
    for (const b of this.words.children) {
      b.setAttribute('aria-current', String(b.dataset.to === name));
      if (tell && narrow() && b.dataset.to === name) b.scrollIntoView({ block: 'nearest', inline: 'center' });
    }
    this.list.scrollTop = narrow() ? 0 : this.list.scrollTop;
    if (tell && !narrow()) this.paras.get(name).para.scrollIntoView({ block: 'nearest' });
    if (tell) this.room.stood(name);
  }

  /** Take what changed. */
  update(parts) {
    for (const name of PARAGRAPHS) {
      const told = parts[`slip ${name}`];
      if (told) this.paragraph(name, told);
    }
    if (this.open) this.refresh();
    if (this.told && !this.open?.tape?.pulling) this.news?.scrollIntoView({ block: 'nearest' });
    this.told = true;
    this.news = null;
  }

  paragraph(name, told) {
    const { body, sentences } = this.paras.get(name);
    const seen = new Set();
    let before = null;
    for (const s of told) {
      seen.add(s.id);
      let kept = sentences.get(s.id);
      if (!kept) {
        const el = make('div', { class: 'sentence', 'data-id': s.id });
        kept = { el, p: make('p'), rest: make('p', { class: 'rest', hidden: true }), behind: make('div', { class: 'behind' }), said: make('div') };
        el.append(kept.p, kept.rest, kept.behind, kept.said);
        sentences.set(s.id, kept);
        if (name === this.at) this.news ??= el;
      }
      const text = JSON.stringify(s);
      if (kept.text !== text) {
        kept.text = text;
        this.sentence(kept, s);
      }
      const next = before ? before.nextSibling : body.firstChild;
      if (next !== kept.el) body.insertBefore(kept.el, next);
      before = kept.el;
    }
    for (const [id, kept] of sentences) {
      if (seen.has(id)) continue;
      if (this.open && kept.el.contains(this.open.el)) this.open = null;
      kept.el.remove();
      sentences.delete(id);
    }
  }

  sentence(kept, s) {
    const focused = document.activeElement?.dataset?.of;
    const had = focused && kept.el.contains(document.activeElement);
    kept.el.classList.toggle('grave', s.grave);
    kept.p.replaceChildren(...this.runs(s.runs), ' ');
    const settings = s.rest.some((r) => r.do?.do === 'leave');
    kept.rest.replaceChildren(...(settings ? this.settings(s.rest) : this.runs(s.rest)));
    if (s.said.length > kept.said.childElementCount && kept.el.isConnected) this.news ??= kept.said;
    kept.said.replaceChildren(...s.said.map((runs) => make('p', { class: 'said' }, ...this.runs(runs))));
    if (had) kept.el.querySelector(`[data-of="${CSS.escape(focused)}"]`)?.focus();
  }

  /** The settings behind a feature's name, one on a line. */
  settings(runs) {
    const lines = [[]];
    for (const r of runs) {
      if (r === ', ' || r === '.') lines.push([]);
      else if (r !== ' ') lines.at(-1).push(r);
    }
    return lines.filter((line) => line.length).map((line) => make('span', { class: 'setting' }, ...this.runs(line)));
  }

  runs(runs) {
    const out = [];
    runs.forEach((r, i) => {
      if (typeof r !== 'string') {
        const stop = typeof runs[i + 1] === 'string' ? runs[i + 1].match(/^[.,;:]/)?.[0] : null;
        out.push(stop ? make('span', { class: 'nb' }, this.word(r), stop) : this.word(r));
      } else out.push(figured(i && typeof runs[i - 1] !== 'string' ? r.replace(/^[.,;:]/, '') : r));
    });
    return out;
  }

  word(w) {
    const opens = ['tape', 'choice', 'measure', 'write', 'rest', 'card'].includes(w.opens);
    const el = make('button', {
      type: 'button', class: `w ${w.pen}`, 'data-of': w.of, 'data-opens': w.opens, title: w.help || null,
      'aria-expanded': opens ? String(this.open?.of === w.of) : null,
      'aria-description': w.pen === 'thread' ? 'basted' : w.pen === 'pencil' && opens ? 'by rule' : null,
    });
    el.append(figured(w.say));
    el.addEventListener('click', () => this.touch(w, el));
    return el;
  }

  async touch(w, el) {
    if (w.opens === 'act') { this.close(); await this.room.change(w.do); return; }
    if (w.opens === 'seam') { this.room.seam(w.of.slice(2)); return; }
    if (w.opens === 'step') { this.stand('Steps'); return; }
    if (w.opens === 'rest' || w.opens === 'card') {
      const rest = el.closest('.sentence').querySelector('.rest');
      rest.hidden = !rest.hidden;
      el.setAttribute('aria-expanded', String(!rest.hidden));
      return;
    }
    if (this.open?.of === w.of) { this.close(); el.focus(); return; }
    const para = el.closest('.para').dataset.name;
    if (para !== this.at) this.stand(para);
    await this.openWord(w.of, el.closest('.sentence'));
  }

  /** Open a word by its name, wherever it stands. */
  async show(of) {
    const el = this.el.querySelector(`[data-of="${CSS.escape(of)}"]`);
    if (!el) return;
    const rest = el.closest('.rest');
    if (rest) rest.hidden = false;
    this.stand(el.closest('.para').dataset.name);
    if (this.open?.of !== of) await this.openWord(of, el.closest('.sentence'));
  }

  async openWord(of, sentence) {
    const behind = await this.room.ask('behind', { of });
    if (behind.is !== 'behind') return this.room.refused(behind);
    this.close();
    const slot = sentence.querySelector('.behind');
    const chooser = this.chooser(of, behind);
    slot.replaceChildren(chooser.el);
    this.open = { of, el: chooser.el, tape: chooser.tape, own: chooser.own };
    this.room.opened(of);
    for (const w of this.el.querySelectorAll(`[data-of="${CSS.escape(of)}"]`)) w.setAttribute('aria-expanded', 'true');
    (chooser.tape?.strip ?? chooser.el.querySelector('input, [aria-pressed=true], button'))?.focus({ preventScroll: true });
    chooser.el.scrollIntoView({ block: 'nearest' });
  }

  close(focus = false) {
    if (!this.open) return;
    const words = this.el.querySelectorAll(`[data-of="${CSS.escape(this.open.of)}"]`);
    for (const w of words) w.setAttribute('aria-expanded', 'false');
    this.open.el.remove();
    this.open = null;
    if (focus) words[0]?.focus();
  }

  /** What lies behind the open word changed with the rest. */
  async refresh() {
    const { of, tape } = this.open;
    if (tape?.pulling) return;
    if (this.room.paper.pulled) { // the word's number follows the pin
      const pin = this.room.paper.pins.of(of);
      if (tape && pin) tape.follow(pin.value);
      return;
    }
    const behind = await this.room.ask('behind', { of });
    if (this.open?.of !== of || behind.is !== 'behind') return;
    if (tape) tape.update(behind);
    else if (this.open.own) this.open.own.update(behind);
    else if (behind.opens === 'choice') {
      for (const b of this.open.el.querySelectorAll('[data-say]')) b.setAttribute('aria-pressed', String(b.dataset.say === behind.now));
    }
  }

  chooser(of, behind) {
    if (behind.opens === 'tape') {
      const tape = new Tape(behind, this.room.unit, {
        set: (cm, live) => this.room.set(of, cm, live),
        write: (to) => this.room.change({ do: 'set', of, to, unit: this.room.unit }),
        rule: () => this.room.change({ do: 'rule', of }),
        why: () => this.room.why(behind.key),
      });
      return { el: tape.el, tape };
    }
    if (behind.opens === 'own steps') {
      const own = new OwnSteps(this.room, behind);
      return { el: own.el, own };
    }
    if (behind.opens === 'measure') return { el: this.measure(of, behind) };
    if (behind.opens === 'write') return { el: this.line(of, behind) };
    const el = make('div', { class: 'pull' });
    const row = make('div', { class: 'choose', role: 'group', 'aria-label': behind.name });
    for (const w of behind.words) {
      const b = make('button', { type: 'button', 'data-say': w.say, 'aria-pressed': String(w.say === behind.now), onclick: () => this.room.change({ do: 'choose', of, to: w.to }) });
      b.append(choiceDrawing(of, w.say) ?? '', make('span', {}, w.say));
      row.append(b);
    }
    el.append(row);
    return { el };
  }

  /** A line to write on; blank gives the word back. */
  line(of, behind) {
    const input = make('input', { class: 'typed long', autocomplete: 'off', 'aria-label': behind.name, value: behind.typed });
    return make('form', { class: 'pull', onsubmit: (e) => { e.preventDefault(); this.room.change({ do: 'choose', of, to: input.value.trim(), unit: this.room.unit }); } },
      make('p', { class: 'line' }, behind.line), make('div', { class: 'under' }, input, make('button', { class: 'w ink' }, 'Keep it')));
  }

  measure(of, behind) {
    const input = make('input', { class: 'typed', autocomplete: 'off', 'aria-label': behind.name, value: behind.typed });
    const form = make('form', {
      class: 'pull', onsubmit: (e) => {
        e.preventDefault();
        if (input.value.trim()) this.room.change({ do: 'measure', of, to: input.value.trim(), unit: this.room.unit });
      },
    });
    form.append(
      make('p', { class: 'line' }, `${behind.name[0].toUpperCase()}${behind.name.slice(1)}: ${behind.how}.`),
      make('div', { class: 'under' }, input, make('button', { class: 'w ink' }, 'Keep it')),
    );
    return form;
  }

  async listen() {
    const text = this.writing.value;
    if (!text.trim()) { this.heard.replaceChildren(); this.meant = null; return; }
    const heard = await this.room.ask('write', { text });
    if (this.writing.value !== text) return;
    this.meant = heard;
    this.heard.replaceChildren(
      make('p', {}, heard.do ? 'Enter adds: ' : '', figured(heard.say ?? ''), heard.but ? make('small', {}, heard.but) : null),
      this.offered(heard.offers ?? []),
    );
  }

  /** Features that can be added, each with what it asks for or does not go with. */
  offered(offers) {
    return make('ul', { class: 'offers' }, ...offers.map((o) => make('li', {},
      make('button', { type: 'button', class: `w ${o.against ? 'pencil' : 'ink'}`, title: o.help, onclick: () => this.add(o) }, o.say),
      o.against || o.asks ? make('small', {}, o.against ?? o.asks) : null)));
  }

  /** Everything that could be added, under the parts of a garment. */
  async showShelf(on) {
    this.all.setAttribute('aria-expanded', String(on));
    this.shelf.hidden = !on;
    this.shelf.replaceChildren();
    if (!on) return;
    const { parts } = await this.room.ask('shelf');
    this.shelf.replaceChildren(...Object.entries(parts ?? {}).map(([part, offers]) => {
      const fit = offers.filter((o) => !o.against).length;
      return make('details', {}, make('summary', {}, part, make('small', {}, `${fit || 'none'} of ${offers.length} fit`)), this.offered(offers));
    }));
  }

  async add(offer) {
    this.meant = null;
    this.writing.value = '';
    this.heard.replaceChildren();
    this.showShelf(false);
    await this.room.change({ do: 'add', kind: offer.kind, with: offer.with });
  }

  async written(e) {
    e.preventDefault();
    if (!this.meant) await this.listen();
    const meant = this.meant;
    if (meant?.show) {
      this.el.querySelector(`[data-of="${CSS.escape(meant.show)}"]`)?.focus();
      return;
    }
    if (!meant?.do) return;
    this.writing.value = '';
    this.heard.replaceChildren();
    this.meant = null;
    for (const op of meant.do) await this.room.change({ ...op, unit: this.room.unit });
  }
}
