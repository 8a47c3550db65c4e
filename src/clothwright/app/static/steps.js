// The replay of the hand draft, one step at a time.

import { figured, make } from './figures.js';
import { capital } from './paper.js';

export class Steps {
  constructor(el, room) {
    this.el = el;
    this.room = room;
    this.i = 0;
    this.steps = [];
    this.hidden = false;
  }

  async open() {
    const answer = await this.room.ask('steps');
    if (answer.is !== 'steps') return this.room.refused(answer);
    this.steps = answer.steps;
    this.i = Math.min(this.i, this.steps.length - 1);
    this.show();
  }

  go(by) {
    const next = this.i + by;
    if (next < 0 || next >= this.steps.length) return;
    this.i = next;
    this.show();
    this.room.say(`Step ${this.i + 1}. ${this.steps[this.i].say}`);
  }

  show() {
    const s = this.steps[this.i];
    if (!s) return;
    const figure = make('div', { class: 'figure' });
    const svg = new DOMParser().parseFromString(s.svg || '<svg xmlns="http://www.w3.org/2000/svg"/>', 'image/svg+xml').documentElement;
    svg.removeAttribute('width');
    svg.removeAttribute('height');
    svg.setAttribute('role', 'img');
    svg.setAttribute('aria-label', `Drawing of this step: ${s.makes}`);
    figure.append(document.importNode(svg, true));
    const told = make('p', { class: 'told' });
    if (this.hidden) told.append(make('button', { type: 'button', class: 'w ink', onclick: () => { told.replaceChildren(figured(s.say)); } }, 'Tell me'));
    else told.append(figured(s.say));
    const say = 'speechSynthesis' in window ? make('button', { type: 'button', class: 'w ink', onclick: () => { speechSynthesis.cancel(); speechSynthesis.speak(new SpeechSynthesisUtterance(s.say)); } }, 'Say it') : null;
    this.el.replaceChildren(figure, make('article', { class: 'note lesson', 'aria-label': 'The step' },
      make('div', { class: 'of' }, make('span', {}, `Step ${this.i + 1} of ${this.steps.length}`), make('span', {}, capital(s.part))),
      told,
      make('div', { class: 'do' },
        make('button', { type: 'button', class: 'w ink', disabled: this.i === 0, onclick: () => this.go(-1) }, 'Back'),
        make('button', { type: 'button', class: 'w ink next', disabled: this.i === this.steps.length - 1, onclick: () => this.go(1) }, 'Next step'),
      ),
      make('div', { class: 'do' }, say,
        make('button', { type: 'button', class: 'w ink', 'aria-pressed': String(this.hidden), onclick: () => { this.hidden = !this.hidden; this.show(); } }, this.hidden ? 'Show me all' : 'From here by yourself'),
        make('a', { class: 'w ink', href: `${this.room.base}/sheets/steps.pdf`, target: '_blank', rel: 'noopener' }, 'Print the sheet'),
      ),
      make('label', { class: 'jump' }, 'Go to step ', make('input', { class: 'typed', type: 'number', min: 1, max: this.steps.length, value: this.i + 1, onchange: (e) => { const n = e.target.valueAsNumber; if (n >= 1 && n <= this.steps.length) { this.i = n - 1; this.show(); } } }))));
  }
}
