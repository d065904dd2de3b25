import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { captured, fixture } from '../support/cli/captured-run.ts';
import { cases } from '../support/lane.ts';

let folder: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'pourproof-any-'));
  writeFileSync(
    join(folder, 'square.svg'),
    '<svg xmlns="http://www.w3.org/2000/svg" width="20mm" height="20mm"><path d="M2 2H40V40H2Z"/></svg>',
  );
  writeFileSync(join(folder, 'job.json'), '{"schema": "pourproof/job@1", "wood": "cherry"}');
  writeFileSync(join(folder, 'junk.dxf'), Uint8Array.of(0, 255, 7, 13, 10, 128));
});

afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

const FLAGS = [
  'bit',
  'depth',
  'grain',
  'wood',
  'seal',
  'text',
  'font',
  'cap-height',
  'width',
  'height',
  'scale',
  'dive',
  'coats',
  'seal-hours',
  'resin',
  'level',
  'overpour',
  'waste-pct',
  'job',
  'units',
  'tolerance',
  'json',
  'carve',
  'file-unit',
  'join',
  'fail-on',
  'nonsense',
];
const VALUES = [
  '3mm',
  '1/8in',
  '-1in',
  '0',
  '1e308mm',
  'NaN',
  '',
  '12',
  '45deg',
  '-720deg',
  'flat:2mm',
  'vee:60deg:1/2in',
  'flat:1e-9mm',
  'flat:290mm',
  'walnut',
  'toString',
  '__proto__',
  'epoxy',
  'coating',
  '24h',
  'mm',
  'caution',
  'job.json',
  'junk.dxf',
  fixture('fonts/lora-400.ttf'),
  'Öl & Co',
  '-',
  '--',
];

const piece = fc.oneof(
  {
    weight: 3,
    arbitrary: fc.tuple(fc.constantFrom(...FLAGS), fc.constantFrom(...VALUES)).map(([f, v]) => [`--${f}`, v]),
  },
  { weight: 1, arbitrary: fc.constantFrom(...FLAGS).map((f) => [`--${f}`]) },
  { weight: 1, arbitrary: fc.constantFrom(...FLAGS).map((f) => [`--${f}=1mm`]) },
  {
    weight: 3,
    arbitrary: fc.constantFrom('square.svg', 'square.svg', 'junk.dxf', 'none.svg', '.').map((f) => [f]),
  },
  { weight: 1, arbitrary: fc.string({ maxLength: 8 }).map((text) => [text]) },
);

test('any command line ends in an answer or in one kind of clear refusal, never in a fault', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.constantFrom('vet', 'vet', 'vet', 'vet', 'list', 'explain', ''),
      fc.array(piece, { maxLength: 5 }),
      async (command, pieces) => {
        const { code, out, err } = await captured([command, ...pieces.flat()], { cwd: folder });
        expect([0, 1, 2]).toContain(code);
        expect(code === 2).toBe(err !== '');
        expect(err).not.toMatch(/\n {4}at |undefined|\[object|NaN mm/u);
        expect(out).not.toMatch(/undefined|NaN|Infinity|\[object/u);
        for (const message of err.split(/^(?=pourproof: )/mu).filter((text) => text !== '')) {
          expect(message).toMatch(/^pourproof: \S.*\n$/su);
          // a way out, in one of the forms that messages give it in
          expect(message).toMatch(
            /What to do: \S|Did you mean|such as|Known: |Kinds: |Units: |Write it like|must be|lies between|above 0|below 0|Check |--bit flat/u,
          );
        }
      },
    ),
    cases(300),
  );
});
