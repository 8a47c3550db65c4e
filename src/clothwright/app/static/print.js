// The sentence of printing, with its pages beside it.

import { make } from './figures.js';

const form = document.querySelector('#wish'), pages = document.querySelector('#pages'), count = document.querySelector('#count');
const large = form.querySelectorAll('[name=paper] option[value=a0], [name=paper] option[value=roll]');
let asked = 0;

async function show() {
  const mine = ++asked;
  const { sheet, paper } = form.elements, whole = sheet.value === 'pattern.pdf';
  form.action = form.action.replace(/[^/]*$/, sheet.value);
  for (const el of document.querySelectorAll('[data-of=pattern]')) el.hidden = !whole;
  for (const o of large) o.hidden = o.disabled = !whole;
  if (!paper.value) paper.value = 'a4';
  count.textContent = 'drawing…';
  const query = new URLSearchParams(new FormData(form));
  try {
    const answer = await fetch(`${form.dataset.preview}?${query}`);
    if (!answer.ok) throw new Error();
    const { pages: pictures, say } = await answer.json();
    if (mine !== asked) return;
    count.textContent = say ?? `${pictures.length} sheet${pictures.length === 1 ? '' : 's'}.`;
    for (const b of form.querySelectorAll('button')) b.disabled = Boolean(say);
    pages.replaceChildren(...pictures.map((src, i) => make('figure', {}, make('img', { src, alt: `Page ${i + 1}` }), make('figcaption', {}, String(i + 1)))));
  } catch {
    if (mine === asked) count.textContent = 'the workroom does not answer; try it again.';
  }
}

form.addEventListener('change', show);
show();
