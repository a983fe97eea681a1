'use strict';
// Shows what the model says of the fields; decides nothing about an eye by itself.
(() => {
  const DRAFT = 'isopter.sheet.draft';
  const EYES = { right: 'right eye', left: 'left eye', both: 'both eyes together' };
  const REASONS = ['not done', 'declined', 'unable to test', 'n/a'];
  const form = document.getElementById('form');
  const at = (id) => document.getElementById(id);
  let view = {};
  let timer = 0;

  const make = (tag, properties, ...children) => {
    const element = Object.assign(document.createElement(tag), properties);
    element.append(...children);
    return element;
  };

  const now = () => {
    const date = new Date();
    const two = (number) => String(Math.floor(Math.abs(number))).padStart(2, '0');
    const east = -date.getTimezoneOffset();
    return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}` +
      `T${two(date.getHours())}:${two(date.getMinutes())}:00` +
      `${east < 0 ? '-' : '+'}${two(east / 60)}:${two(Math.abs(east) % 60)}`;
  };

  const id = () => Array.from(crypto.getRandomValues(new Uint8Array(16)),
    (byte) => byte.toString(16).padStart(2, '0')).join('');

  const cell = (row, eye) => {
    const name = `${row.key}.${eye}`;
    const label = `${row.title}, ${EYES[eye]}`;
    const input = make('input', { name, spellcheck: false, placeholder: `such as ${row.example}` });
    input.setAttribute('aria-describedby', `said.${name}`);
    const fill = (words) => { input.value = words; read(); };
    const tools = make('div', { className: 'tools' });
    if (row.normal) {
      const normal = make('button', { type: 'button', textContent: 'Normal' });
      normal.setAttribute('aria-label', `${label}: normal, which records ${row.normalRecords}`);
      normal.addEventListener('click', () => fill(row.normal));
      tools.append(normal);
    }
    const reasons = make('select', {}, make('option', { value: '', textContent: 'Without result …' }),
      ...REASONS.map((reason) => make('option', { value: reason, textContent: reason })));
    reasons.setAttribute('aria-label', `${label}: why there is no result`);
    reasons.addEventListener('change', () => {
      if (reasons.value) { fill(reasons.value); }
      reasons.value = '';
    });
    tools.append(reasons);
    const said = make('ul', { id: `said.${name}`, className: 'said' });
    said.setAttribute('aria-live', 'polite');
    const short = make('label', {}, EYES[eye][0].toUpperCase() + EYES[eye].slice(1), input);
    input.setAttribute('aria-label', label);
    return make('div', { className: eye === 'both' ? 'both' : 'eye' }, short, tools, said);
  };

  const show = (row) => {
    const name = make('div', { className: 'name' }, make('h3', { textContent: row.title }));
    if (row.normalRecords) {
      name.append(make('p', { className: 'hint', textContent: `Normal records: ${row.normalRecords}.` }));
    }
    const eyes = row.perEye ? ['right', 'left'] : ['both'];
    at('rows').append(make('div', { className: 'row' }, name, ...eyes.map((eye) => cell(row, eye))));
  };

  const fields = () => Array.from(form.querySelectorAll('input'), (input) => [input.name, input.value]);

  const list = (element, lines) => {
    const before = Array.from(element.children, (item) => item.textContent).join('\n');
    if (before !== lines.join('\n')) {
      element.replaceChildren(...lines.map((line) => make('li', { textContent: line })));
    }
  };

  const text = (element, words) => {
    if (element.textContent !== words) { element.textContent = words; }
  };

  const keep = () => {
    try {
      localStorage.setItem(DRAFT, JSON.stringify([['id', form.dataset.id], ...fields()]));
    } catch (full) {
      text(at('done'), 'This browser keeps no draft: save the record before the page is closed.');
    }
  };

  const read = () => {
    const words = [['id', form.dataset.id], ...fields()]
      .map(([name, value]) => `${name}\u001f${value.replace(/[\u001e\u001f]/g, ' ')}\u001e`).join('');
    view = JSON.parse(isopterRead(words));
    for (const said of form.querySelectorAll('.said')) {
      const field = view.fields[said.id.slice('said.'.length)];
      said.className = field ? `said ${field.clear ? 'read' : 'ask'}` : 'said';
      list(said, field ? field.lines : []);
    }
    list(at('faults'), [...view.faults, ...view.breaches]);
    text(at('silent'), view.silent || '');
    text(at('letter'), view.letter || 'There is a letter when every field is understood.');
    for (const button of ['save', 'copy', 'print']) { at(button).disabled = !view.record; }
    keep();
  };

  const start = (draft) => {
    const kept = new Map(draft);
    form.dataset.id = kept.get('id') || id();
    for (const input of form.querySelectorAll('input')) { input.value = kept.get(input.name) || ''; }
    if (!form.elements.performed.value) { form.elements.performed.value = now(); }
    read();
  };

  const draft = () => {
    try {
      return JSON.parse(localStorage.getItem(DRAFT)) || [];
    } catch (unreadable) {
      return [];
    }
  };

  const save = () => {
    const link = make('a', { download: `${form.dataset.id}.json`,
      href: URL.createObjectURL(new Blob([view.record], { type: 'application/json' })) });
    link.click();
    URL.revokeObjectURL(link.href);
    text(at('done'), 'The record was saved as a file.');
  };

  JSON.parse(isopterRows()).rows.forEach(show);
  form.addEventListener('input', () => {
    // What was read no longer holds: nothing may be saved until it is read again.
    for (const button of ['save', 'copy', 'print']) { at(button).disabled = true; }
    clearTimeout(timer);
    timer = setTimeout(read, 150);
  });
  form.addEventListener('submit', (event) => event.preventDefault());
  at('save').addEventListener('click', save);
  at('print').addEventListener('click', () => window.print());
  at('copy').addEventListener('click', () => navigator.clipboard.writeText(view.letter).then(
    () => text(at('done'), 'The letter was copied.'),
    () => text(at('done'), 'The browser did not allow it: select the letter and copy it.')));
  at('wipe').addEventListener('click', () => {
    if (window.confirm('Wipe all fields and the draft on this device?')) {
      start([]);
      localStorage.removeItem(DRAFT);
      text(at('done'), 'The draft was wiped.');
    }
  });
  start(draft());
  at('starting').remove();
  form.hidden = false;
})();
