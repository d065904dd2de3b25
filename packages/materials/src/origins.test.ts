import { readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Origin } from './cited.ts';
import { sources } from './sources.ts';

interface Row extends Origin {
  readonly place: string;
  readonly value?: unknown;
  readonly low?: unknown;
  readonly high?: unknown;
}

const rows: Row[] = [];
const bareNumbers: string[] = [];
const cited = new Set<string>();

const files = readdirSync(new URL('.', import.meta.url), { recursive: true, encoding: 'utf8' });
for (const file of files.filter((name) => name.endsWith('.ts') && !name.endsWith('.test.ts'))) {
  if (file === 'index.ts' || file === 'sources.ts') {
    continue;
  }
  const exported = (await import(/* @vite-ignore */ new URL(file, import.meta.url).href)) as Record<
    string,
    unknown
  >;
  for (const [name, value] of Object.entries(exported)) {
    walk(value, `${file}:${name}`, false);
  }
}

/** Collects rows with an origin, and numbers in tables that stand in no such row. */
function walk(value: unknown, place: string, hasOrigin: boolean): void {
  if (typeof value === 'number' && !hasOrigin && place.includes('.ts:') && place.split('.').length > 2) {
    bareNumbers.push(place);
  }
  if (typeof value === 'string' && value in sources) {
    cited.add(value);
  }
  if (typeof value !== 'object' || value === null) {
    return;
  }
  const originated = 'because' in value && 'status' in value;
  if (originated) {
    rows.push({ ...(value as Origin), place });
  }
  for (const [field, inner] of Object.entries(value)) {
    walk(inner, `${place}.${field}`, hasOrigin || originated);
  }
}

test('the walk finds the tables', () => {
  expect(rows.length).toBeGreaterThan(250);
});

test('every number of a table stands in a row with an origin', () => {
  // the reference capillary repeats three cited parameters as plain numbers
  expect(bareNumbers.filter((place) => !place.startsWith('capillary.ts:referenceCapillary'))).toEqual([]);
});

test('a range holds its value', () => {
  const ranges = rows.filter((row) => 'low' in row || 'high' in row);
  expect(ranges.length).toBeGreaterThan(50);
  const bad = ranges.filter(
    ({ value, low, high }) => !(Number(low) <= Number(value) && Number(value) <= Number(high)),
  );
  expect(bad.map(({ place }) => place)).toEqual([]);
});

test('every row names a source that exists', () => {
  const bad = rows.filter((row) => row.because.length === 0 || row.because.some((id) => !(id in sources)));
  expect(bad).toEqual([]);
});

test('the status of a row is that of one of its sources: nothing remembered is called seen', () => {
  const bad = rows.filter((row) => !row.because.some((id) => sources[id].status === row.status));
  expect(bad.map((row) => `${row.place} ${row.status}`)).toEqual([]);
});

/** Named by what the maker enters, not by a table. */
const AT_RUN_TIME: readonly string[] = ['maker-entry', 'own-coupons'];

test('every source is used', () => {
  const unused = Object.keys(sources).filter((id) => !cited.has(id) && !AT_RUN_TIME.includes(id));
  expect(unused).toEqual([]);
});
