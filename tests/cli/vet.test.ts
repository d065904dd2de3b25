import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { stripVTControlCharacters } from 'node:util';
import { mmFromInches } from '@pourproof/plane';
import { reportSchema } from '@pourproof/proof';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Captured, captured, fixture } from '../support/cli/captured-run.ts';

/** A disc of 40 mm: any usual bit enters everywhere. */
const DISC = svg('<circle cx="30" cy="30" r="20"/>');
/** A slot of 20 × 1 mm: no 1/8 in bit enters. */
const SLOT = svg('<path d="M20 30H40V31H20Z"/>');
/** Nothing but the artwork itself can be at fault here: pale colour stays in dark, sealed wood and the scale is fine. */
const EASY = ['--wood', 'walnut', '--seal', 'epoxy', '--weigh', 'fine'];

let folder: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'pourproof-vet-'));
  writeFileSync(join(folder, 'disc.svg'), DISC);
  writeFileSync(join(folder, 'slot.svg'), SLOT);
  writeFileSync(join(folder, 'empty.svg'), '');
  writeFileSync(
    join(folder, 'job.json'),
    JSON.stringify({
      schema: 'pourproof/job@1',
      artwork: 'disc.svg',
      width: '2in',
      wood: 'walnut',
      seal: 'epoxy',
    }),
  );
});

afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

function svg(content: string): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="60mm" viewBox="0 0 60 60">${content}</svg>`;
}

function vet(...argv: readonly string[]): Promise<Captured> {
  return captured(['vet', ...argv], { cwd: folder });
}

describe('the exit code', () => {
  test.each([
    ['nothing speaks against it', ['disc.svg', ...EASY], 0],
    ['nothing speaks against it, at the strictest', ['disc.svg', ...EASY, '--fail-on', 'note'], 0],
    ['the bit cannot enter', ['slot.svg', ...EASY], 1],
    ['the bit cannot enter but nobody minds', ['slot.svg', ...EASY, '--fail-on', 'never'], 0],
    ['one of two is stopped', ['disc.svg', 'slot.svg', ...EASY], 1],
    ['one of two cannot be read', ['empty.svg', 'slot.svg', ...EASY], 2],
  ])('when %s', async (_, argv, code) => {
    expect((await vet(...argv)).code).toBe(code);
  });

  test('is 1 for a caution only with --fail-on caution', async () => {
    const argv = ['disc.svg', '--wood', 'poplar', '--seal', 'shellac', '--json'];
    const { out } = await vet(...argv, '--fail-on', 'never');
    const severities = JSON.parse(out).findings.map((finding: { severity: string }) => finding.severity);
    const worst = severities.includes('stop') ? 'stop' : severities.includes('caution') ? 'caution' : 'none';
    for (const level of ['stop', 'caution', 'note'] as const) {
      const order = ['none', 'note', 'caution', 'stop'];
      expect((await vet(...argv, '--fail-on', level)).code).toBe(
        order.indexOf(worst) >= order.indexOf(level) ? 1 : 0,
      );
    }
  });
});

describe('several files', () => {
  test('give one text each, and what cannot be read is told apart from what can', async () => {
    const { out, err } = await vet('disc.svg', 'empty.svg', 'slot.svg', ...EASY);
    expect(out).toMatch(/^CLEAR {2}disc\.svg/mu);
    expect(out).toMatch(/^STOP {2}slot\.svg/mu);
    expect(err).toBe(
      'pourproof: empty.svg is empty.\n  What to do: Export the drawing again and check the size of the file.\n',
    );
  });

  test('give a JSON array, one file a JSON object, each true to its schema', async () => {
    const several = JSON.parse((await vet('disc.svg', 'slot.svg', ...EASY, '--json')).out);
    const single = JSON.parse((await vet('disc.svg', ...EASY, '--json')).out);
    expect(several.map((report: unknown) => reportSchema.parse(report).verdict)).toEqual(['clear', 'stop']);
    expect(reportSchema.parse(single)).toEqual(several[0]);
  });

  test('share one sheet with a page for each', async () => {
    await vet('disc.svg', 'slot.svg', ...EASY, '--report', 'both.html');
    const html = readFileSync(join(folder, 'both.html'), 'utf8');
    expect(html.match(/<main class="sheet">/gu)).toHaveLength(2);
  });
});

describe('measures', () => {
  test('of a slot cut by a 1/8 in bit agree with the closed form 80 − (4 − π) r²', async () => {
    writeFileSync(join(folder, 'wide.svg'), svg('<path d="M20 30H40V34H20Z"/>'));
    const { out } = await vet('wide.svg', '--bit', 'flat:1/8in', ...EASY, '--json');
    const r = mmFromInches(1 / 8) / 2;
    expect(JSON.parse(out).cut.areaMm2).toBeCloseTo(80 - (4 - Math.PI) * r * r, 6);
  });

  test('come in the unit that was typed, or in the one asked for', async () => {
    expect((await vet('disc.svg', '--depth', '1/8in', ...EASY)).out).toContain('1/8 in deep');
    expect((await vet('disc.svg', '--depth', '3mm', ...EASY)).out).toContain('3 mm deep');
    expect((await vet('disc.svg', '--depth', '1/8in', '--units', 'mm', ...EASY)).out).toContain(
      '3.175 mm deep',
    );
    expect((await vet('disc.svg', '--bit', 'flat:1/8"', '--full', ...EASY)).out).toMatch(
      /Bit +1\/8 in flat/u,
    );
    // bits are bought in inches and in millimetres by all: the depth says how a maker measures
    const [bit, depth] = [
      ['--bit', 'flat:1/8in'],
      ['--depth', '3mm'],
    ] as const;
    for (const flags of [
      [...bit, ...depth],
      [...depth, ...bit],
    ]) {
      const { out } = await vet('disc.svg', ...flags, '--full', ...EASY);
      expect(out).toMatch(/Bit +3\.175 mm flat/u);
    }
  });

  test('name every value that was not given, with what was taken instead', async () => {
    const argv = ['disc.svg', '--depth', '3mm', ...EASY];
    const report = JSON.parse((await vet(...argv, '--json')).out);
    const [, listed = ''] =
      /^Not given, so taken as usual\n(.*)$/msu.exec((await vet(...argv, '--full')).out) ?? [];
    const rows = [...listed.matchAll(/^ {2}(\S+) +(\S.*)$/gmu)].map(([, flag, value]) => [flag, value]);
    expect(rows.map(([flag]) => flag)).toEqual(
      report.defaults.map((key: string) => key.replace(/[A-Z]/gu, (letter) => `-${letter.toLowerCase()}`)),
    );
    expect(Object.fromEntries(rows)).toMatchObject({
      bit: '3.175 mm flat',
      grain: '0°',
      oiled: 'no',
      'seal-hours': '24 h',
      'pigment-pct': '3 %',
      resin: 'coating',
      level: '0.5 mm',
      'shop-temp': '25 °C',
      tolerance: '0.005 mm',
    });
    expect(rows.map(([flag]) => flag)).not.toContain('depth');
    // on one screen they stand in a line
    expect((await vet(...argv)).out).toMatch(/^Usual {2}bit 3\.175 mm flat, grain 0°, /mu);
  });

  test('say nothing of the coats and the wait of a seal that there is none of', async () => {
    const { out } = await vet('disc.svg', '--wood', 'maple', '--full');
    expect(out).not.toMatch(/^ {2}(?:coats|seal-hours) /mu);
  });
});

describe('a job file', () => {
  test('names its artwork from where it stands, and flags override it', async () => {
    const fromElsewhere = await captured(['vet', '--job', join(folder, 'job.json'), '--json'], {
      cwd: tmpdir(),
    });
    const report = JSON.parse(fromElsewhere.out);
    expect(report.artwork.boundsMm[2] - report.artwork.boundsMm[0]).toBeCloseTo(50.8, 3);
    const overridden = JSON.parse((await vet('--job', 'job.json', '--height', '30mm', '--json')).out);
    expect(overridden.artwork.boundsMm[2] - overridden.artwork.boundsMm[0]).toBeCloseTo(30, 3);
  });

  test('of the fixtures can be taken for any artwork', async () => {
    const { code, out } = await vet('disc.svg', '--job', fixture('jobs/sign.json'), '--full');
    expect(code).toBe(0);
    expect(out).toMatch(/Bits, in order +1\/8 in flat, then 1\/16 in flat/u);
  });
});

describe('the maker’s own materials', () => {
  test('are taken from the file that is named, or from materials.json beside the job file', async () => {
    const argv = ['disc.svg', '--wood', 'barn-find'];
    const unknown = await vet(...argv);
    expect(unknown.code).toBe(2);
    expect(unknown.err).toContain('wood "barn-find" is unknown');
    expect((await vet('disc.svg', '--materials', 'none.json')).err).toContain(
      'there is no materials file at',
    );
  });
});

describe('a calendar', () => {
  test('is written from the start that was given, and replaced by the next run', async () => {
    const argv = ['disc.svg', ...EASY, '--start', '2026-12-01 09:00', '--calendar', 'work.ics', '--full'];
    for (let run = 0; run < 2; run++) {
      const { out, err } = await vet(...argv);
      expect(err).toBe('');
      expect(out).toMatch(/^Calendar written to .*work\.ics$/mu);
      expect(out).toMatch(/^The work\n {2}Carve +2026-12-01 09:00/mu);
    }
    const calendar = readFileSync(join(folder, 'work.ics'), 'utf8');
    expect(calendar).toMatch(/^BEGIN:VCALENDAR/u);
    expect(calendar).toContain('20261201T090000');
  });

  test('needs a start', async () => {
    expect((await vet('disc.svg', '--calendar', 'no.ics')).err).toBe(
      'pourproof: --calendar needs the day and time when carving starts.\n  What to do: Add --start "2026-12-01 09:00" with yours.\n',
    );
  });
});

describe('lettering', () => {
  test('is vetted by its words, and a typed \\n breaks the line', async () => {
    const font = ['--font', fixture('fonts/lora-400.ttf'), '--cap-height', '60mm', ...EASY, '--json'];
    const one = JSON.parse((await vet('--text', 'Oak', ...font)).out);
    const two = JSON.parse((await vet('--text', 'Oak\\nOak', ...font)).out);
    expect(one.artwork).toMatchObject({ file: 'Oak', format: 'lettering' });
    expect(two.artwork.areaMm2 / one.artwork.areaMm2).toBeCloseTo(2, 6);
    const height = ({ artwork }: typeof one): number => artwork.boundsMm[3] - artwork.boundsMm[1];
    expect(height(two)).toBeGreaterThan(1.5 * height(one));
  });
});

describe('outputs', () => {
  test('leave every input as it was', async () => {
    const digest = (): string =>
      createHash('sha256')
        .update(readFileSync(join(folder, 'slot.svg')))
        .digest('hex');
    const before = digest();
    const { err } = await vet('slot.svg', ...EASY, '--report', 's.html', '--overlay', 'o.svg');
    expect(err).toBe('');
    expect(digest()).toBe(before);
  });

  test('the overlay is in real size, in the artwork’s own coordinates, with one named group each', async () => {
    await vet('slot.svg', ...EASY, '--overlay', 'over.svg');
    const overlay = readFileSync(join(folder, 'over.svg'), 'utf8');
    const [, width, height, box] =
      /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="([^"]+)"/u.exec(overlay) ?? [];
    expect(box).toBe(`8 18 ${width} ${height}`);
    expect([...overlay.matchAll(/<g id="([a-z-]+)" /gu)].map((match) => match[1])).toEqual([
      'artwork',
      'blocks',
      'bleed-high',
      'bleed-median',
      'bleed-low',
      'cut',
      'left-standing',
      'narrow-strokes',
      'bleed-walls',
      'levelling-lost',
      'levelling-spoilt',
      'levelling-close',
      'levelling-holds',
      'levelling-uncut',
      'goes-first',
      'marks',
      'more-places',
    ]);
  });

  test('the overlay can be vetted back: its artwork has the same size', async () => {
    await vet('disc.svg', ...EASY, '--overlay', 'again.svg');
    const { out } = await vet('again.svg', ...EASY, '--json');
    // hairlines of the overlay's own add to the disc, half a line's width at most on each side, and so does the band of bleed
    const [left, , right] = JSON.parse(out).artwork.boundsMm as number[];
    expect(Math.abs(right - left - 40)).toBeLessThan(0.3);
  });

  test('of an earlier run are replaced', async () => {
    for (let run = 0; run < 2; run++) {
      const { err } = await vet('slot.svg', ...EASY, '--report', 'twice.html', '--overlay', 'twice.svg');
      expect(err).toBe('');
    }
  });

  test('an overlay is not written where a file cannot be read', async () => {
    await vet('empty.svg', '--overlay', 'never.svg');
    expect(() => readFileSync(join(folder, 'never.svg'))).toThrow(/ENOENT/u);
  });
});

describe('colour', () => {
  const terminal = (env: Record<string, string>): Promise<Captured> => {
    const pieces: string[] = [];
    const out = { write: (text: string) => void pieces.push(text), isTerminal: true };
    return captured(['vet', 'slot.svg', ...EASY], { cwd: folder, out, env }).then((answer) => ({
      ...answer,
      out: pieces.join(''),
    }));
  };

  test('marks the verdict in a terminal, and never with NO_COLOR or elsewhere', async () => {
    const plain = (await vet('slot.svg', ...EASY)).out;
    const coloured = (await terminal({})).out;
    expect(coloured.startsWith('\u001b[1;31mSTOP\u001b[0m  slot.svg')).toBe(true);
    expect(stripVTControlCharacters(coloured)).toBe(plain);
    expect((await terminal({ NO_COLOR: '1' })).out).toBe(plain);
  });
});
