// `node tests/publish/check-release.mjs v0.1.0`: refuses to release anything but what the tag says.
import { readdirSync, readFileSync } from 'node:fs';
import process from 'node:process';
import { publicPackages } from './public-packages.mjs';

const tag = process.argv[2] ?? '';
const faults = publicPackages()
  .filter(({ manifest }) => `v${manifest.version}` !== tag)
  .map(
    ({ folder, manifest }) => `${folder} has version ${manifest.version}, the tag says ${tag || 'nothing'}`,
  );
const waiting = readdirSync('.changeset').filter((file) => file.endsWith('.md') && file !== 'README.md');
if (waiting.length > 0) {
  faults.push(`changes wait for a version (run npx changeset version): ${waiting.join(', ')}`);
}
if (!readFileSync('packages/pourproof/CHANGELOG.md', 'utf8').includes(`\n## ${tag.slice(1)}\n`)) {
  faults.push(`packages/pourproof/CHANGELOG.md has no entry for ${tag}`);
}
for (const fault of faults) {
  console.error(fault);
}
process.exitCode = faults.length === 0 ? 0 : 1;
