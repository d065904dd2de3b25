import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import {
  type BadInput,
  expectOwnWords,
  expectRefusals,
  folderWithSquare,
  SQUARE,
  said,
  vet,
} from '../support/cli/bad-input.ts';
import { fixture } from '../support/cli/captured-run.ts';

const FONT = fixture('fonts/lora-400.ttf');
const JUNK = Uint8Array.from({ length: 4096 }, (_, k) => (k * 197 + (k >> 3) * 31) & 0xff);

const folder = folderWithSquare((at) => {
  const write = (name: string, content: string | Uint8Array): void => writeFileSync(join(at, name), content);
  write('empty.svg', '');
  write('nothing.svg', SQUARE.replace(/<path[^>]*>/u, ''));
  write('broken.json', '{"schema": "pourproof/job@1", "wood": ');
  write('wrong.json', '{"schema": "pourproof/job@1", "wod": "maple", "coats": 99}');
  write('list.json', '[1, 2]');
  write('both.json', '{"schema": "pourproof/job@1", "artwork": "square.svg", "text": "Oak"}');
  write('sizes.json', '{"schema": "pourproof/job@1", "width": "40mm", "height": "40mm"}');
  mkdirSync(join(at, 'folder.svg'));
  for (const name of ['junk.svg', 'junk.dxf', 'junk.ttf']) {
    write(name, JUNK);
  }
  write('picture.png', Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0, 13));
  write('cut-off.svg', SQUARE.slice(0, 110));
  write('cut-off.dxf', '0\nSECTION\n2\nENTITIES\n0\nLINE\n10\n');
  write('letter.txt', 'Dear maker, please carve my name.\n');
});

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
    err: said('empty.svg is empty.', 'Export the drawing again and check the size of the file.'),
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
    name: 'an arc that is no arc',
    argv: vet('--text', 'Oak', '--font', FONT, '--cap-height', '15mm', '--arc', '1e300mm'),
    err: said(
      '--arc "1e300mm" is wider than 1000 m.',
      'A line on such a circle is straight: leave the arc out.',
    ),
  },
  {
    name: 'text without a font',
    argv: vet('--text', 'Oak'),
    err: said(
      '--font: lettering needs a font.',
      'Give --font with the file of the font that will be carved, or --single-line for letters of single strokes.',
    ),
  },
  {
    name: 'text without a size',
    argv: vet('--text', 'Oak', '--font', FONT),
    err: said('--cap-height: lettering needs a size.', 'Give --cap-height 15mm, or --width 120mm.'),
  },
  {
    name: 'text sized by scale',
    argv: vet('--text', 'Oak', '--font', FONT, '--scale', '2'),
    err: said('--scale does not size lettering.', 'Give --cap-height 15mm or --width 120mm.'),
  },
  {
    name: 'text sized by its capitals and a scale, as ways out name it',
    argv: vet('--text', 'Oak', '--font', FONT, '--cap-height', '15mm', '--scale', '2.61'),
    err: said(
      '--scale does not size lettering.',
      'Leave it out and give --cap-height 39.15mm, which is 2.61 times as large.',
    ),
  },
  {
    name: 'the same in inches',
    argv: vet('--text', 'Oak', '--font', FONT, '--cap-height', '3/4in', '--scale', '1.5', '--units', 'in'),
    err: said(
      '--scale does not size lettering.',
      'Leave it out and give --cap-height 1.125in, which is 1.5 times as large.',
    ),
  },
  {
    name: 'text with two sizes',
    argv: vet('--text', 'Oak', '--font', FONT, '--cap-height', '15mm', '--width', '90mm'),
    err: said('--cap-height and --width are given together, and they may disagree.', 'Give one of them.'),
  },
  {
    name: 'capitals without height',
    argv: vet('--text', 'Oak', '--font', FONT, '--cap-height', '0mm'),
    err: said(
      '--cap-height is 0 mm; it must be above 0 and at most 10000 mm.',
      'Type it as in 120mm or 4-3/4in.',
    ),
  },
  {
    name: 'a font that is not there',
    argv: vet('--text', 'Oak', '--font', 'none.ttf', '--cap-height', '15mm'),
    err: said('there is no font at FOLDER/none.ttf.', 'Check the path and the spelling.'),
  },
  {
    name: 'sizes that disagree in a job file',
    argv: vet('square.svg', '--job', 'sizes.json'),
    err: said(
      'width and height are given together, and they may disagree.',
      'Check them, and give one of width, height and scale: the artwork keeps its proportions.',
    ),
  },
];

const JOB_CASES: readonly BadInput[] = [
  {
    name: 'a job of a drawing and of lettering at once',
    argv: vet('--job', 'both.json'),
    err: said(
      'the job names both artwork and text.',
      'Check which of them is meant, and take the other one out.',
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
];

const OWN_WORDS: readonly (readonly [string, readonly string[]])[] = [
  ['noise in the place of an SVG', vet('junk.svg')],
  ['noise in the place of a DXF', vet('junk.dxf')],
  ['an SVG that is cut off', vet('cut-off.svg')],
  ['a DXF that is cut off', vet('cut-off.dxf')],
  ['noise in the place of a font', vet('--text', 'Oak', '--font', 'junk.ttf', '--cap-height', '15mm')],
  ['a letter that the font has not', vet('--text', '木', '--font', FONT, '--cap-height', '15mm')],
  ['a job file with a slip', vet('square.svg', '--job', 'wrong.json')],
  ['a job file that is a list', vet('square.svg', '--job', 'list.json')],
];

expectRefusals('files', FILE_CASES, folder);
expectRefusals('jobs', JOB_CASES, folder);
expectRefusals('contents', READER_CASES, folder);
expectOwnWords(OWN_WORDS, folder);
