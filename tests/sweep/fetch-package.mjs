import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync } from 'node:fs';
import { join } from 'node:path';

/** Fetches a package's files into the cache folder once, by the registry's ordinary client; returns the paths of its SVG files in order. */
export function fetchPackage(cache, { name, version }) {
  const folder = join(cache, `${name.replace('@', '').replace('/', '-')}-${version}`);
  const archive = `${folder}.tgz`;
  if (!existsSync(archive)) {
    mkdirSync(cache, { recursive: true });
    execFileSync('npm', ['pack', `${name}@${version}`, '--silent', '--pack-destination', cache], {
      stdio: 'pipe',
    });
  }
  if (!existsSync(folder)) {
    mkdirSync(folder);
    execFileSync('tar', ['-xzf', archive, '-C', folder]);
  }
  return readdirSync(folder, { recursive: true })
    .filter((file) => file.endsWith('.svg') && !/logo|brand|\bfont\b/.test(file))
    .sort()
    .map((file) => join(folder, file));
}
