import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { FINDING_CODES } from '@pourproof/proof';
import { describe, expect, test } from 'vitest';

const PAGES = ['DEVELOPERS.md', 'docs/architecture.md'];
const { scripts } = JSON.parse(readFileSync('package.json', 'utf8')) as { scripts: Record<string, string> };

describe.each(PAGES)('%s', (page) => {
  const text = readFileSync(page, 'utf8');
  const quoted = [...text.matchAll(/`([^`\n]+)`/gu)].map((match) => match[1]!);

  test('names only files and folders that are there', () => {
    const paths = quoted.filter((part) =>
      /^(?:packages|apps|tests|docs|fixtures|\.github|\.ci)\/\S+$/u.test(part),
    );
    const [code] = FINDING_CODES;
    expect(paths.length).toBeGreaterThan(10);
    expect(paths.filter((path) => !existsSync(path.replace('<code>', code)))).toEqual([]);
  });

  test('names only scripts that are there', () => {
    const named = [...text.matchAll(/npm run ([\w:-]+)/gu)].map((match) => match[1]!);
    expect(named.filter((name) => scripts[name] === undefined)).toEqual([]);
  });
});

test('the contributor page and the architecture tell of every package', () => {
  const folders = ['packages', 'apps'].flatMap((group) =>
    readdirSync(group).map((name) => `${group}/${name}`),
  );
  for (const page of PAGES) {
    const text = readFileSync(page, 'utf8');
    expect(folders.filter((folder) => !text.includes(`\`${folder}\``))).toEqual([]);
  }
});
