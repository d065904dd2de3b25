import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Report } from '@pourproof/proof';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { captured, fixture } from '../support/cli/captured-run.ts';

const FONT = fixture('fonts/lora-400.ttf');
const SIZED = ['--font', FONT, '--cap-height', '15mm'] as const;
const ONE_LINE = ['--text', 'Oak', ...SIZED] as const;
const svg = (content: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="40mm" viewBox="0 0 40 40">${content}</svg>`;
const square =
  '0\nSECTION\n2\nENTITIES\n0\nLWPOLYLINE\n8\n0\n90\n4\n70\n1\n10\n0\n20\n0\n10\n20\n20\n0\n10\n20\n20\n20\n10\n0\n20\n20\n0\nENDSEC\n0\nEOF\n';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'pourproof-idle-'));
  writeFileSync(join(folder, 'square.svg'), svg('<path d="M2 2H18V18H2Z"/>'));
  writeFileSync(join(folder, 'words.svg'), svg('<text x="4" y="30" font-size="20">Oak</text>'));
  writeFileSync(join(folder, 'square.dxf'), square);
  writeFileSync(join(folder, 'empty.dxf'), '0\nSECTION\n2\nENTITIES\n0\nENDSEC\n0\nEOF\n');
  writeFileSync(
    join(folder, 'job.json'),
    '{"schema": "pourproof/job@1", "artwork": "square.svg", "tracking": "1mm", "fileUnit": "in"}',
  );
});
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

async function idle(...argv: readonly string[]): Promise<string[]> {
  const { out, err } = await captured(['vet', ...argv, '--json'], { cwd: folder });
  expect(err).toBe('');
  const { notices } = (JSON.parse(out) as Report).artwork;
  return notices
    .filter(({ code }) => code === 'setting-without-effect')
    .map(({ text, where: [place] }) => `${place?.setting}: ${text}`);
}

test.each([
  [
    ['square.svg', '--file-unit', 'in'],
    'fileUnit: The job sets the unit of a DXF drawing, but this is an SVG',
  ],
  [['square.svg', '--join', '0.2mm'], 'lines of a DXF drawing, but this is an SVG'],
  [
    ['square.dxf', '--carve', 'visible'],
    'carve: The job sets what of the paint is carved, but this is a DXF',
  ],
  [['square.svg', '--coats', '2'], 'the number of seal coats, but there is no seal'],
  [
    ['square.svg', '--seal', 'none', '--seal-hours', '9h'],
    'sealHours: The job sets how long the seal is left, but there is no seal',
  ],
  [['square.svg', '--font', FONT], 'font: A font is given, but the file has no text'],
  [['square.dxf', '--font', FONT], 'font: A font is given, but the file has no text'],
  [[...ONE_LINE, '--align', 'right'], 'the alignment of lettering, but the lettering is a single line'],
  [[...ONE_LINE, '--line-spacing', '1.4'], 'the distance of lines, but the lettering is a single line'],
  [
    ['--text', 'Oak\\n\\n', ...SIZED, '--align', 'left'],
    'the alignment of lettering, but the lettering is a single line',
  ],
  [
    ['--text', 'Oak', '--cap-height', '30mm', '--single-line', '--align', 'right'],
    'the alignment of lettering, but the',
  ],
] as const)('%j says that the flag changes nothing', async (argv, words) => {
  const told = await idle(...argv);
  expect(told).toHaveLength(1);
  expect(told[0]).toContain(words);
  expect(told[0]).toMatch(/: it changes nothing\.$/u);
});

test.each([
  [['square.svg', '--carve', 'visible']],
  [['square.dxf', '--file-unit', 'in', '--join', '0.2mm']],
  [['words.svg', '--font', FONT]],
  [['--text', 'Oak\\nElm', ...SIZED, '--align', 'right', '--line-spacing', '1.4']],
  // on an arc it says which end stands at the top
  [[...ONE_LINE, '--arc', '60mm', '--align', 'right']],
  [['square.svg', '--seal', 'epoxy', '--coats', '2', '--seal-hours', '9h']],
] as const)('%j is silent, because the flag does something', async (argv) => {
  expect(await idle(...argv)).toEqual([]);
});

test('a job file whose settings are for other artwork says so for each', async () => {
  const told = await idle('--job', 'job.json');
  expect(told).toHaveLength(2);
  expect(told.join(' ')).toMatch(/fileUnit.*tracking/u);
});

test('a font changes the answer of a drawing with live text', async () => {
  const { err } = await captured(['vet', 'words.svg'], { cwd: folder });
  expect(err).toContain('words.svg has nothing painted in it');
  const { out } = await captured(['vet', 'words.svg', '--font', FONT, '--json'], { cwd: folder });
  expect((JSON.parse(out) as Report).artwork.areaMm2).toBeGreaterThan(10);
});

test('a DXF with nothing in it is told in the words of a DXF', async () => {
  const { code, err } = await captured(['vet', 'empty.dxf'], { cwd: folder });
  expect(code).toBe(2);
  expect(err).toContain('empty.dxf has no closed outline in it, so there is nothing to cut.');
  expect(err).toContain('What to do: Check that the outlines are closed');
  expect(err).not.toMatch(/paint|fill|stroke/u);
});
