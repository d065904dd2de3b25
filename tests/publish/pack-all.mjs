import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { publicPackages } from './public-packages.mjs';

/**
 * Packs every package that is published, as it would go to the registry, into an emptied `folder`.
 * @param {string} folder
 * @returns {{ name: string, folder: string, tarball: string }[]} from the lowest floor up; tarballs as absolute paths
 */
export function packAll(folder) {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  return publicPackages().map(({ folder: from, manifest }) => {
    if (!existsSync(join(from, 'dist'))) {
      throw new Error(`${from} is not built: npm run build:code`);
    }
    const { status, stdout, stderr } = spawnSync(
      'npm',
      ['pack', '--json', '--pack-destination', resolve(folder)],
      { cwd: from, encoding: 'utf8' },
    );
    if (status !== 0) {
      throw new Error(`npm pack in ${from}: ${stderr}`);
    }
    // lines of scripts that run before packing stand above the answer
    const [{ filename }] = JSON.parse(stdout.slice(stdout.search(/^\[/mu)));
    return { name: manifest.name, folder: from, tarball: resolve(folder, filename) };
  });
}
