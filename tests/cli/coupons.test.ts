import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { captured } from '../support/cli/captured-run.ts';

const folder = mkdtempSync(join(tmpdir(), 'coupons-'));
afterAll(() => rmSync(folder, { recursive: true }));

writeFileSync(
  join(folder, 'bar.svg'),
  '<svg xmlns="http://www.w3.org/2000/svg" width="20mm" height="40mm" viewBox="0 0 20 40"><path d="M5 5H9V35H5Z"/></svg>',
);
const vet = (rows: unknown, ...flags: string[]) => {
  writeFileSync(join(folder, 'mine.json'), JSON.stringify(rows));
  return captured(
    ['vet', 'bar.svg', '--bit', 'flat:3mm', '--wood', 'cherry', '--coats', '0', '--full', ...flags],
    {
      cwd: folder,
    },
  );
};
const file = (...coupons: object[]) => ({ schema: 'pourproof/coupons@1', coupons });
const flat = (text: string): string => text.replace(/\s+/gu, ' ');

test('a file of coupons moves the travel, and the answer says with how many', async () => {
  const { out } = await vet(file({ slots: ['1.2mm', '1.6mm', '0.9mm'] }), '--coupons', 'mine.json');
  expect(flat(out)).toMatch(
    /Colour may travel 1\.29 mm .*0\.44 mm to 5\.92 mm is likely \(calibrated with 1 coupon, 3 slots\)/u,
  );
  expect(flat(out)).toContain('calibrated with your coupons');
  expect(flat(out)).toMatch(/slots that bleed 3 of 3/u);
});

test('rows that count for nothing are named', async () => {
  const { out } = await vet(
    file({ wood: 'maple', slots: ['1mm'] }, { board: 'b', slots: ['1mm'] }),
    '--coupons',
    'mine.json',
  );
  expect(flat(out)).toMatch(
    /Coupons not used 2 row 1: the cut meets no such wood; row 2: a single other board says too little about the wood/u,
  );
  expect(flat(out)).toContain('prior, not measured on your board');
});

test('the file named on the command line stands for the rows of the job', async () => {
  writeFileSync(
    join(folder, 'job.json'),
    JSON.stringify({ schema: 'pourproof/job@1', coupons: [{ slots: ['severe'] }, { slots: ['severe'] }] }),
  );
  const own = await vet(file({ slots: ['clean'] }), '--job', 'job.json');
  expect(flat(own.out)).toContain('calibrated with 2 coupons, 2 slots');
  const named = await vet(file({ slots: ['clean'] }), '--job', 'job.json', '--coupons', 'mine.json');
  expect(flat(named.out)).toContain('calibrated with 1 coupon, 1 slot)');
});

test.each<readonly [string, unknown, RegExp]>([
  ['a bad slot', file({ slots: ['1mm'] }, { slots: ['2'] }), /coupons, row 2, slot 1: .*2/u],
  ['a bad type', file({ slots: [1] }), /coupons, row 1, slot 1: /u],
  ['another schema', { schema: 'pourproof/job@1', coupons: [] }, /not a pourproof\/coupons@1 file/u],
])('%s is one message with its row, and exit code 2', async (_, rows, message) => {
  const { code, out, err } = await vet(rows, '--coupons', 'mine.json');
  expect(code).toBe(2);
  expect(out).toBe('');
  expect(err).toMatch(message);
  expect(err).not.toMatch(/\bat .*:\d+:\d+/u);
});
