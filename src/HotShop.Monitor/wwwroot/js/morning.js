// The morning page is made by the service; here only the clock runs, a name is remembered, and a page left open does not grow old.
import { keepCurrent, loadStudio } from './shop.js';
import { nameWhoLogs, whoLogs } from './entry-queue.js';

const AGAIN_MS = 5 * 60e3;
const names = () => [...document.querySelectorAll('input.who')];

for (const input of names()) {
  if (!input.value) input.value = whoLogs();
  input.form.addEventListener('submit', () => nameWhoLogs(input.value));
}
// A tapped usual cause needs no words, and words need no tap.
const isBusy = () => document.querySelector('details.answer[open]') || document.activeElement?.matches('input');
if (document.querySelector('.morning')?.dataset.today === 'yes')
  setInterval(() => { if (document.visibilityState === 'visible' && !isBusy()) location.reload(); }, AGAIN_MS);

loadStudio().then(() => keepCurrent(), () => {});
