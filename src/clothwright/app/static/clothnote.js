// What is said beside the cloth: how much to buy and why, the search, the piece in hand.

import { figured, make } from './figures.js';

/** A piece of the lay by its name, and which hand it is. */
export const called = (p) => (p.hand ? `${p.name}, ${p.hand}` : p.name);

const p = (text, cls) => { const el = make('p', { class: cls ?? null }); el.append(figured(text)); return el; };

export class ClothNote {
  constructor(cloth) {
    this.cloth = cloth;
    this.el = make('article', { class: 'note about-lay', 'aria-label': 'The lay', tabindex: '-1' });
    this.which = make('div', { class: 'which-cloth', role: 'group', 'aria-label': 'Which cloth' });
    this.bought = make('div');
    this.search = make('div', { class: 'search' });
    this.hand = make('div', { class: 'hand' });
    this.more = make('div');
    this.why = make('details', {}, make('summary', {}, 'Why so much'));
    this.reasons = make('ul', { class: 'plain' });
    this.why.append(this.reasons);
    this.el.append(this.which, this.bought, this.search, this.hand, this.why, this.more);
  }

  button(words, act, more = {}) { return make('button', { type: 'button', class: 'w ink', onclick: act, ...more }, words); }

  show(d) {
    const { cloth } = this, { room } = cloth;
    const cloths = [...(room.slip?.paras.get('Cloth')?.sentences.keys() ?? [])].filter((k) => k.startsWith('cloth:')).map((k) => k.slice(6));
    this.put(this.which, cloths.length > 1 ? cloths.map((k) => this.button(k, () => cloth.open(k), { 'data-key': `cloth ${k}`, 'aria-pressed': String(k === (d?.cloth ?? cloth.want)) })) : []);
    this.why.hidden = !d?.pieces;
    if (!d?.pieces) {
      this.put(this.bought, [p(d?.refused || 'The pieces are being laid…')]);
      this.put(this.search, d?.refused && !d.seeking ? [this.button('Try it again', () => cloth.hand('find'), { 'data-key': 'find' })] : []);
      this.put(this.hand, []);
      this.put(this.more, []);
      return;
    }
    const wrong = d.pieces.filter((x) => x.faults.length);
    this.put(this.bought, [p(`To buy of the ${d.name}`), p(d.buy.told, 'big'), p(`${d.buy.price ? `For ${d.buy.price}. ` : ''}The lay is ${d.told} long, ${d.fold}; ${d.parts} of 100 parts of the cloth are used.`)]);
    this.put(this.search, this.searching(d, wrong));
    this.put(this.hand, this.inHand(d));
    this.reasons.replaceChildren(...d.buy.parts.map(([much, why]) => { const li = make('li'); li.append(figured(`${much}: ${why}`)); return li; }));
    this.put(this.more, [d.seeking ? '' : d.bound, ...d.says, d.spare.length ? `One to spare is cut of: ${d.spare.join(', ')}.` : ''].filter(Boolean).map((t) => p(t)));
  }

  /** Put nodes in place without losing the focus on a button that stays. */
  put(el, nodes) {
    const key = el.contains(document.activeElement) ? document.activeElement.dataset.key : null;
    el.replaceChildren(...nodes);
    if (key) el.querySelector(`[data-key="${CSS.escape(key)}"]`)?.focus();
  }

  searching(d, wrong) {
    const { cloth } = this;
    if (d.seeking) {
      return [p(d.seeking.share ? 'A shorter lay is looked for; this is the best so far.' : 'Ways to fold the cloth are tried; this is the best so far.'),
        make('progress', { max: 1, value: d.seeking.share, 'aria-label': 'How far the search is' }),
        make('div', { class: 'do' }, this.button('Stop, and take this', () => cloth.hand('stop'), { 'data-key': 'stop' }))];
    }
    const out = [];
    if (wrong.length || d.fault.length) {
      out.push(p('This must not be cut yet:', 'bad'), make('ul', { class: 'plain wrongs' }, ...d.fault.map((f) => make('li', {}, f)), ...wrong.map((x) => this.wrong(d, x))));
    } else if (d.kept) out.push(p('This lay is kept with the order.'));
    const keep = d.kept || wrong.length || d.fault.length ? null : this.button('Keep this lay', () => cloth.hand('keep'), { 'data-key': 'keep' });
    out.push(make('div', { class: 'do' }, keep,
      this.button('Look for a shorter one', () => cloth.hand('find', { longer: true }), { 'data-key': 'find' }),
      d.near_edge === null ? null : this.button(cloth.marking ? 'Draw round it on the cloth, or leave it' : 'Mark a flaw', () => cloth.mark(!cloth.marking), { 'data-key': 'flaw', 'aria-pressed': String(Boolean(cloth.marking)) }),
      d.moves ? this.button('Take the move back', () => cloth.hand('back'), { 'data-key': 'back' }) : null,
      make('a', { class: 'w ink', href: `${cloth.room.base}/print?sheet=lay.pdf` }, 'Print the lay')));
    if (d.refused) out.push(p(d.refused));
    return out;
  }

  wrong(d, x) {
    const li = make('li'), i = d.pieces.indexOf(x);
    const b = this.button(called(x), () => this.cloth.nodes[i].g.focus(), { 'data-key': `piece ${i}` });
    li.append(b, ' ', figured(`${x.faults.join('; ')}.`));
    return li;
  }

  inHand(d) {
    const { cloth } = this, x = d.pieces[cloth.piece];
    if (!x) return [p('Take a piece to move it.', 'hint')];
    return [make('h3', {}, called(x)), p(x.faults.length ? `It ${x.faults.join('; it ')}.` : 'It lies well.', x.faults.length ? 'bad' : null),
      make('div', { class: 'do' }, this.button('Turn it end for end', () => cloth.act('turn'), { 'data-key': 'turn' }),
        x.hands ? this.button('Swap its hand', () => cloth.act('swap'), { 'data-key': 'swap' }) : null)];
  }
}
