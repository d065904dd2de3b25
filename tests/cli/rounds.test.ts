import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { captured } from '../support/cli/captured-run.ts';

const folder = mkdtempSync(join(tmpdir(), 'rounds-'));
afterAll(() => rmSync(folder, { recursive: true }));

// an invented plate: a red disc on a black square, each on a layer of its own
writeFileSync(
  join(folder, 'plate.svg'),
  '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="60mm" viewBox="0 0 60 60"><g id="Ground"><rect x="5" y="5" width="40" height="40"/></g><g id="Disc"><circle cx="25" cy="25" r="8" fill="#e30613"/></g></svg>',
);
const JOB = [
  ...['--bit', 'flat:2mm', '--depth', '3mm', '--wood', 'maple', '--grain', '0deg', '--seal', 'epoxy'],
  ...['--seal-hours', '24h', '--level', '0.5mm', '--weigh', 'fine', '--boards', '6'],
];
const vet = (...flags: string[]) => captured(['vet', 'plate.svg', ...JOB, ...flags], { cwd: folder });
const flat = (text: string): string => text.replace(/\s+/gu, ' ');

test('the way out of touching colours, as typed, is clear', async () => {
  const stopped = await vet('--full');
  expect(stopped.code).toBe(1);
  expect(flat(stopped.out)).toContain('levelled before the next is carved: black, then red.');
  const { code, out } = await vet('--rounds', 'black, red');
  expect(code).toBe(0);
  expect(flat(out)).toContain('up to 3.5 mm deep');
  expect(flat(out)).toMatch(/Mix black, round 1: 40\.43 g.* Mix red, round 2: 5\.11 g/u);
  expect(flat(out)).toMatch(/of cutting in 2 rounds; last level/u);
});

test('layers and paints name the same rounds, from the command line and from a job file', async () => {
  const json = async (...flags: string[]) => JSON.parse((await vet('--json', ...flags)).out);
  const { pour, ...byPaint } = await json('--rounds', 'black, #e30613:2mm');
  const byLayer = await json('--rounds', 'Ground, disc:2mm');
  expect(byLayer.cut).toEqual(byPaint.cut);
  expect(byLayer.pour.colours.map(({ name }: { name: string }) => name)).toEqual(['Ground', 'Disc']);
  writeFileSync(
    join(folder, 'job.json'),
    JSON.stringify({
      schema: 'pourproof/job@1',
      rounds: [{ colours: ['black'] }, { colours: ['red'], depth: '2mm' }],
    }),
  );
  expect(await json('--job', 'job.json')).toEqual({ pour, ...byPaint });
});

test('sheet and calendar have every round', async () => {
  const { code } = await vet(
    ...['--rounds', 'black, red', '--start', '2026-12-01 09:00'],
    ...['--report', 'sheet.html', '--calendar', 'work.ics'],
  );
  expect(code).toBe(0);
  const sheet = readFileSync(join(folder, 'sheet.html'), 'utf8');
  expect(sheet).toContain('<h2>Rounds</h2>');
  expect(sheet).toMatch(/Round 2/u);
  expect(existsSync(join(folder, 'work.ics'))).toBe(true);
  const events = readFileSync(join(folder, 'work.ics'), 'utf8').split('BEGIN:VEVENT').slice(1);
  expect(events.filter((event) => event.includes('SUMMARY:Round 1: '))).toHaveLength(7);
  expect(events.filter((event) => event.includes('SUMMARY:Round 2: '))).toHaveLength(7);
});

test('bits of a round stand on the sheet and in the calendar, from the command line and from a job file', async () => {
  const rounds = 'black, red:2mm with flat:3mm+flat:1mm';
  const { code, out } = await vet(
    ...['--rounds', rounds, '--start', '2026-12-01 09:00', '--full'],
    ...['--report', 'bits.html', '--calendar', 'bits.ics'],
  );
  expect(code).toBe(0);
  expect(flat(out)).toContain('bits 3 mm flat bit, then 1 mm flat bit');
  expect(readFileSync(join(folder, 'bits.html'), 'utf8')).toMatch(/Round 2: 3\smm flat, then 1\smm flat/u);
  const calendar = readFileSync(join(folder, 'bits.ics'), 'utf8').replaceAll(/\r?\n[ \t]/gu, '');
  expect(calendar).toContain('With the 3 mm flat bit\\, then 1 mm flat bit.');
  writeFileSync(
    join(folder, 'bits.json'),
    JSON.stringify({
      schema: 'pourproof/job@1',
      rounds: [{ colours: ['black'] }, { colours: ['red'], depth: '2mm', bit: ['flat:3mm', 'flat:1mm'] }],
    }),
  );
  const [typed, filed] = [await vet('--rounds', rounds, '--json'), await vet('--job', 'bits.json', '--json')];
  expect(JSON.parse(filed.out)).toEqual(JSON.parse(typed.out));
});
