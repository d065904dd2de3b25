import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/**
 * All packages that are published, from the lowest floor up.
 * @returns {{ folder: string, manifest: Record<string, any> }[]}
 */
export function publicPackages() {
  const found = ['packages', 'apps']
    .flatMap((group) => readdirSync(group).map((name) => join(group, name)))
    .map((folder) => ({ folder, manifest: JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) }))
    .filter(({ manifest }) => manifest.private !== true);
  const sorted = [];
  const place = (entry) => {
    if (sorted.includes(entry)) {
      return;
    }
    for (const name of Object.keys(entry.manifest.dependencies ?? {})) {
      const lower = found.find(({ manifest }) => manifest.name === name);
      if (lower !== undefined) {
        place(lower);
      }
    }
    sorted.push(entry);
  };
  found.forEach(place);
  return sorted;
}

/**
 * What a page may import: every entry of every published package but the command line's, and but what starts threads of Node.
 * @returns {string[]} such as `@pourproof/plane` or `@pourproof/artwork/svg`
 */
export const entriesForBrowsers = () =>
  publicPackages()
    .filter(({ manifest }) => manifest.bin === undefined)
    .flatMap(({ manifest }) =>
      Object.keys(manifest.exports)
        .filter((key) => key !== './package.json' && !(manifest.name === 'pourproof' && key === './many'))
        .map((key) => `${manifest.name}${key.slice(1)}`),
    );
