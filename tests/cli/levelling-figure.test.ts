import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { captured } from '../support/cli/captured-run.ts';

const folder = mkdtempSync(join(tmpdir(), 'levelling-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** Two bars of 40 mm, one 1 mm and one 6 mm wide. */
const BARS =
  '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="30mm" viewBox="0 0 60 30"><path d="M5 5H45V6H5ZM5 15H45V21H5Z"/></svg>';

async function drawn(...flags: string[]): Promise<{ readonly sheet: string; readonly overlay: string }> {
  const [svg, sheet, overlay] = ['bars.svg', 'sheet.html', 'overlay.svg'].map((name) =>
    join(folder, name),
  ) as [string, string, string];
  writeFileSync(svg, BARS);
  const { err } = await captured(
    [
      'vet',
      svg,
      '--bit',
      'flat:0.5mm',
      '--depth',
      '3mm',
      '--wood',
      'walnut',
      '--seal',
      'epoxy',
      ...flags,
      '--report',
      sheet,
      '--overlay',
      overlay,
    ],
    { cwd: folder },
  );
  expect(err).toBe('');
  return { sheet: readFileSync(sheet, 'utf8'), overlay: readFileSync(overlay, 'utf8') };
}

const group = (overlay: string, id: string): string =>
  new RegExp(`<g id="${id}"[^>]*>\\n<title>[^<]*</title>(.*?)</g>`, 'su').exec(overlay)?.[1] ??
  'no such group';

test('three coats of film pool deepest in the narrow bar: there levelling may take all, and its flag says so', async () => {
  // pool of 0.3 mm film: 0.3 (1 + 6)/1 = 2.1 mm of 3 mm at 1 mm, 0.6 mm at 6 mm
  const { sheet, overlay } = await drawn('--coats', '3', '--level', '0.9mm');
  expect(sheet).toContain('What levelling leaves');
  expect(sheet).toMatch(/too narrow or too shallow after levelling: 39\.00\s*mm of stroke/u);
  expect(sheet).toContain('colour goes here first');
  expect(sheet).toContain('class="level-spoilt"');
  expect(group(overlay, 'levelling-spoilt')).toContain('<path d="M');
  expect(group(overlay, 'goes-first')).toContain('<path d="M');
});

test('where every stroke holds twice the plan there is no figure, and the overlay shows hairlines only', async () => {
  const { sheet, overlay } = await drawn('--coats', '1', '--level', '0.2mm');
  expect(sheet).not.toContain('What levelling leaves');
  expect(group(overlay, 'levelling-lost').trim()).toBe('');
  expect(group(overlay, 'levelling-holds')).toContain('<path d="M');
});

test('a square that has no stroke stands in the figure by its outline, and what no bit enters is named', async () => {
  writeFileSync(
    join(folder, 'square.svg'),
    '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="30mm" viewBox="0 0 60 30"><path d="M5 5H25V25H5ZM35 5h1.5v20h-1.5Z"/></svg>',
  );
  const sheet = join(folder, 'square.html');
  const flags = [
    '--bit',
    'flat:2mm',
    '--depth',
    '3mm',
    '--wood',
    'walnut',
    '--seal',
    'epoxy',
    '--level',
    '5mm',
  ];
  await captured(['vet', join(folder, 'square.svg'), ...flags, '--report', sheet], { cwd: folder });
  const text = readFileSync(sheet, 'utf8');
  expect(text).toContain('no colour is left: 1 area');
  expect(text).toMatch(/never cut, for no bit enters: 18\.\d\d\s*mm of stroke/u);
});
