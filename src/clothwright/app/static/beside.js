// Her notes and photos, laid beside the paper. Nothing is measured from them.

import { make } from './figures.js';

export class Beside {
  constructor(notes, room) {
    this.notes = notes;
    this.room = room;
    this.button = document.querySelector('#beside');
    this.print = document.querySelector('#print');
    this.button.addEventListener('click', () => (this.el ? this.close() : this.open()));
  }

  async open() {
    const answer = await fetch(`${this.room.base}/beside`).catch(() => null);
    if (!answer?.ok) { this.room.say('The workroom does not answer; the photos wait there.'); return; }
    const { notes, photos } = await answer.json();
    this.el?.remove();
    this.el = make('article', { class: 'note b', 'aria-label': 'Photos and notes', tabindex: '-1' },
      make('h3', {}, 'Photos and notes'),
      notes.length || photos.length ? null : make('p', {}, 'Nothing is written down yet.'),
      ...photos.map((p) => this.photo(p)),
      ...notes.map((n) => make('p', { class: 'kept' }, make('small', {}, `${n.day}, ${n.on}`), make('br'), n.text)),
      make('div', { class: 'do' }, make('a', { class: 'w ink', href: `${this.room.base}/past#notes` }, 'Write or lay more'),
        make('button', { type: 'button', class: 'w ink', onclick: () => this.close() }, 'Put them away')));
    this.button.setAttribute('aria-expanded', 'true');
    this.notes.prepend(this.el);
    this.el.focus();
    this.notes.scrollTop = 0;
  }

  photo(p) {
    const words = p.caption || 'A photo without words';
    return make('figure', {}, make('button', { type: 'button', class: 'thumb', 'aria-label': `${words}. Show it large`, onclick: (e) => this.large(p, words, e.currentTarget) },
      make('img', { src: `/photos/${p.id}`, alt: '' })), make('figcaption', {}, p.caption, make('small', {}, ` ${p.day}, ${p.on}`)));
  }

  /** A photo laid large over the paper, until it is put away. */
  large(p, words, from) {
    const away = () => { this.print.hidden = true; from.focus(); };
    const button = make('button', { type: 'button', class: 'w ink', onclick: away }, 'Put it away');
    this.print.replaceChildren(make('img', { src: `/photos/${p.id}`, alt: words }), make('figcaption', {}, `${words}. `, button));
    this.print.hidden = false;
    this.print.onkeydown = (e) => { if (e.key === 'Escape') { e.stopPropagation(); away(); } };
    button.focus();
  }

  close() {
    this.el?.remove();
    this.el = null;
    this.print.hidden = true;
    this.button.setAttribute('aria-expanded', 'false');
    this.button.focus();
  }
}
