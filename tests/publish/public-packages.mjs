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
