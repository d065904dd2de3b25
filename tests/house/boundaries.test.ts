import { spawnSync } from 'node:child_process';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { afterAll, expect, test } from 'vitest';
import { sourceFiles } from '../support/source-files.ts';

/** A package, the rule that it breaks when it imports this, and the import. */
const PLANTED = [
  [
    'plane',
    'plane-imports-only-downwards',
    "import { readArtwork } from '@pourproof/artwork';\nexport const planted = readArtwork;\n",
  ],
  [
    'artwork',
    'artwork-imports-only-downwards',
    "import { medialAxis } from '../../geometry/src/index.ts';\nexport const planted = medialAxis;\n",
  ],
  [
    'geometry',
    'packages-run-in-node-and-browser',
    "import { readFileSync } from 'node:fs';\nexport const planted = readFileSync;\n",
  ],
] as const;

const planted = (from: string): string => `packages/${from}/src/planted-by-a-test.ts`;

afterAll(() => {
  for (const [from] of PLANTED) {
    rmSync(planted(from), { force: true });
  }
});

test('wrong imports turn the boundary check red, each by the rule that forbids it', () => {
  for (const [from, , text] of PLANTED) {
    writeFileSync(planted(from), text);
  }
  const folders = PLANTED.map(([from]) => `packages/${from}`);
  const { status, stdout } = spawnSync(
    'npx',
    ['--no-install', 'depcruise', ...folders, '--config', '.dependency-cruiser.cjs'],
    { encoding: 'utf8' },
  );
  expect(status).not.toBe(0);
  for (const [from, rule] of PLANTED) {
    expect(stdout).toContain(`error ${rule}: ${planted(from)}`);
  }
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
