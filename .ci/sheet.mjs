// Fills the sheet in Chromium as a person does; see .ci/sheet.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { createRequire } from 'node:module';
import { chromium } from 'playwright-core';

const [folder, forms, executablePath] = process.argv.slice(2);
const axe = fs.readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const browser = await chromium.launch({ executablePath, args: ['--no-sandbox'] });
const context = await browser.newContext({ acceptDownloads: true, viewport: { width: 1280, height: 900 } });
const page = await context.newPage();
const asked = [];
page.on('request', (request) => asked.push(request.url()));
page.on('pageerror', (error) => { throw error; });

const open = () => page.waitForSelector('#form:not([hidden])', { timeout: 120000 });
const field = (name) => page.locator(`input[name="${name}"]`);
const canSave = () => page.waitForFunction(() => !document.getElementById('save').disabled, null, { timeout: 60000 });
const started = Date.now();
await page.goto(`file://${path.resolve(folder, 'sheet.html')}`);
await open();
console.log(`ready after ${Date.now() - started} ms, ${fs.statSync(path.join(folder, 'sheet.html')).size} bytes`);

const words = {
  subject: 'p-1', performed: '2026-03-03T09:10:00Z', 'acuity.right': '6/5 sc', 'acuity.left': '6/24-1 sc',
  'pinhole.left': 'NI', 'pupil.left': '3 mm dim; direct sluggish', 'defect.both': 'L 2+',
  'field.left': 'ST reduced, rest full', 'pressure.left': '14 GAT',
};
for (const [name, value] of Object.entries(words)) { await field(name).fill(value); }
await page.click('button[aria-label^="Optic disc, right eye: normal"]');
await page.selectOption('select[aria-label^="Pressure in the eye, right eye"]', 'declined');
await canSave();
await field('disc.left').fill('pink, bluury margin');
await page.waitForFunction(() => document.getElementById('said.disc.left').textContent.includes('bluury'));
assert.ok(await page.isDisabled('#save'), 'an unclear field cannot be saved');

for (const colorScheme of ['light', 'dark']) {
  await page.emulateMedia({ colorScheme });
  await page.evaluate(axe);
  const found = await page.evaluate(() => globalThis.axe.run(document));
  assert.deepEqual(found.violations.map((one) => one.id), [], `access, ${colorScheme}`);
}
for (const width of [320, 800, 1280]) {
  await page.setViewportSize({ width, height: 900 });
  assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), width);
  await page.screenshot({ path: path.join(folder, `sheet-${width}.png`), fullPage: true });
}

await field('disc.left').fill('');
await canSave();
const [file] = await Promise.all([page.waitForEvent('download'), page.click('#save')]);
await file.saveAs(path.join(folder, 'saved.json'));
const saved = JSON.parse(fs.readFileSync(path.join(folder, 'saved.json'), 'utf8'));
assert.equal(saved.findings['distance-acuity'].left.value, '6/24-1');
assert.equal(saved.findings['intraocular-pressure'].right.absent, 'refused');
assert.ok(!('left' in saved.findings['disc-colour']), 'an empty field records nothing');
await page.emulateMedia({ media: 'print' });
await page.screenshot({ path: path.join(folder, 'sheet-print.png'), fullPage: true });
await page.emulateMedia({ media: 'screen' });

await page.reload();
await open();
assert.equal(await field('acuity.left').inputValue(), '6/24-1 sc', 'the draft outlives the page');

const drawn = JSON.parse(fs.readFileSync(forms, 'utf8')).drawn;
for (const { form, view } of drawn) {
  assert.equal(await page.evaluate((text) => isopterRead(text), form), view, form);
}
console.log(`${drawn.length} forms read alike by the script and by Java`);

page.on('dialog', (dialog) => dialog.accept());
await page.click('#wipe');
assert.equal(await field('acuity.left').inputValue(), '');
assert.equal(await page.evaluate(() => localStorage.length), 0, 'nothing of the draft is left');
assert.deepEqual(asked.filter((url) => !/^(file|blob):/.test(url)), [], 'nothing is loaded');
await browser.close();
