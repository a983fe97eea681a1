'use strict';
// Shows what the model says of the fields; decides nothing about an eye by itself.
(() => {
  const DRAFT = 'isopter.sheet.draft';
  const EYES = { right: 'right eye', left: 'left eye', both: 'both eyes together' };
  const REASONS = ['not done', 'declined', 'unable to test', 'n/a'];
  const form = document.getElementById('form');
  const at = (id) => document.getElementById(id);
  const SAVING = ['save', 'fhir', 'copy', 'print'];
  const OPENED = ['subject', 'performer', 'performed'];
  let view = {};
  let timer = 0;
  let runs = false;

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
    // Words that a person wrote are replaced as by typing, so that the browser can undo it.
    const fill = (words) => {
      if (input.value) {
        input.focus();
        input.select();
      }
      if (!input.value || !document.execCommand('insertText', false, words)) { input.value = words; }
      read();
    };
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

  const fields = () => [['id', form.dataset.id], ['old', form.dataset.old],
    ...Array.from(form.querySelectorAll('input'), (input) => [input.name, input.value])];

  const words = () => fields()
    .map(([name, value]) => `${name}\u001f${value.replace(/[\u001e\u001f]/g, ' ')}\u001e`).join('');

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
      localStorage.setItem(DRAFT, JSON.stringify(fields()));
    } catch (full) {
      text(at('done'), 'This browser keeps no draft: save the record before the page is closed.');
    }
  };

  // The pictures are made by the model, which lets no mark through that a person wrote.
  const pictures = (drawings, whose) => {
    if (at('pictures').dataset.drawn !== whose + drawings.join('')) {
      at('pictures').dataset.drawn = whose + drawings.join('');
      at('pictures').replaceChildren(...drawings.map((drawing) => {
        const svg = new DOMParser().parseFromString(drawing, 'image/svg+xml').documentElement;
        const caption = make('figcaption', { textContent: svg.querySelector('title').textContent },
          make('span', { className: 'whose', textContent: whose }));
        return make('figure', { tabIndex: 0 }, caption, document.importNode(svg, true));
      }));
    }
  };

  const opened = (old) => {
    list(at('old'), old ? [`This amends the record ${old.id}:`, ...old.lines] : []);
    at('new').hidden = !form.dataset.old;
    for (const name of OPENED) {
      form.elements[name].readOnly = Boolean(old);
      if (old) { form.elements[name].value = old[name]; }
    }
  };

  const allow = (whole) => {
    for (const button of SAVING) { at(button).disabled = !whole; }
    document.body.classList.toggle('whole', whole);
  };

  const read = () => {
    if (!runs) {
      allow(false);
      keep();
      return;
    }
    view = JSON.parse(isopterRead(words()));
    for (const said of form.querySelectorAll('.said')) {
      const field = view.fields[said.id.slice('said.'.length)];
      said.className = field ? `said ${field.clear ? 'read' : 'ask'}` : 'said';
      list(said, field ? field.lines : []);
    }
    opened(view.old);
    list(at('faults'), [...view.faults, ...view.breaches]);
    text(at('silent'), view.silent || '');
    // On paper each picture says whose it is: it may come on a page of its own.
    pictures(view.pictures, (view.letter || '').split('\n').slice(0, 2).join(' '));
    text(at('letter'), view.letter || 'There is a letter when every field is understood.');
    allow(Boolean(view.record));
    keep();
  };

  const start = (draft) => {
    const kept = new Map(draft);
    form.dataset.id = kept.get('id') || id();
    form.dataset.old = kept.get('old') || '';
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

  const save = (name, type, content, done) => {
    const link = make('a', { download: name,
      href: URL.createObjectURL(new Blob([content], { type })) });
    link.click();
    URL.revokeObjectURL(link.href);
    text(at('done'), done);
  };

  const open = async (file) => {
    const old = await file.text();
    await running;
    if (!fields().some(([name, value]) => name.includes('.') && value) ||
        window.confirm('Leave what is written and amend this record?')) {
      start([['old', old]]);
      text(at('done'), view.old ? `The record ${view.old.id} was opened.` : 'The record was not opened; see under Look again.');
    }
    at('open').value = '';
  };

  // The script of the model is kept packed; its digest stands in the policy of the page.
  const model = async () => {
    await new Promise((parsed) => document.addEventListener('DOMContentLoaded', parsed));
    const packed = Uint8Array.from(atob(at('model').textContent), (one) => one.charCodeAt(0));
    const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream('gzip'));
    document.head.append(make('script', { textContent: await new Response(stream).text() }));
    at('model').remove();
  };

  const wire = () => {
    form.addEventListener('input', () => {
      // What was read no longer holds: nothing may be saved until it is read again.
      allow(false);
      clearTimeout(timer);
      timer = setTimeout(read, 150);
    });
    form.addEventListener('submit', (event) => event.preventDefault());
    at('open').addEventListener('change', () => { if (at('open').files[0]) { open(at('open').files[0]); } });
    at('new').addEventListener('click', () => {
      start([]);
      text(at('done'), 'This is a new record.');
    });
    at('save').addEventListener('click', () =>
      save(`${form.dataset.id}.json`, 'application/json', view.record, 'The record was saved as a file.'));
    at('fhir').addEventListener('click', () => save(`${form.dataset.id}.fhir.json`,
      'application/fhir+json', isopterFhir(words()), 'The examination was saved as FHIR.'));
    at('print').addEventListener('click', () => window.print());
    at('copy').addEventListener('click', () => navigator.clipboard.writeText(view.letter).then(
      () => text(at('done'), 'The letter was copied.'),
      () => text(at('done'), 'The browser did not allow it: select the letter and copy it.')));
    // One draft is kept for all tabs: whoever writes last would replace that of another person.
    window.addEventListener('storage', (event) => {
      if (event.key === DRAFT || event.key === null) {
        text(at('other'), event.newValue
          ? 'The sheet is open in another tab too, and only the draft written last is kept: save each record before its tab is closed.'
          : 'The draft was wiped in another tab. What is written here is kept again when it is changed.');
      }
    });
    at('wipe').addEventListener('click', () => {
      if (window.confirm('Wipe all fields and the draft on this device?')) {
        start([]);
        localStorage.removeItem(DRAFT);
        text(at('done'), 'The draft was wiped.');
      }
    });
  };

  // The first words are read without a wait where nobody has written any before this is done.
  const ready = () => {
    runs = true;
    at('starting').remove();
    read();
    setTimeout(isopterPrepare);
  };

  const failed = () => {
    form.hidden = true;
    at('opening').hidden = true;
    text(at('starting'),
      'This browser cannot run the sheet: it is older than the year 2023, or the file was changed.');
  };

  // The form is there to be written in while the model is still unpacked.
  JSON.parse(at('data').textContent).rows.forEach(show);
  wire();
  start(draft());
  at('opening').hidden = false;
  form.hidden = false;
  const running = model();
  running.then(ready, failed);
})();
