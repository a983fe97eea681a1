// Fills the form of an examination in Chromium as a person does; see .ci/form.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { chromium } from 'playwright-core';

const [folder, executablePath] = process.argv.slice(2);
const form = JSON.parse(fs.readFileSync(path.join(folder, 'form.json'), 'utf8'));
const lforms = 'package/dist/lforms';
fs.writeFileSync(path.join(folder, 'form.html'), `<!DOCTYPE html><html lang="en"><head><meta charset="utf-8">
<title>Form</title><link rel="stylesheet" href="${lforms}/webcomponent/styles.css"></head><body><div id="form"></div>
<script src="${lforms}/webcomponent/assets/lib/zone.min.js"></script>
<script src="${lforms}/webcomponent/lhc-forms.js"></script>
<script src="${lforms}/fhir/R4/lformsFHIR.min.js"></script></body></html>`);
const browser = await chromium.launch({ executablePath, args: ['--no-sandbox'] });
const page = await browser.newPage({ viewport: { width: 1200, height: 900 } });
const asked = [];
page.on('request', (request) => asked.push(request.url()));
await page.goto(`file://${path.resolve(folder, 'form.html')}`);
await page.waitForFunction(() => globalThis.LForms?.Util?.addFormToPage && LForms.FHIR?.R4);
await page.evaluate((it) => LForms.Util.addFormToPage(it, 'form', { fhirVersion: 'R4' }), form);

const input = (name) => page.locator(`#form input[id^="${name}/1"]`).first();
const answer = async (name, words) => { await input(name).fill(words); await input(name).press('Tab'); };
await input('distance-acuity/left/value').waitFor({ timeout: 120000 });
console.log(`${await page.locator('#form input').count()} fields are drawn`);
await answer('distance-acuity/left/value', '6/9-2');
await answer('intraocular-pressure/right/value', '14.0');
await answer('intraocular-pressure/left/absent', 'Asked But Declined');
await input('intraocular-pressure/left/value').waitFor({ state: 'detached' });

const response = await page.evaluate(() => LForms.Util.getFormFHIRData('QuestionnaireResponse', 'R4', '#form'));
assert.ok(response.questionnaire.startsWith(form.url));
response.subject = { identifier: { value: 'p-1' } };
fs.writeFileSync(path.join(folder, 'response.json'), JSON.stringify(response));
assert.deepEqual(asked.filter((url) => !url.startsWith('file:')), [], 'nothing is loaded');
await browser.close();
