// The order of making, to be ticked off, and the cutting sheet below it.

import { figured, make } from './figures.js';

const text = (tag, words, cls) => { const el = make(tag, { class: cls ?? null }); el.append(figured(String(words))); return el; };

export class Making {
  constructor(el, room) { Object.assign(this, { el, room }); }

  async open() {
    const mine = this.asked = {};
    const answer = await this.room.ask('making');
    if (mine !== this.asked) return;
    if (answer.is !== 'making') { this.el.replaceChildren(text('p', answer.say)); return; }
    const { scrollTop } = this.el, ticked = document.activeElement?.dataset?.op;
    const { order, cutting } = answer, { base } = this.room;
    this.el.replaceChildren(
      make('nav', { class: 'do' }, make('a', { class: 'w ink', href: `${base}/print?sheet=making.pdf` }, 'Print the order of making'), make('a', { class: 'w ink', href: `${base}/print?sheet=cutting.pdf` }, 'Print the cutting sheet')),
      make('h2', {}, 'The order of making'), text('p', `${order.time}.`, 'hint'),
      ...order.parts.flatMap((part) => [make('h3', {}, part.name), make('ol', { class: 'ops' }, ...part.operations.map((op) => this.operation(op)))]),
      ...order.cautions.map((c) => text('p', c, 'hint')),
      make('h2', {}, 'The cutting sheet'), ...this.cutting(cutting));
    this.el.scrollTop = scrollTop;
    if (ticked) this.el.querySelector(`[data-op="${CSS.escape(ticked)}"]`)?.focus();
  }

  operation(op) {
    const id = `op-${op.number}`;
    const box = make('input', { type: 'checkbox', id, 'data-op': op.title, checked: op.done, onchange: () => this.room.change({ do: 'tick', of: op.title, to: box.checked }) });
    const li = make('li', { value: op.number, class: op.done ? 'done' : null },
      make('div', { class: 'head' }, box, text('label', op.title), op.time ? make('small', {}, ` ${op.time}`) : null));
    li.querySelector('label').htmlFor = id;
    for (const says of op.says) li.append(text('p', says));
    for (const s of op.seams) li.append(text('p', [s.name, s.length, s.allowance && `allowance ${s.allowance}`, s.match].filter(Boolean).join('; ') + '.'));
    if (op.how) li.append(text('p', op.how, 'how'));
    for (const c of op.cautions) li.append(text('p', c, 'caution'));
    return li;
  }

  cutting(c) {
    const table = (caption, rows) => make('div', { class: 'broad', role: 'group', 'aria-label': caption, tabindex: 0 }, make('table', {}, make('caption', {}, caption), make('tbody', {}, ...rows.map((r) => make('tr', {}, ...r.map((cell, i) => text(i ? 'td' : 'th', cell)))))));
    const out = c.cloths.map((k) => table(`${k.name}: ${k.total} to cut`, k.pieces.map(([number, name, how]) => [`${number}. ${name}`, how])));
    if (c.strips.length) out.push(table('Strips, cut without a pattern', c.strips));
    if (c.notions.length) out.push(table('To have at hand', c.notions));
    out.push(text('p', `Thread: ${c.thread_total}.`));
    return out;
  }
}
