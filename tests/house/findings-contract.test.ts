import { existsSync, readFileSync } from 'node:fs';
import { FINDING_CODES, jsonSchemas } from '@pourproof/proof';
import { findingTitle } from '@pourproof/wording';
import { describe, expect, test } from 'vitest';

describe.each(FINDING_CODES)('%s', (code) => {
  test('has a check and its words, each in a file of its name, and a title', () => {
    expect(existsSync(`packages/proof/src/checks/${code}.ts`)).toBe(true);
    expect(existsSync(`packages/wording/src/findings/${code}.ts`)).toBe(true);
    expect(findingTitle(code)).toMatch(/^[A-Z].{5,60}$/u);
  });

  test('has a page that names its code and what its ways out are', () => {
    const page = readFileSync(`docs/findings/${code}.md`, 'utf8');
    expect(page).toMatch(new RegExp(`^# ${findingTitle(code)} \\(\`${code}\``, 'u'));
    expect(page).toMatch(/\*\*Ways? out/u);
  });
});

test('the published JSON Schemas are those of the program', () => {
  for (const [file, schema] of Object.entries(jsonSchemas())) {
    const published = JSON.parse(readFileSync(`docs/schema/${file}`, 'utf8'));
    expect(published, `docs/schema/${file} is stale: run npm run schemas`).toEqual(
      JSON.parse(JSON.stringify(schema)),
    );
  }
});
