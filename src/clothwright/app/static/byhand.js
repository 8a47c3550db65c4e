// Steps by hand: those taken, and a form for the next; an edge touched on the table
// goes into the place that is being filled in.

import { figured, make } from './figures.js';

const WORDS = {
  cut: 'Cut a piece', tape: 'Tape a seam', spread: 'Spread a piece', redraw: 'Redraw edges',
  trace: 'Trace a piece', move: 'Move a piece', unfold: 'Unfold a piece',
};

const option = (value, text, now) => make('option', { value, selected: value === now }, text);

export class OwnSteps {
  /** `room` makes changes; `behind` is what the server tells of the steps. */
  constructor(room, behind) {
    this.room = room;
    this.behind = behind;
    this.word = 'cut';
    this.el = make('div', { class: 'pull own' });
    this.show();
  }

  update(behind) { this.behind = behind; this.show(); }

  get piece() { return this.behind.pieces?.find((p) => p.code === this.code) ?? this.behind.pieces?.[0]; }

  show() {
    const { steps } = this.behind;
    const list = make('ol', { class: 'taken' }, ...steps.map((s, i) => {
      const said = make('li', {});
      said.append(figured(s.say), ' ', make('button', {
        type: 'button', class: 'w pencil', 'aria-label': `Take out step ${i + 1}`,
        onclick: () => this.keep(steps.filter((_, k) => k !== i).map((k) => k.step)),
      }, 'Take it out'));
      return said;
    }));
    this.el.replaceChildren(list, this.form(), ...(steps.length ? [this.naming()] : []));
  }

  keep(steps) { return this.room.change({ do: 'own steps', steps }); }

  naming() {
    const name = make('input', { class: 'typed', 'aria-label': 'Name for these steps', placeholder: 'a name', autocomplete: 'off' });
    return make('form', {
      class: 'under', onsubmit: (e) => { e.preventDefault(); this.room.change({ do: 'name steps', name: name.value }); },
    }, 'Keep these steps in the house rules as ', name, make('button', { class: 'w ink' }, 'Keep them'));
  }

  form() {
    if (!this.behind.pieces) return make('p', {}, 'The next step waits until the order can be drawn.');
    this.fields = [];
    const word = this.select('What to do', Object.entries(WORDS), this.word, (v) => { this.word = v; this.show(); });
    const parts = [word];
    if (this.word !== 'tape') {
      const pieces = this.behind.pieces.filter((p) => this.word !== 'unfold' || p.fold).map((p) => [p.code, `${p.name} (${p.code})`]);
      parts.push(this.select('Piece', pieces, this.piece?.code, (v) => { this.code = v; this.show(); }));
    }
    parts.push(...this.rest(), make('button', { class: 'w ink' }, 'Take this step'));
    return make('form', {
      class: 'next', 'aria-label': 'The next step', onsubmit: (e) => { e.preventDefault(); this.take(); },
    }, ...parts);
  }

  rest() {
    const edges = this.piece.edges.map((e) => [e, e]);
    const length = (key, label) => this.typed(key, label, 'such as 3 or B/24');
    const place = (key, label) => this.place(key, label);
    const news = () => this.typedPair('new', 'Code and name of the new piece');
    switch (this.word) {
      case 'cut': return [place('from', 'From'), place('to', 'To'), length('bow', 'Bowed to the right by'), this.picked('keeps', 'The part that stays has the edge', edges), news(), this.typed('edge', 'The new edge is called', 'line')];
      case 'tape': return [this.picked('seam', 'Seam', this.behind.seams)];
      case 'spread': return [place('from', 'From'), place('to', 'To'), length('by', 'Opened by'), length('by_end', 'and at its end by'), this.picked('turns', 'The part that turns has the edge', edges), this.taken(['flare', 'gathers', 'ease'])];
      case 'redraw': return [this.run(edges), this.corner(), length('bow', 'Bowed to the right by'), this.taken(['', 'gathers', 'ease'])];
      case 'trace': return [news(), this.many('sewn', 'Sewn along', edges)];
      case 'move': return [length('right', 'To the right by'), length('down', 'Down by'), this.typed('turn', 'Turned by degrees, clockwise', '0', (v) => Number(v))];
      default: return [];
    }
  }

  // -- fields: each gives its part of the step --------------------------------------
  select(label, options, now, change) {
    const el = make('select', { 'aria-label': label, onchange: (e) => change?.(e.target.value) }, ...options.map(([v, t]) => option(v, t, now)));
    return make('label', {}, `${label} `, el);
  }

  picked(key, label, options) {
    const el = this.select(label, options);
    this.fields.push((step) => { step[key] = el.querySelector('select').value; });
    return el;
  }

  typed(key, label, hint, read = (v) => v) {
    const el = make('input', { class: 'typed', 'aria-label': label, placeholder: hint, autocomplete: 'off' });
    this.fields.push((step) => { if (el.value.trim()) step[key] = read(el.value.trim()); });
    return make('label', {}, `${label} `, el);
  }

  typedPair(key, label) {
    const code = make('input', { class: 'typed short', 'aria-label': 'Code of the new piece', placeholder: 'FY', autocomplete: 'off' });
    const name = make('input', { class: 'typed', 'aria-label': 'Name of the new piece', placeholder: 'Front yoke', autocomplete: 'off' });
    this.fields.push((step) => { step[key] = [code.value.trim(), name.value.trim()]; });
    return make('label', {}, `${label} `, code, ' ', name);
  }

  taken(words) {
    const el = this.select('What is opened is taken up as', words.map((w) => [w, w || 'nothing']));
    this.fields.push((step) => { const v = el.querySelector('select').value; if (v) step.taken = v; });
    return el;
  }

  many(key, label, options) {
    const boxes = options.map(([v, t]) => make('label', { class: 'tick' }, make('input', { type: 'checkbox', value: v }), ` ${t}`));
    this.fields.push((step) => { step[key] = boxes.map((b) => b.firstChild).filter((b) => b.checked).map((b) => b.value); });
    return make('fieldset', {}, make('legend', {}, label), ...boxes);
  }

  /** A run of neighbouring edges, clockwise. */
  run(edges) {
    const first = this.select('First edge, clockwise', edges), last = this.select('Last edge', edges);
    this.fields.push((step) => {
      const names = edges.map(([e]) => e);
      const i = names.indexOf(first.querySelector('select').value), j = names.indexOf(last.querySelector('select').value);
      step.edges = j >= i ? names.slice(i, j + 1) : [...names.slice(i), ...names.slice(0, j + 1)];
    });
    this.hear = (edge) => { for (const f of [first, last]) f.querySelector('select').value = edge; };
    return make('div', {}, first, last);
  }

  corner() {
    const el = this.select('Ruled to the mark', [['', 'none'], ...this.behind.marks.map((m) => [m, m])], '');
    this.fields.push((step) => {
      const mark = el.querySelector('select').value;
      if (mark) { step.over = [{ mark }]; step.cornered = step.edges.length === 2; }
    });
    return el;
  }

  place(key, label) {
    const { edges } = this.piece;
    const edge = make('select', { 'aria-label': `${label}, edge or mark` },
      make('optgroup', { label: 'Along an edge' }, ...edges.map((e) => option(`e:${e}`, e))),
      make('optgroup', { label: 'A mark' }, ...this.behind.marks.map((m) => option(`m:${m}`, m))));
    const end = make('select', { 'aria-label': `${label}, measured from` });
    const along = make('input', { class: 'typed', 'aria-label': `${label}, how far`, placeholder: '3, B/24 or half', autocomplete: 'off' });
    const more = make('span', {}, ', from the ', end, ' measure ', along);
    const ends = () => {
      const name = edge.value.slice(2), i = edges.indexOf(name);
      more.hidden = edge.value.startsWith('m:');
      end.replaceChildren(...(i < 0 ? [] : [edges.at(i - 1), edges[(i + 1) % edges.length]]).map((e) => option(e, e)));
    };
    edge.addEventListener('change', ends);
    ends();
    const field = make('fieldset', { class: 'place', onfocusin: () => { this.hear = (name) => { edge.value = `e:${name}`; ends(); }; } }, make('legend', {}, label), edge, more);
    this.fields.push((step) => {
      const name = edge.value.slice(2);
      if (edge.value.startsWith('m:')) { step[key] = { mark: name }; return; }
      const far = along.value.trim();
      const share = { half: '1/2', 'a third': '1/3', 'a quarter': '1/4', 'two thirds': '2/3' }[far.toLowerCase()];
      step[key] = { edge: name, from: end.value, ...(share ? { share } : { along: far || '0' }) };
    });
    return field;
  }

  /** An edge was touched on the table. */
  touched(id) {
    const [code, ...name] = (id ?? '').split('.');
    if (code === this.piece?.code && name.length) this.hear?.(name.join('.'));
  }

  take() {
    const step = { do: this.word };
    if (this.word !== 'tape') step.piece = this.piece.code;
    for (const f of this.fields) f(step);
    return this.keep([...this.behind.steps.map((s) => s.step), step]);
  }
}
