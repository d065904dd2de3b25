import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { captured, fixture } from '../support/cli/captured-run.ts';
import { expectGolden } from '../support/expect-golden.ts';

let folder: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'pourproof-golden-'));
});

afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

test('the demo order is stopped, and says why, where and what to do', async () => {
  const { code, out, err } = await captured(['vet', '--job', fixture('demo/job.json')]);
  const codes = [...out.matchAll(/^\d+\. [A-Z]+ {2}.*\[([a-z-]+)\]$/gmu)].map((match) => match[1]);
  expect(codes).toEqual(
    expect.arrayContaining(['bit-cannot-enter', 'stroke-near-bit-width', 'high-bleed-wall']),
  );
  expectGolden(new URL('demo.txt', import.meta.url), out);
  expect({ code, err }).toEqual({ code: 1, err: '' });
});

test('with --full the demo order is told whole', async () => {
  const { code, out, err } = await captured(['vet', '--job', fixture('demo/job.json'), '--full']);
  expectGolden(new URL('demo-full.txt', import.meta.url), out);
  expect({ code, err }).toEqual({ code: 1, err: '' });
});

test('the changed demo order is clear', async () => {
  const { code, out, err } = await captured([
    'vet',
    '--job',
    fixture('demo/job-after.json'),
    '--fail-on',
    'note',
  ]);
  expectGolden(new URL('demo-after.txt', import.meta.url), out);
  expect({ code, err }).toEqual({ code: 0, err: '' });
});

test('help shows the simple flags first and three examples', async () => {
  const { code, out, err } = await captured(['--help']);
  expectGolden(new URL('help.txt', import.meta.url), out);
  expect({ code, err }).toEqual({ code: 0, err: '' });
});
