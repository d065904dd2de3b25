import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { publicPackages } from './public-packages.mjs';

const LICENCE = readFileSync('LICENSE', 'utf8');

describe.each(publicPackages())('$folder can be published', ({ folder, manifest }) => {
  test('its package.json says what it is and on what it runs', () => {
    expect(manifest.description).toMatch(/^[A-Z].{20,}\.$/u);
    expect(manifest.keywords.length).toBeGreaterThan(3);
    expect(manifest).toMatchObject({ license: 'MIT', type: 'module', engines: { node: '>=20.19' } });
    expect(manifest.sideEffects).toBeDefined();
  });

  test('it carries the licence of the repository', () => {
    expect(readFileSync(`${folder}/LICENSE`, 'utf8')).toBe(LICENCE);
  });

  test('it ships its build with the sources that the maps name, but no tests', () => {
    expect(manifest.files).toEqual(expect.arrayContaining(['dist', 'src', '!src/**/*.test.ts']));
  });

  const entries = Object.entries(manifest.exports as Record<string, string | Record<string, string>>);

  test.each(entries)('its entry %s goes to sources first, then types, then the build', (key, entry) => {
    if (typeof entry === 'string') {
      expect([key, entry]).toEqual(['./package.json', './package.json']);
      return;
    }
    // conditions are tried in the order written: types behind default would never be seen
    expect(Object.keys(entry)).toEqual(['@pourproof/source', 'types', 'default']);
    const source = entry['@pourproof/source'] ?? '';
    expect(existsSync(`${folder}/${source}`)).toBe(true);
    const built = source.replace('./src/', './dist/').replace(/\.ts$/u, '');
    expect([entry.types, entry.default]).toEqual([`${built}.d.ts`, `${built}.js`]);
  });

  test('the packages of ours that it needs are of its own version', () => {
    const ours = Object.entries(manifest.dependencies ?? {}).filter(([name]) => name.includes('pourproof'));
    expect(ours.map(([, version]) => version)).toEqual(ours.map(() => manifest.version));
  });
});

describe('workflows', () => {
  const workflow = (name: string): string => readFileSync(`.github/workflows/${name}.yml`, 'utf8');

  test('ci runs .ci/run and nothing else', () => {
    expect([...workflow('ci').matchAll(/run: (.+)/gu)].map((match) => match[1])).toEqual(['.ci/run']);
  });

  test('a release passes ci first and publishes by identity, with no token', () => {
    const release = workflow('release');
    expect(release).toContain('uses: ./.github/workflows/ci.yml');
    expect(release).toContain('needs: checks');
    expect(release).toContain('id-token: write');
    expect(release).not.toMatch(/NPM_TOKEN|NODE_AUTH_TOKEN|secrets\./u);
  });
});
