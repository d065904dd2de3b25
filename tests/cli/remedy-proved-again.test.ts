import { copyFileSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { captured, ROOT } from '../support/cli/captured-run.ts';

const folder = mkdtempSync(join(tmpdir(), 'pourproof-remedy-'));
copyFileSync(resolve(ROOT, 'fixtures/fonts/lora-400.ttf'), join(folder, 'lora-400.ttf'));
writeFileSync(
  join(folder, 'slots.svg'),
  '<svg xmlns="http://www.w3.org/2000/svg" width="70mm" height="40mm" viewBox="0 0 70 40"><path d="M5 5H65V6.9H5zM5 12H65V18H5z"/></svg>',
);
const run = (...argv: string[]) => captured(argv, { cwd: folder });

test.each<readonly [name: string, argv: readonly string[]]>([
  ['a slot too narrow, and a bare end-grain wall', ['slots.svg', '--bit', 'flat:2mm', '--depth', '3mm']],
  [
    'levelling that takes all',
    ['slots.svg', '--bit', 'flat:1mm', '--depth', '1mm', '--level', '1.2mm', '--seal', 'epoxy'],
  ],
  [
    'letters',
    [
      '--text',
      'An',
      '--font',
      'lora-400.ttf',
      '--cap-height',
      '20mm',
      '--bit',
      'flat:1/8in',
      '--depth',
      '3mm',
    ],
  ],
])(
  '%s: the job and the artwork that are written have the promised verdict, and need no remedy',
  async (name, argv) => {
    const out = `${name.slice(0, 6).trim()}.json`;
    const artwork = out.replace('.json', '.svg');
    const told = await run('remedy', ...argv, '--write-job', out, '--artwork', artwork, '--json');
    expect(told.err).not.toContain('fault');
    const { remedies } = JSON.parse(told.out);
    const [first] = remedies;
    const report = JSON.parse((await run('vet', '--job', out, '--json')).out);
    expect(report.verdict).not.toBe('stop');
    expect(report.verdict).toBe(first.verdict);
    const codes = report.findings.map(({ code }: { code: string }) => code);
    expect(codes).toEqual(expect.arrayContaining(first.remaining));
    const again = await run('remedy', '--job', out, '--json');
    expect(JSON.parse(again.out).remedies).toEqual([]);
    const written = JSON.parse(readFileSync(join(folder, out), 'utf8'));
    expect(written).toMatchObject({ schema: 'pourproof/job@1', artwork });
    expect(['text', 'font', 'capHeight', 'widen', 'leastStroke'].filter((key) => key in written)).toEqual([]);
  },
);
