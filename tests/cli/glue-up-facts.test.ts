import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { captured } from '../support/cli/captured-run.ts';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'pourproof-facts-'));
  writeFileSync(
    join(folder, 'bar.svg'),
    '<svg xmlns="http://www.w3.org/2000/svg" width="20mm" height="60mm" viewBox="0 0 20 60"><path d="M5 10H15V50H5Z"/></svg>',
  );
  writeFileSync(
    join(folder, 'stroke.svg'),
    '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="10mm" viewBox="0 0 60 10"><path d="M5 3H45V3.55H5Z"/></svg>',
  );
});
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

async function lines(...argv: readonly string[]): Promise<readonly string[]> {
  const { out, err } = await captured(['vet', ...argv, '--units', 'mm', '--full'], { cwd: folder });
  expect(err).toBe('');
  return out.split('\n');
}

/** Amount of the line that starts with a name. */
function amount(all: readonly string[], name: string): number {
  const line = all.find((each) => each.trimStart().startsWith(name));
  return Number(/ {2,}([\d.]+) mm/u.exec(line?.trimStart().slice(name.length) ?? '')?.[1]);
}

test('end grain is told for each kind of block, and the kinds add up', async () => {
  const board = 'stripes 100x60x20mm maple:30mm walnut:30mm';
  const all = await lines('bar.svg', '--bit', 'flat:2mm', '--depth', '3mm', '--board', board);
  // both ends of the bar lie across the fibres, one in each stripe: 10 mm of 3 mm each, rounded by the bit at two corners
  const [maple, walnut] = [amount(all, 'hard maple'), amount(all, 'black walnut')];
  expect(maple).toBeCloseTo(walnut, 1);
  // printed to a tenth of a mm²
  expect(Math.abs(maple + walnut - amount(all, 'End grain exposed'))).toBeLessThan(0.16);
  expect(all.join(' ')).toMatch(/hard maple .*1 block, fibres 0° on the face/u);
  expect(all.filter((line) => line.includes('face at risk'))).toHaveLength(2);
});

test('on plain wood there is one line of end grain', async () => {
  const all = await lines('bar.svg', '--bit', 'flat:2mm', '--depth', '3mm');
  expect(all.filter((line) => line.includes('fibres 0° on the face'))).toEqual([]);
});

test('ghost strokes are told with their length and the width below which they are', async () => {
  const seal = ['--seal', 'epoxy', '--coats', '3'];
  const all = (await lines('stroke.svg', '--bit', 'flat:0.5mm', '--depth', '3mm', ...seal)).join('\n');
  // three coats of 0.1 mm drain to the floor: a slot of 3 mm is full below 2·0.3·3 / (3 − 0.3) mm
  expect(all).toMatch(
    /Ghost strokes +39\.\d\d mm +of stroke is narrower than 0\.67 mm and\s+fills with clear\s+seal/u,
  );
  const bare = await lines('stroke.svg', '--bit', 'flat:0.5mm', '--depth', '3mm');
  expect(bare.join('\n')).not.toContain('Ghost strokes');
});

test('readings of the face are told as how much it rises and falls, and how well they fit', async () => {
  const readings = [
    '5mm,5mm 20mm',
    '95mm,5mm 20mm',
    '5mm,55mm 20.6mm',
    '95mm,55mm 20.6mm',
    '50mm,30mm 20.3mm',
  ];
  const all = await lines(
    ...['bar.svg', '--bit', 'flat:2mm', '--depth', '3mm', '--board', 'plain 100x60x20mm walnut'],
    ...readings.flatMap((reading) => ['--reading', reading]),
  );
  // a plane that rises by 0.6 mm over 50 mm: 0.48 mm over the 40 mm of the bar
  expect(amount(all, 'Face not flat by')).toBeCloseTo(0.48, 2);
  expect(all.join(' ').replace(/\s+/gu, ' ')).toContain(
    'your readings lie within 0.00 mm of the fitted surface',
  );
});

test('colour, number of boards and temperature are facts of the job where they were given', async () => {
  const given = ['--colour', 'blue', '--boards', '3', '--shop-temp', '18C'];
  const all = (await lines('bar.svg', '--bit', 'flat:2mm', '--depth', '3mm', ...given)).join('\n');
  expect(all).toMatch(/Colour +blue, 3 % pigment/u);
  expect(all).toMatch(/Boards +3, poured together/u);
  expect(all).toMatch(/Shop and resin +18 °C/u);
  const plain = (await lines('bar.svg', '--bit', 'flat:2mm', '--depth', '3mm')).join('\n');
  expect(plain).not.toMatch(/^ {2}(?:Colour|Boards|Shop and resin) {2}/mu);
});
