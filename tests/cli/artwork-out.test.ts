import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Captured, captured } from '../support/cli/captured-run.ts';

let folder: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'pourproof-artwork-'));
  writeFileSync(
    join(folder, 'slot.svg'),
    '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="60mm" viewBox="0 0 60 60"><path d="M20 30H40V32H20Z"/></svg>',
  );
});

afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

const vet = (...argv: readonly string[]): Promise<Captured> =>
  captured(['vet', 'slot.svg', '--wood', 'walnut', '--seal', 'epoxy', '--weigh', 'fine', ...argv], {
    cwd: folder,
  });
const written = (name: string): string => readFileSync(join(folder, name), 'utf8');

test('a slot widened until the bit enters is written down, and vetted from that file has the same answer', async () => {
  expect((await vet('--bit', 'flat:3mm')).code).toBe(1);
  const widened = await vet(
    '--bit',
    'flat:3mm',
    '--widen',
    '2mm',
    '--artwork',
    'wide.dxf',
    '--left-over',
    'left.svg',
  );
  expect(widened.code).toBe(0);
  expect(widened.out).toContain(`Artwork written to ${join(folder, 'wide.dxf')}: 4 nodes for`);
  expect(written('left.svg')).toContain('<g id="black"');
  const again = await captured(
    ['vet', 'wide.dxf', '--bit', 'flat:3mm', '--wood', 'walnut', '--seal', 'epoxy', '--weigh', 'fine'],
    { cwd: folder },
  );
  expect(again.code).toBe(0);
  expect(again.out.split('\n')[1]).toBe(widened.out.split('\n')[1]);
});

test('artwork is written as SVG or DXF alone, sheets in real size as HTML, never over what is read', async () => {
  expect((await vet('--artwork', 'out.pdf')).err).toContain('--artwork writes a .svg or .dxf file');
  expect((await vet('--artwork', 'slot.svg')).err).toContain(
    '--artwork would write over slot.svg, which is read.',
  );
  const sheets = await vet('--placement', 'sheets.html', '--paper', 'letter');
  expect(sheets.out).toContain(`Sheets in real size written to ${join(folder, 'sheets.html')}`);
  expect(written('sheets.html')).toContain('@page{size:215.9mm 279.4mm');
});
