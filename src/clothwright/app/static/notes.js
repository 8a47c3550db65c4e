// Notes pinned to the table: an edge in hand, a thread of reasons, findings, a step.

import { draw, figured, make } from './figures.js';
import { capital } from './paper.js';
import { pieceOf } from './piece.js';

const KNOTS = {
  tape: 'M8 1.5a6.5 6.5 0 1 0 .01 0M8 4.5v4l3 2',
  guess: 'M8 1.5a6.5 6.5 0 1 0 .01 0M6 6.5a2 2 0 1 1 2.6 1.9c-.6.2-.6.6-.6 1.2M8 11.6v.4',
  ruler: 'M1.5 5h13v6h-13zM4.5 5v3M8 5v4M11.5 5v3',
  pen: 'M3 13l1-4 7-7 3 3-7 7z',
};

const knot = (kind) => draw('svg', { width: 16, height: 16, 'aria-hidden': 'true', class: `knot ${kind}` }, draw('path', { d: KNOTS[kind] ?? KNOTS.ruler }));

export class Notes {
  constructor(el, room) { this.el = el; this.room = room; this.thread = null; }

  /** The note of the edge in hand. */
  edge(paper, id) {
    this.thread = null;
    if (!id) { this.el.querySelector('.note.a')?.remove(); return; }
    const { data } = paper.edge(id), piece = paper.pieces.get(pieceOf(id)).data;
    const seams = data.seams.map((c) => [c, paper.seams.get(c)]).filter(([, s]) => s && !s.twin);
    const walks = seams.map(([code, s]) => make('button', { type: 'button', class: 'w ink', onclick: () => this.room.walk(code) }, seams.length > 1 ? `Walk the ${s.name}` : 'Walk it'));
    const why = make('button', { type: 'button', class: 'w ink', 'aria-expanded': 'false', onclick: () => this.room.why(id) }, 'Why?');
    const big = make('div', { class: 'big' });
    big.append(figured(paper.say(data.length)));
    this.put(make('article', { class: 'note a', 'aria-label': 'The edge in hand' },
      make('h3', {}, `${piece.name}, ${data.name}`), big,
      ...paper.sewn(data).map((s) => make('p', {}, figured(s))),
      make('div', { class: 'do' }, ...walks, why), make('ol', { class: 'chain' })));
  }

  /** A thread of reasons, under the edge in hand or on a note of its own. */
  why(answer) {
    let note = this.el.querySelector('.note.a');
    if (!note || note.dataset.of !== answer.of && !this.room.edgeIs(answer.of)) {
      note = make('article', { class: 'note a', 'aria-label': 'Why', 'data-of': answer.of }, make('h3', {}, 'Why?'), make('ol', { class: 'chain' }));
      this.put(note);
    }
    const chain = note.querySelector('.chain');
    chain.setAttribute('aria-label', 'Where it comes from');
    chain.replaceChildren(...answer.knots.map((k) => {
      const b = make('button', { type: 'button', class: 'w plain', onclick: () => this.room.why(k.key) });
      b.append(figured(k.say));
      const li = make('li', {}, knot(k.knot), b);
      if (k.formula) { const f = make('span', { class: 'formula' }); f.append(figured(k.formula)); li.append(f); }
      li.append(make('small', {}, capital(k.small)));
      return li;
    }));
    chain.scrollIntoView({ block: 'nearest' });
  }

  /** What the checks say: how much of it is marked on the paper, and in words what has no place there. */
  findings(list, marks) {
    this.el.querySelector('.note.c')?.remove();
    if (!list.length) return;
    const grave = list.some((f) => f.grave), marked = marks.places.length;
    const items = list.filter((f) => !marks.at(f)).sort((a, b) => b.grave - a.grave).map((f) => {
      const li = make('li', { class: f.grave ? 'grave' : null });
      const b = make(f.word ? 'button' : 'span', f.word ? { type: 'button', class: 'w plain', onclick: () => this.room.slip.show(f.word) } : {});
      b.append(figured(f.say));
      li.append(b);
      return li;
    });
    const where = marked === 1 ? 'One place is marked on the paper.' : `${marked} places are marked on the paper.`;
    this.el.append(make('article', { class: `note c${grave ? ' grave' : ''}`, 'aria-label': 'What the checks say' },
      make('h3', {}, grave ? 'Not to be cut so' : 'Look again'), marked ? make('p', {}, where) : null,
      items.length ? make('ul', {}, ...items) : null,
      marked ? make('div', { class: 'do' }, make('button', { type: 'button', class: 'w ink', onclick: () => marks.next() }, marked === 1 ? 'Show me' : 'Show me one by one')) : null));
  }

  put(note) {
    this.el.querySelector('.note.a')?.remove();
    this.el.prepend(note);
  }
}
