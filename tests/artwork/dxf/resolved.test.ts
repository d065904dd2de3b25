import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { resolveRegions } from '@pourproof/arrangement';
import { readDxf } from '@pourproof/artwork';
import { signedArea } from '@pourproof/plane';
import { expect, test } from 'vitest';

const folder = join(import.meta.dirname, '../../../fixtures/dxf');
const names = readdirSync(folder)
  .filter((file) => file.endsWith('.dxf'))
  .map((file) => file.slice(0, -4));

test.each(names)('%s resolves to its closed-form area, and only the crossed solid crosses itself', (name) => {
  const expected = JSON.parse(readFileSync(join(folder, `${name}.expected.json`), 'utf8')) as {
    areaMm2: number;
    relativeError: number;
  };
  const { shapes } = readDxf(readFileSync(join(folder, `${name}.dxf`)));
  const resolved = resolveRegions(shapes.map((shape) => shape.region));
  expect(Math.abs(signedArea(resolved.region) / expected.areaMm2 - 1)).toBeLessThanOrEqual(
    Math.max(expected.relativeError, 1e-8),
  );
  expect(resolved.crossingCount > 0).toBe(name === 'solid-with-swapped-corners');
});
