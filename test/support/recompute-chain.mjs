// Recomputes a ledger export (one JSON entry a line) from the published rules alone: RFC 8785 says how the JSON is
// spelt (members sorted by UTF-16 code units, no white space, ECMAScript numbers and strings), FIPS 180-4 how it is
// hashed. Prints how many entries hold and the last hash, or where the chain breaks. Shares no code with Tackleroom.
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';

const spell = (value) => {
  if (Array.isArray(value)) return `[${value.map(spell).join(',')}]`;
  if (value === null || typeof value !== 'object') return JSON.stringify(value);
  const members = Object.keys(value)
    .sort()
    .map((name) => `${JSON.stringify(name)}:${spell(value[name])}`);
  return `{${members.join(',')}}`;
};

let previous = '0'.repeat(64);
let held = 0;
for (const line of readFileSync(process.argv[2], 'utf8').split('\n').filter(Boolean)) {
  const { hash, ...entry } = JSON.parse(line);
  const computed = createHash('sha256').update(spell(entry)).digest('hex');
  if (computed !== hash || entry.previousHash !== previous || entry.number !== held + 1) {
    console.log(`broken at ${entry.number}`);
    process.exit(1);
  }
  previous = hash;
  held += 1;
}
console.log(`${held} ${previous}`);
