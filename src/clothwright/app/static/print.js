// The sentence of printing, with its pages beside it.

import { make } from './figures.js';

const form = document.querySelector('#wish'), pages = document.querySelector('#pages'), count = document.querySelector('#count');
let asked = 0;

async function show() {
  const mine = ++asked;
  count.textContent = 'drawing…';
  const query = new URLSearchParams(new FormData(form));
  try {
    const answer = await fetch(`${form.dataset.preview}?${query}`);
    if (!answer.ok) throw new Error();
    const { pages: pictures } = await answer.json();
    if (mine !== asked) return;
    count.textContent = `${pictures.length} sheet${pictures.length === 1 ? '' : 's'}.`;
    pages.replaceChildren(...pictures.map((src, i) => make('figure', {}, make('img', { src, alt: `Page ${i + 1}` }), make('figcaption', {}, String(i + 1)))));
  } catch {
    if (mine === asked) count.textContent = 'the workroom does not answer; try it again.';
  }
}

form.addEventListener('change', show);
show();
