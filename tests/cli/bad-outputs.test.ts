import { linkSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import {
  type BadInput,
  expectRefusals,
  folderWithSquare,
  SQUARE,
  said,
  vet,
} from '../support/cli/bad-input.ts';
import { captured } from '../support/cli/captured-run.ts';

const folder = folderWithSquare((at) => {
  writeFileSync(join(at, 'notes.html'), '<p>My own notes.</p>');
  writeFileSync(join(at, 'nothing.svg'), SQUARE.replace(/<path[^>]*>/u, ''));
  symlinkSync(join(at, 'square.svg'), join(at, 'soft-link.svg'));
  linkSync(join(at, 'square.svg'), join(at, 'hard-link.svg'));
});

const CASES: readonly BadInput[] = [
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
      '--overlay can show one artwork, but 2 are given.',
      'Vet them one at a time, each with its own --overlay.',
    ),
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

expectRefusals('outputs', CASES, folder);

test('a place that may not be written is told with a remedy', async () => {
  const writeFile = (): Promise<void> => Promise.reject(Object.assign(new Error('no'), { code: 'EACCES' }));
  const { code, err } = await captured(vet('square.svg', '--report', 'locked.html'), {
    cwd: folder(),
    writeFile,
  });
  expect({ code, err }).toEqual({
    code: 2,
    err: said(
      `--report: ${join(folder(), 'locked.html')} may not be written.`,
      'Name a place that you may write to.',
    ),
  });
});
