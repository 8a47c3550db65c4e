// The cost line by line, what it really took beside it, and the quote.

import { figured, make } from './figures.js';

const text = (tag, words, more = {}) => { const el = make(tag, more); el.append(figured(String(words))); return el; };

export class Cost {
  constructor(el, room) { Object.assign(this, { el, room }); }

  /** She comes to the cost: what is not laid yet is laid for a moment. */
  async stand() {
    await this.room.change({ do: 'lay', hand: 'all', of: 'cost' });
    this.open();
  }

  async open() {
    const mine = this.asked = {};
    const answer = await this.room.ask('cost');
    if (mine !== this.asked) return;
    if (answer.is !== 'cost') { this.el.replaceChildren(text('p', answer.say)); return; }
    if (this.el.contains(document.activeElement) && document.activeElement.matches('input') && document.activeElement.value !== document.activeElement.defaultValue) return;
    const { scrollTop } = this.el, focus = document.activeElement?.dataset?.cost;
    this.el.replaceChildren(...(answer.rows ? this.sheet(answer) : this.waits(answer)));
    this.el.scrollTop = scrollTop;
    if (focus) this.el.querySelector(`[data-cost="${CSS.escape(focus)}"]`)?.focus();
  }

  waits({ missing, refused }) {
    const words = missing.length ? `How much is bought of the ${missing.join(' and the ')} is not known yet: the pieces are being laid. Or write it in the sentence.` : '';
    return [make('h2', {}, 'The cost'), ...[words, refused].filter(Boolean).map((t) => text('p', t))];
  }

  sheet(c) {
    const { base } = this.room;
    const link = (name, words) => make('a', { class: 'w ink', href: `${base}/print?sheet=${name}.pdf` }, words);
    const head = make('tr', {}, ...['What', 'How much', 'At', c.currency, 'It took'].map((h) => make('th', { scope: 'col' }, h)));
    const body = c.rows.map((r) => make('tbody', {},
      make('tr', { class: 'sum' }, make('th', { scope: 'row' }, r.name), make('td'), make('td'), text('td', r.totals.at(-1)), make('td')),
      ...r.lines.map((l) => make('tr', {}, text('th', l.cells[0], { scope: 'row' }), ...l.cells.slice(1).map((x) => text('td', x)), make('td', {}, l.of ? this.took(l) : '')))));
    const totals = (rows) => make('table', { class: 'totals' }, make('tbody', {}, ...rows.map(([words, amount, strong]) => make('tr', { class: strong ? 'sum' : null }, text('th', words.replace(/^[A-J]  /, ''), { scope: 'row' }), text('td', amount)))));
    return [
      make('nav', { class: 'do' }, link('quote', 'Print the quote'), link('cost', 'Print the cost'), c.came.length ? link('outcome', 'Print what it took') : null, make('a', { class: 'w ink', href: '/shelf#rates' }, 'The rates')),
      make('h2', {}, 'The cost'),
      c.invented ? text('p', 'Reckoned at the rates of an invented house; write your own on the Shelf.', { class: 'hint' }) : null,
      text('p', c.note, { class: 'hint' }),
      totals(c.totals),
      make('div', { class: 'broad' }, make('table', {}, make('thead', {}, head), ...body)),
      make('h2', {}, 'What it really took'),
      text('p', 'Write it beside its line above, minutes or money; what is left blank came as estimated.', { class: 'hint' }),
      ...(c.came.length ? [totals(c.came)] : []),
      ...this.changes(c),
    ].filter(Boolean);
  }

  took(l) {
    const words = `${l.cells[0]}: what it took${l.unit ? ', minutes' : ''}`;
    const input = make('input', { class: 'typed', inputmode: 'decimal', autocomplete: 'off', value: l.came, 'data-cost': l.of, 'aria-label': words, placeholder: l.unit || '–' });
    input.addEventListener('change', () => { input.defaultValue = input.value; this.room.change({ do: 'choose', of: `cost:${l.of}`, to: input.value.trim() }); });
    return input;
  }

  changes(c) {
    const change = (more) => this.room.change({ do: 'choose', of: 'cost:change', ...more });
    const what = make('input', { class: 'typed long', 'aria-label': 'What was changed', placeholder: 'peplum a little longer' });
    const price = make('input', { class: 'typed', 'aria-label': 'Its price', inputmode: 'decimal', placeholder: '12.00' });
    const form = make('form', { class: 'do', onsubmit: (e) => { e.preventDefault(); change({ what: what.value, price: price.value }); what.value = price.value = ''; } }, what, price, make('button', { class: 'w ink' }, 'Add it'));
    return [make('h3', {}, 'Agreed after the estimate'),
      make('ul', { class: 'plain' }, ...c.changes.map((x, i) => make('li', {}, `${x.what}: ${x.price} `, make('button', { type: 'button', class: 'w pencil', 'aria-label': `Take away: ${x.what}`, onclick: () => change({ away: i }) }, 'Take it away')))), form];
  }
}
