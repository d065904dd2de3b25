import type { Report } from '@pourproof/proof';
import { describe, expect, test } from 'vitest';
import { type Captured, captured } from '../support/cli/captured-run.ts';

const vet = (...args: string[]): Promise<Captured> => captured(['vet', '--bit', 'flat:2mm', ...args]);
const report = async (...args: string[]): Promise<Report> =>
  JSON.parse((await vet(...args, '--json')).out) as Report;
const LORA = ['--font', 'fixtures/fonts/lora-400.ttf', '--cap-height', '15mm'];
const size = ({ artwork: { boundsMm: b } }: Report): [number, number] => [b[2] - b[0], b[3] - b[1]];

describe('lettering on the command line', () => {
  test('single-line letters are as wide as the smallest bit, and it enters all of them', async () => {
    const { strokes, findings, cut, artwork } = await report(
      '--text',
      'Anno 1987',
      '--single-line',
      '--cap-height',
      '15mm',
    );
    expect(strokes.narrowestMm).toBeCloseTo(2, 1);
    expect(findings.map((finding) => finding.code)).not.toContain('bit-cannot-enter');
    expect(cut.areaMm2 / artwork.areaMm2).toBeGreaterThan(0.97);
  });

  test('tracking adds its length between letters', async () => {
    const [tight] = size(await report('--text', 'HHH', ...LORA));
    const [wide] = size(await report('--text', 'HHH', ...LORA, '--tracking', '3mm'));
    expect(wide - tight).toBeCloseTo(6, 6);
  });

  test('line spacing stretches the block, alignment moves the shorter line', async () => {
    const [, near] = size(await report('--text', 'HHH\\nH', ...LORA));
    const [, far] = size(await report('--text', 'HHH\\nH', ...LORA, '--line-spacing', '2'));
    expect(far).toBeGreaterThan(near + 10);
    const left = (await report('--text', 'HHH\\nH', ...LORA)).strokes.narrowestAt;
    const right = await report('--text', 'HHH\\nH', ...LORA, '--align', 'right');
    expect(size(right)[0]).toBeCloseTo(size(await report('--text', 'HHH\\nH', ...LORA))[0], 6);
    expect(left).not.toBeNull();
  });

  test('an arc bends the line: it gets taller', async () => {
    expect(size(await report('--text', 'HHHHHH', ...LORA, '--arc', '40mm'))[1]).toBeGreaterThan(25);
  });

  test('a heavier weight of a variable font paints more', async () => {
    const font = [
      '--font',
      'fixtures/fonts/josefin-sans-latin-variable.woff2',
      '--cap-height',
      '15mm',
      '--text',
      'H',
    ];
    const light = (await report(...font, '--axis', 'wght=200')).artwork.areaMm2;
    expect((await report(...font, '--axis', 'wght=700')).artwork.areaMm2).toBeGreaterThan(1.5 * light);
  });

  test.each([
    [['fixtures/demo/board.svg', '--align', 'left'], '--align sets lettering, but a file is vetted.'],
    [
      ['fixtures/demo/board.svg', '--cap-height', '9mm'],
      '--cap-height sets lettering, but a file is vetted.',
    ],
    [
      ['--text', 'x', ...LORA, '--file-unit', 'in'],
      '--file-unit says how a file is read, but lettering is vetted.',
    ],
    [
      ['--text', 'x', ...LORA, '--single-line'],
      '--single-line has letters of its own, but --font is given too.',
    ],
    [['--text', 'x', ...LORA, '--align', 'middle'], '--align "middle" is unknown.'],
  ])('%j is refused with a remedy', async (args, message) => {
    const { code: status, err: stderr } = await vet(...args);
    expect(status).toBe(2);
    expect(stderr).toContain(`pourproof: ${message}\n  What to do: `);
    expect(stderr).not.toMatch(/\n\s+at /u);
  });

  test.each([
    [['--arc', '80mm around'], '--arc "80mm around" is not a radius and a side.', 'Write it like "80mm"'],
    [['--arc', '0mm'], '--arc "0mm" has no radius above 0.', 'Write it like "80mm"'],
    [
      ['--axis', 'weight'],
      '--axis "weight" is not a tag of four letters and a number.',
      'Write it like "wght=600"',
    ],
    [
      ['--line-spacing', '-1'],
      '--line-spacing is -1; it must be above 0 and at most 100.',
      'Type it as in 1.2.',
    ],
    [['--tracking', '2'], '--tracking: "2" has no unit.', 'Did you mean 2mm or 2in?'],
  ])('%j cannot be read, and the message shows how it is written', async (args, what, remedy) => {
    const { code: status, err: stderr } = await vet('--text', 'x', ...LORA, ...args);
    expect(status).toBe(2);
    expect(stderr).toContain(`pourproof: ${what}\n  What to do: ${remedy}`);
  });
});
