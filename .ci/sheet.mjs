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

const open = () => page.waitForSelector('#starting', { state: 'detached', timeout: 120000 });
const field = (name) => page.locator(`input[name="${name}"]`);
const canSave = () => page.waitForFunction(() => !document.getElementById('save').disabled, null, { timeout: 60000 });
const facts = (record) => Object.values(record.findings).flatMap((sites) => Object.values(sites)).flat().length;
const size = fs.statSync(path.join(folder, 'sheet.html')).size;
assert.ok(size <= 1500000, `${size} bytes`);
await page.addInitScript(() => new MutationObserver((changes, observer) => {
  if (document.getElementById('form') && !document.getElementById('starting')) {
    globalThis.readAfter = Math.round(performance.now());
    observer.disconnect();
  }
}).observe(document, { subtree: true, childList: true }));
await page.goto(`file://${path.resolve(folder, 'sheet.html')}`);
await open();
console.log(await page.evaluate(() =>
  `painted after ${Math.round(performance.getEntriesByName('first-contentful-paint')[0].startTime)} ms, ` +
  `reads after ${globalThis.readAfter} ms`), `${size} bytes`);

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
const [sent] = await Promise.all([page.waitForEvent('download'), page.click('#fhir')]);
await sent.saveAs(path.join(folder, 'saved.fhir.json'));
const bundle = JSON.parse(fs.readFileSync(path.join(folder, 'saved.fhir.json'), 'utf8'));
assert.equal(bundle.resourceType, 'Bundle');
assert.equal(bundle.entry.filter((entry) => entry.resource.resourceType === 'Observation').length, 1 + facts(saved));
assert.equal(await page.locator('#pictures svg').count(), await page.locator('#pictures svg > title').count());
assert.ok((await page.locator('#pictures').textContent()).includes('Afferent defect: left, grade 2+'));
await page.emulateMedia({ media: 'print' });
for (const whose of await page.locator('.whose').allInnerTexts()) {
  assert.match(whose, /p-1.*3 March 2026/, 'a printed picture says whose it is');
}
await page.screenshot({ path: path.join(folder, 'sheet-print.png'), fullPage: true });
await page.emulateMedia({ media: 'screen' });

await field('near.left').fill('N5 @ 40 cm');
await page.click('button[aria-label^="Drooping lid, left eye: normal"]');
assert.equal(await field('lids.left').inputValue(), 'absent');
await field('lids.left').fill('2 mm');
await page.click('button[aria-label^="Drooping lid, left eye: normal"]');
assert.equal(await field('lids.left').inputValue(), 'absent');
await page.keyboard.press('Shift+Tab');
await field('lids.left').focus();
await page.keyboard.press('Control+z');
assert.equal(await field('lids.left').inputValue(), '2 mm', 'what a button replaced can be undone');

const other = await context.newPage();
await other.goto(page.url());
await other.waitForSelector('#starting', { state: 'detached' });
await other.locator('input[name="acuity.left"]').fill('6/60');
await page.waitForFunction(() => document.getElementById('other').textContent.includes('another tab'));
await other.locator('input[name="acuity.left"]').fill('6/24-1 sc');
await other.waitForTimeout(1000);
await other.close();

await page.reload();
await open();
assert.equal(await field('acuity.left').inputValue(), '6/24-1 sc', 'the draft outlives the page');

const known = JSON.parse(fs.readFileSync(forms, 'utf8')).drawn;
for (const { form, view, fhir } of known) {
  assert.equal(await page.evaluate((text) => isopterRead(text), form), view, form);
  assert.equal(await page.evaluate((text) => isopterFhir(text), form), fhir, form);
}
console.log(`${known.length} forms read alike by the script and by Java`);

page.on('dialog', (dialog) => dialog.accept());
await page.setInputFiles('#open', path.join(folder, 'saved.json'));
await page.waitForFunction(() => document.getElementById('old').textContent.includes('This amends the record'));
assert.equal(await field('subject').inputValue(), 'p-1');
assert.equal(await field('acuity.left').inputValue(), '', 'only what changes is written');
await field('pressure.left').fill('16 GAT');
await canSave();
assert.match(await page.locator('#old').textContent(), /Replaced: Left eye, Intraocular pressure: 14 mmHg/);
await page.screenshot({ path: path.join(folder, 'sheet-amending.png'), fullPage: true });
const [amending] = await Promise.all([page.waitForEvent('download'), page.click('#save')]);
await amending.saveAs(path.join(folder, 'amended.json'));
const amended = JSON.parse(fs.readFileSync(path.join(folder, 'amended.json'), 'utf8'));
assert.equal(amended.status, 'amended');
assert.equal(amended.amends.id, saved.record.id);
assert.notEqual(amended.record.id, saved.record.id);
assert.equal(amended.findings['distance-acuity'].left.value, '6/24-1', 'what is not written stays');
assert.equal(amended.findings['intraocular-pressure'].left.value, '16 mmHg');
fs.writeFileSync(path.join(folder, 'torn.json'), '{"isopter": 1,');
await page.setInputFiles('#open', path.join(folder, 'torn.json'));
await page.waitForFunction(() => document.getElementById('faults').textContent.includes('cannot be opened'));
assert.ok(await page.isDisabled('#save'));
await page.click('#wipe');
assert.equal(await field('acuity.left').inputValue(), '');
assert.equal(await page.evaluate(() => localStorage.length), 0, 'nothing of the draft is left');
assert.deepEqual(asked.filter((url) => !/^(file|blob):/.test(url)), [], 'nothing is loaded');
await browser.close();
