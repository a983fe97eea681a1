// Runs every view over observations with an engine that is not ours; see .ci/views.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';

// The library has a client beside the engine, which asks for this as it is loaded and never here.
globalThis.WebSocket ??= class {};
const { evalSqlOnFhir } = await import('@medplum/core');

const [folder] = process.argv.slice(2);
const number = /^-?[0-9]+([.][0-9]+)?$/;

// Equal things in one form: of a number, of a time.
const plain = (column, cell) => {
  if (column === 'time') { return new Date(cell).toISOString(); }
  return number.test(cell) ? String(Number(cell)) : String(cell);
};
const filled = (row) => Object.fromEntries(Object.entries(row)
  .filter(([column, cell]) => column !== 'observation_key' && cell !== null && cell !== undefined && cell !== '')
  .map(([column, cell]) => [column, plain(column, cell)])
  .sort(([one], [other]) => (one < other ? -1 : 1)));

let rows = 0;
let cells = 0;
const files = fs.readdirSync(folder).filter((name) => name.endsWith('.json')).sort();
assert.ok(files.length > 50, `${files.length} views in ${folder}`);
for (const file of files) {
  const { view, observations, rows: wanted } = JSON.parse(fs.readFileSync(path.join(folder, file), 'utf8'));
  const got = evalSqlOnFhir(view, observations);
  assert.equal(new Set(got.map((row) => row.observation_key)).size, wanted.length, `${file}: keys`);
  assert.deepEqual(got.map(filled), wanted.map(filled), file);
  rows += wanted.length;
  cells += wanted.reduce((sum, row) => sum + Object.keys(row).length, 0);
}
console.log(`${files.length} views, ${rows} rows and ${cells} cells: all as wanted`);
