import { linkSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { FINDING_CODES } from '@pourproof/proof';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { captured, fixture } from './captured-run.ts';

const SQUARE =
  '<svg xmlns="http://www.w3.org/2000/svg" width="20mm" height="20mm" viewBox="0 0 20 20"><path d="M2 2H18V18H2Z"/></svg>';
const FONT = fixture('fonts/lora-400.ttf');

let folder: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'pourproof-bad-input-'));
  writeFileSync(join(folder, 'square.svg'), SQUARE);
  writeFileSync(join(folder, 'empty.svg'), '');
  writeFileSync(join(folder, 'nothing.svg'), SQUARE.replace(/<path[^>]*>/u, ''));
  writeFileSync(join(folder, 'broken.json'), '{"schema": "pourproof/job@1", "wood": ');
  writeFileSync(join(folder, 'wrong.json'), '{"schema": "pourproof/job@1", "wod": "maple", "coats": 99}');
  writeFileSync(join(folder, 'list.json'), '[1, 2]');
  writeFileSync(
    join(folder, 'both.json'),
    '{"schema": "pourproof/job@1", "artwork": "square.svg", "text": "Oak"}',
  );
  writeFileSync(
    join(folder, 'sizes.json'),
    '{"schema": "pourproof/job@1", "width": "40mm", "height": "40mm"}',
  );
  writeFileSync(join(folder, 'notes.html'), '<p>My own notes.</p>');
  symlinkSync(join(folder, 'square.svg'), join(folder, 'soft-link.svg'));
  linkSync(join(folder, 'square.svg'), join(folder, 'hard-link.svg'));
  mkdirSync(join(folder, 'folder.svg'));
  const junk = Uint8Array.from({ length: 4096 }, (_, k) => (k * 197 + (k >> 3) * 31) & 0xff);
  writeFileSync(join(folder, 'junk.svg'), junk);
  writeFileSync(join(folder, 'junk.dxf'), junk);
  writeFileSync(join(folder, 'junk.ttf'), junk);
  writeFileSync(
    join(folder, 'picture.png'),
    Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0, 13),
  );
  writeFileSync(join(folder, 'cut-off.svg'), SQUARE.slice(0, 110));
  writeFileSync(join(folder, 'cut-off.dxf'), '0\nSECTION\n2\nENTITIES\n0\nLINE\n10\n');
  writeFileSync(join(folder, 'letter.txt'), 'Dear maker, please carve my name.\n');
});

afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

interface BadInput {
  readonly name: string;
  readonly argv: readonly string[];
  /** The whole message; `FOLDER` stands for the temporary folder, `CODES` for all findings there are. */
  readonly err: string;
}

const vet = (...argv: readonly string[]): readonly string[] => ['vet', ...argv];
const said = (message: string, remedy: string): string => `pourproof: ${message}\n  What to do: ${remedy}\n`;
const ALL_FLAGS = 'All flags: pourproof --help.';

const FLAG_CASES: readonly BadInput[] = [
  {
    name: 'a flag with a slip',
    argv: vet('square.svg', '--dept', '3mm'),
    err: said('there is no flag --dept.', `Did you mean --depth? ${ALL_FLAGS}`),
  },
  {
    name: 'a flag of another world',
    argv: vet('square.svg', '--frobnicate'),
    err: said('there is no flag --frobnicate.', ALL_FLAGS),
  },
  {
    name: 'a short flag',
    argv: vet('square.svg', '-d', '3mm'),
    err: said('there is no flag -d.', ALL_FLAGS),
  },
  {
    name: 'a flag that every object has',
    argv: vet('square.svg', '--__proto__', 'x'),
    err: said('there is no flag --__proto__.', ALL_FLAGS),
  },
  {
    name: 'a flag given twice',
    argv: vet('square.svg', '--wood', 'maple', '--wood', 'cherry'),
    err: said('--wood is given twice.', 'Give it once.'),
  },
  {
    name: 'a flag without its value at the end',
    argv: vet('square.svg', '--depth'),
    err: said('--depth needs a value.', 'Write --depth LENGTH: Depth of the pocket, such as 1/8in or 3mm.'),
  },
  {
    name: 'a flag without its value before another',
    argv: vet('square.svg', '--wood', '--json'),
    err: said('--wood needs a value.', 'Write --wood NAME: Wood of the board (pourproof list woods).'),
  },
  {
    name: 'a switch with a value',
    argv: vet('square.svg', '--json=yes'),
    err: said('--json takes no value, but got "yes".', 'Write --json alone.'),
  },
  {
    name: 'a unit of answer that is none',
    argv: vet('square.svg', '--units', 'cm'),
    err: said('--units "cm" is unknown.', 'Type mm or in.'),
  },
  {
    name: 'a level that is none',
    argv: vet('square.svg', '--fail-on', 'warning'),
    err: said('--fail-on "warning" is unknown.', 'Type stop, caution, note or never.'),
  },
  {
    name: 'no file at all',
    argv: vet('--bit', 'flat:1/8in'),
    err: said(
      'there is nothing to vet.',
      'Name an SVG or DXF file, as in: pourproof vet sign.svg --bit flat:1/8in',
    ),
  },
  {
    name: 'an unknown command',
    argv: ['vett', 'square.svg'],
    err: said(
      'there is no command "vett".',
      'Did you mean vet? Commands: vet, explain, list. See pourproof --help.',
    ),
  },
  {
    name: 'a file in the place of a command',
    argv: ['square.svg'],
    err: said('there is no command "square.svg".', 'Did you mean: pourproof vet square.svg'),
  },
  {
    name: 'an unknown list',
    argv: ['list', 'wood'],
    err: said(
      'there is no list "wood".',
      'Did you mean woods? Lists: woods, seals, resins, bits, findings, notices.',
    ),
  },
  {
    name: 'a list without a name',
    argv: ['list'],
    err: said('list needs a name.', 'Lists: woods, seals, resins, bits, findings, notices.'),
  },
  {
    name: 'an unknown finding',
    argv: ['explain', 'bit-can-not-enter'],
    err: said('there is no finding "bit-can-not-enter".', 'Did you mean bit-cannot-enter? Codes: CODES.'),
  },
];

const VALUE_CASES: readonly BadInput[] = [
  {
    name: 'a bare number',
    argv: vet('square.svg', '--depth', '3'),
    err: 'pourproof: depth: "3" has no unit. Did you mean 3mm or 3in?\n',
  },
  {
    name: 'a bare fraction',
    argv: vet('square.svg', '--width', '3/4'),
    err: 'pourproof: width: "3/4" has no unit. Did you mean 3/4mm or 3/4in?\n',
  },
  {
    name: 'a bare angle',
    argv: vet('square.svg', '--grain', '45'),
    err: 'pourproof: grain: "45" has no unit. Did you mean 45deg or 45rad?\n',
  },
  {
    name: 'a depth that is no number',
    argv: vet('square.svg', '--depth', 'NaN'),
    err: 'pourproof: depth: "NaN" is not a length. Type a number with its unit, such as 3.2mm or 1/8in.\n',
  },
  {
    name: 'a depth divided by zero',
    argv: vet('square.svg', '--depth', '1/0in'),
    err: 'pourproof: depth: "1/0in" is not a length: the number is not finite. Check the fraction.\n',
  },
  {
    name: 'a depth of nothing',
    argv: vet('square.svg', '--depth', '0mm'),
    err: 'pourproof: depth is 0 mm; a pocket needs a depth above 0, such as 1/8in or 3mm.\n',
  },
  {
    name: 'a depth below nothing',
    argv: vet('square.svg', '--depth', '-3mm'),
    err: 'pourproof: depth is -3 mm; a pocket needs a depth above 0, such as 1/8in or 3mm.\n',
  },
  {
    name: 'a depth beyond any board',
    argv: vet('square.svg', '--depth', '3m'),
    err: 'pourproof: depth is 3000 mm, deeper than any board here (100 mm). Check its unit.\n',
  },
  {
    name: 'a width of nothing',
    argv: vet('square.svg', '--width', '0mm'),
    err: 'pourproof: width is 0mm; it must be above 0, such as 120mm or 4-3/4in.\n',
  },
  {
    name: 'a height below nothing',
    argv: vet('square.svg', '--height', '-2in'),
    err: 'pourproof: height is -2in; it must be above 0, such as 120mm or 4-3/4in.\n',
  },
  {
    name: 'a width beyond any board',
    argv: vet('square.svg', '--width', '1e30mm'),
    err: 'pourproof: width is 1e30mm, longer than any board (10 m). Check its unit.\n',
  },
  {
    name: 'two sizes that may disagree',
    argv: vet('square.svg', '--width', '20mm', '--height', '40mm'),
    err: 'pourproof: width and height are given together, and they may disagree. Check them, and give one of width, height and scale: the artwork keeps its proportions.\n',
  },
  {
    name: 'a scale with a unit',
    argv: vet('square.svg', '--scale', '2mm'),
    err: said('--scale "2mm" is not a number.', 'It is a factor without a unit, such as 1.25.'),
  },
  {
    name: 'a scale that is no number',
    argv: vet('square.svg', '--scale', 'NaN'),
    err: said('--scale "NaN" is not a number.', 'It is a factor without a unit, such as 1.25.'),
  },
  {
    name: 'a scale of nothing',
    argv: vet('square.svg', '--scale', '0'),
    err: 'pourproof: scale is 0; it must be a factor between 0.0001 and 10000, such as 1.25.\n',
  },
  {
    name: 'half a coat',
    argv: vet('square.svg', '--coats', '1.5'),
    err: 'pourproof: coats is 1.5; it must be a whole number from 0 to 10.\n',
  },
  {
    name: 'coats in words',
    argv: vet('square.svg', '--coats', 'two'),
    err: said('--coats "two" is not a number.', 'It is a whole number, such as 2.'),
  },
  {
    name: 'an unknown bit',
    argv: vet('square.svg', '--bit', 'drill:3mm'),
    err: 'pourproof: bit: bit "drill:3mm" is of no known kind: "drill". Write it like flat:1/8in; kinds: flat, ball, bull, vee, taper, profile.\n',
  },
  {
    name: 'a bit of no size',
    argv: vet('square.svg', '--bit', 'flat:0mm'),
    err: 'pourproof: bit: bit "flat:0mm" has a size of 0 mm; sizes must be above 0.\n',
  },
  {
    name: 'a bit without its unit',
    argv: vet('square.svg', '--bit', 'flat:1/8'),
    err: 'pourproof: bit: "1/8" has no unit. Did you mean 1/8mm or 1/8in?\n',
  },
];

const FILE_CASES: readonly BadInput[] = [
  {
    name: 'a file that is not there',
    argv: vet('missing.svg'),
    err: said('there is no artwork at FOLDER/missing.svg.', 'Check the path and the spelling.'),
  },
  {
    name: 'a folder',
    argv: vet('folder.svg'),
    err: said('FOLDER/folder.svg is a folder.', 'Name the file inside it.'),
  },
  {
    name: 'an empty file',
    argv: vet('empty.svg'),
    err: said('artwork empty.svg is empty (0 bytes).', 'Export it again, or name another file.'),
  },
  {
    name: 'a job file that is not there',
    argv: vet('square.svg', '--job', 'missing.json'),
    err: said('there is no job file at FOLDER/missing.json.', 'Check the path and the spelling.'),
  },
  {
    name: 'text and a file at once',
    argv: vet('square.svg', '--text', 'Oak', '--font', FONT),
    err: said('both --text and square.svg are given.', 'Vet the file or the lettering, one at a time.'),
  },
  {
    name: 'text without a font',
    argv: vet('--text', 'Oak'),
    err: said(
      '--text needs a font.',
      'Add --font FILE with the font that will be carved, and --cap-height 15mm.',
    ),
  },
  {
    name: 'text without a size',
    argv: vet('--text', 'Oak', '--font', FONT),
    err: said('--text needs a size.', 'Add --cap-height 15mm, or --width 120mm.'),
  },
  {
    name: 'text sized by scale',
    argv: vet('--text', 'Oak', '--font', FONT, '--scale', '2'),
    err: said('--scale does not size lettering.', 'Give --cap-height 15mm or --width 120mm.'),
  },
  {
    name: 'text with two sizes',
    argv: vet('--text', 'Oak', '--font', FONT, '--cap-height', '15mm', '--width', '90mm'),
    err: said('--cap-height and --width are given together.', 'Give one of them.'),
  },
  {
    name: 'capitals without height',
    argv: vet('--text', 'Oak', '--font', FONT, '--cap-height', '0mm'),
    err: 'pourproof: capHeight is 0mm; it must be above 0, such as 120mm or 4-3/4in.\n',
  },
  {
    name: 'a font that is not there',
    argv: vet('--text', 'Oak', '--font', 'none.ttf', '--cap-height', '15mm'),
    err: said('there is no font at FOLDER/none.ttf.', 'Check the path and the spelling.'),
  },
  {
    name: 'sizes that disagree in a job file',
    argv: vet('square.svg', '--job', 'sizes.json'),
    err: 'pourproof: width and height are given together, and they may disagree. Check them, and give one of width, height and scale: the artwork keeps its proportions.\n',
  },
];

const JOB_CASES: readonly BadInput[] = [
  {
    name: 'a job of a drawing and of lettering at once',
    argv: vet('--job', 'both.json'),
    err: 'pourproof: both.json names both artwork and text. Check which of them is meant, and take the other one out.\n',
  },
];

const OUTPUT_CASES: readonly BadInput[] = [
  {
    name: 'an overlay over its own artwork',
    argv: vet('square.svg', '--overlay', 'square.svg'),
    err: said(
      '--overlay would write over square.svg, which is read. Nothing was written.',
      'Give --overlay another name.',
    ),
  },
  {
    name: 'an overlay over its artwork by a symbolic link',
    argv: vet('square.svg', '--overlay', 'soft-link.svg'),
    err: said(
      '--overlay would write over soft-link.svg, which is read. Nothing was written.',
      'Give --overlay another name.',
    ),
  },
  {
    name: 'an overlay over its artwork by a hard link',
    argv: vet('square.svg', '--overlay', 'hard-link.svg'),
    err: said(
      '--overlay would write over hard-link.svg, which is read. Nothing was written.',
      'Give --overlay another name.',
    ),
  },
  {
    name: 'a sheet over a page of the maker’s own',
    argv: vet('square.svg', '--report', 'notes.html'),
    err: said(
      '--report would write over notes.html, which pourproof did not make. Nothing was written.',
      'Give --report another name.',
    ),
  },
  {
    name: 'a sheet that is no HTML',
    argv: vet('square.svg', '--report', 'sheet.pdf'),
    err: said(
      '--report writes a .html file, but sheet.pdf does not end in .html.',
      'Give --report another name.',
    ),
  },
  {
    name: 'an overlay of several files',
    argv: vet('square.svg', 'nothing.svg', '--overlay', 'over.svg'),
    err: said(
      '--overlay can show one file, but 2 are given.',
      'Vet the files one at a time, each with its own --overlay.',
    ),
  },
];

const READER_CASES: readonly BadInput[] = [
  {
    name: 'a picture of dots',
    argv: vet('picture.png'),
    err: said(
      'picture.png is a PNG picture; only drawn shapes can be carved.',
      'Save the drawing as SVG or DXF and try again.',
    ),
  },
  {
    name: 'a letter',
    argv: vet('letter.txt'),
    err: said(
      'letter.txt is neither an SVG nor a DXF file.',
      'Save the drawing as SVG or DXF and try again.',
    ),
  },
  {
    name: 'a drawing that paints nothing',
    argv: vet('nothing.svg'),
    err: said(
      'nothing.svg has nothing painted in it, so there is nothing to cut.',
      'Check that the shapes have a fill or a stroke and are visible, and export the drawing again.',
    ),
  },
  {
    name: 'a job file that is cut off',
    argv: vet('square.svg', '--job', 'broken.json'),
    err: said(
      'broken.json is not JSON: Unexpected end of JSON input.',
      'Write it like fixtures/jobs/sign.json; the schema is in docs/schema/job@1.json.',
    ),
  },
  {
    name: 'a V bit that is more than flat',
    argv: vet('square.svg', '--bit', 'vee:200deg:1/2in'),
    err: 'pourproof: bit: bit "vee:200deg:1/2in" has an angle of 200°; it must lie between 0 and 180°.\n',
  },
  {
    name: 'an unknown seal',
    argv: vet('square.svg', '--seal', 'wax'),
    err: 'pourproof: seal "wax" is unknown. Known: none, sanding-sealer, shellac, epoxy.\n',
  },
  {
    name: 'a sheet in a folder that is not there',
    argv: vet('square.svg', '--report', 'no/where.html'),
    err: said('--report: there is no folder FOLDER/no.', 'Make it first, or name another place.'),
  },
  {
    name: 'an overlay below a file',
    argv: vet('square.svg', '--overlay', 'square.svg/over.svg'),
    err: said('--overlay: there is no folder FOLDER/square.svg.', 'Make it first, or name another place.'),
  },
];

/** What the readers and the job say in their own words, which their own tests hold. */
const OWN_WORDS: readonly (readonly [string, readonly string[]])[] = [
  ['noise in the place of an SVG', vet('junk.svg')],
  ['noise in the place of a DXF', vet('junk.dxf')],
  ['an SVG that is cut off', vet('cut-off.svg')],
  ['a DXF that is cut off', vet('cut-off.dxf')],
  ['noise in the place of a font', vet('--text', 'Oak', '--font', 'junk.ttf', '--cap-height', '15mm')],
  ['a letter that the font has not', vet('--text', '木', '--font', FONT, '--cap-height', '15mm')],
  ['a job file with a slip', vet('square.svg', '--job', 'wrong.json')],
  ['a job file that is a list', vet('square.svg', '--job', 'list.json')],
  ['an unknown wood', vet('square.svg', '--wood', 'mapel')],
  ['an unknown colour', vet('square.svg', '--colour', 'plaid')],
  ['an unknown way of levelling', vet('square.svg', '--level-by', 'teeth')],
];

test.each(OWN_WORDS)('%s is refused with exit code 2, one message and no stack trace', async (_, argv) => {
  const { code, out, err } = await captured(argv, { cwd: folder });
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(err.match(/^pourproof: /gmu)).toHaveLength(1);
  expect(err).toMatch(/^pourproof: \S/u);
  expect(err).not.toMatch(/\n {4}at |undefined|\[object/u);
});

test('a place that may not be written is told with a remedy', async () => {
  const writeFile = (): Promise<void> => Promise.reject(Object.assign(new Error('no'), { code: 'EACCES' }));
  const { code, err } = await captured(vet('square.svg', '--report', 'locked.html'), {
    cwd: folder,
    writeFile,
  });
  expect({ code, err }).toEqual({
    code: 2,
    err: said(
      `--report: ${join(folder, 'locked.html')} may not be written.`,
      'Name a place that you may write to.',
    ),
  });
});

describe.each([
  ['flags', FLAG_CASES],
  ['values', VALUE_CASES],
  ['files', FILE_CASES],
  ['jobs', JOB_CASES],
  ['outputs', OUTPUT_CASES],
  ['contents', READER_CASES],
] as const)('bad %s are refused with exit code 2 and one message', (_, cases) => {
  test.each(cases)('$name', async ({ argv, err }) => {
    const answer = await captured(argv, { cwd: folder });
    expect(answer).toEqual({
      code: 2,
      out: '',
      err: err.replaceAll('FOLDER', folder).replace('CODES', FINDING_CODES.join(', ')),
    });
  });
});
