import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

/** Where sentences may stand below `packages/wording`, and what they are. */
const MAY: Readonly<Record<string, string>> = {
  'packages/arrangement/src/resolve/crossings-error.ts': 'message of an error',
  'packages/artwork/src/dxf/dxf-notices.ts': 'notices of a reader',
  'packages/artwork/src/dxf/dxf-refusals.ts': 'messages of errors',
  'packages/artwork/src/file-refusals.ts': 'messages of errors',
  'packages/artwork/src/lettering/lettering-notices.ts': 'notices of a reader',
  'packages/artwork/src/lettering/lettering-refusals.ts': 'messages of errors',
  'packages/artwork/src/svg/svg-notices.ts': 'notices of a reader',
  'packages/artwork/src/svg/svg-refusals.ts': 'messages of errors',
  'packages/job/src/idle-settings.ts': 'notices of settings that change nothing',
  'packages/job/src/refusals/': 'messages of errors',
  'packages/job/src/settings/artwork.ts': 'ends of messages of errors',
  'packages/job/src/settings/cut.ts': 'ends of messages of errors',
  'packages/job/src/settings/resin.ts': 'ends of messages of errors',
  'packages/job/src/values/range.ts': 'ends of messages of errors',
  'packages/materials/src/limits.ts': 'what each row of a table is; printed in docs only',
  'packages/materials/src/materials-faults.ts': 'messages of errors',
  'packages/materials/src/sources.ts': 'the bibliography',
  'packages/proof/src/judgement-sources.ts': 'the bibliography',
  'packages/proof/src/rounds/planned-rounds.ts': 'notices of rounds',
  'packages/redraw/src/change/change-notices.ts': 'notices of changed outlines',
};

/** A string that ends as a sentence does, after several words; of abbreviations only that of species is in use. */
const SENTENCE = /(['`])[^'`\n]+ [^'`\n]*[\p{L})}%](?<! spp)\.\1/u;
/** Comments, and what is thrown at programmers. */
const EXEMPT = /^\s*(?:\*|\/[/*])|new RangeError\(/u;

const files = spawnSync(
  'git',
  [
    'ls-files',
    ...['arrangement', 'artwork', 'geometry', 'cutting', 'redraw', 'materials', 'job', 'proof'].map(sourceOf),
  ],
  { encoding: 'utf8' },
)
  .stdout.trim()
  .split('\n')
  .filter((file) => !file.endsWith('.test.ts'));

function sourceOf(name: string): string {
  return `packages/${name}/src/*.ts`;
}

function speaks(file: string): boolean {
  return readFileSync(file, 'utf8')
    .split('\n')
    .some((line) => !EXEMPT.test(line) && SENTENCE.test(line));
}

test('below the wording no file makes a sentence but those that are named here, and they do', () => {
  expect(files.length).toBeGreaterThan(250);
  const speaking = files.filter(speaks).map((file) => {
    const place = Object.keys(MAY).find((each) => file.startsWith(each));
    return place ?? file;
  });
  expect([...new Set(speaking)].toSorted()).toEqual(Object.keys(MAY).toSorted());
});
