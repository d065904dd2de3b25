import { readFileSync } from 'node:fs';
import { readMaterialsFile } from '@pourproof/job';
import { mixByMass } from '@pourproof/materials';
import { expect, test } from 'vitest';

const page = readFileSync(new URL('../../docs/method/own-materials.md', import.meta.url), 'utf8');

test('the example of the page is taken as it stands', () => {
  const example = /```json\n([\s\S]*?)```/.exec(page)?.[1] ?? '';
  const book = readMaterialsFile(JSON.parse(example), 'materials.json');
  expect(book.woods['shed-walnut']?.bleedPriorMm?.value).toBe(0.6);
  expect(book.sealers.shellac?.readyHours.value).toBe(2);
  const mix = mixByMass({ volumeMl: 30, wastePct: 0 }, book.resins['shelf-resin'] ?? 'coating');
  // 20 ml of 1.14 and 10 ml of 0.97 g/ml
  expect(mix.partAG).toBeCloseTo(22.8, 9);
  expect(mix.partBG).toBeCloseTo(9.7, 9);
  expect(mix.assumed).toEqual([]);
  expect(book.cutters.value.map((cutter) => cutter.label)).toEqual(['1/8in', '60deg']);
});
