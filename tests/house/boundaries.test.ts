import { spawnSync } from 'node:child_process';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { afterEach, describe, expect, test } from 'vitest';
import { sourceFiles } from '../support/source-files.ts';

const PLANTED = [
  [
    'plane',
    'artwork',
    "import { readArtwork } from '@pourproof/artwork';\nexport const planted = readArtwork;\n",
  ],
  [
    'artwork',
    'geometry',
    "import { medialAxis } from '../../geometry/src/index.ts';\nexport const planted = medialAxis;\n",
  ],
  ['geometry', 'node', "import { readFileSync } from 'node:fs';\nexport const planted = readFileSync;\n"],
] as const;

const planted = (from: string): string => `packages/${from}/src/planted-by-a-test.ts`;

afterEach(() => {
  for (const [from] of PLANTED) {
    rmSync(planted(from), { force: true });
  }
});

describe('a wrong import turns the boundary check red', () => {
  test.each(PLANTED)('%s importing %s', (from, _what, text) => {
    writeFileSync(planted(from), text);
    const { status, stdout } = spawnSync(
      'npx',
      ['--no-install', 'depcruise', `packages/${from}`, '--config', '.dependency-cruiser.cjs'],
      { encoding: 'utf8' },
    );
    expect(stdout).toContain('planted-by-a-test.ts');
    expect(status).not.toBe(0);
  });
});

test('25.4 and 96 stand in plane/units.ts only', () => {
  const offenders = sourceFiles()
    .filter((file) => !file.endsWith('plane/src/units.ts') && !file.endsWith('.test.ts'))
    .filter((file) =>
      /(?<![\w.])(?:25\.4|96)(?![\w.])/u.test(withoutCommentsAndText(readFileSync(file, 'utf8'))),
    );
  expect(offenders).toEqual([]);
});

function withoutCommentsAndText(source: string): string {
  return source
    .replace(/\/\*[\s\S]*?\*\//gu, '')
    .replace(/\/\/.*$/gmu, '')
    .replace(/'(?:[^'\\\n]|\\.)*'|"(?:[^"\\\n]|\\.)*"|`(?:[^`\\]|\\.)*`/gu, "''");
}
