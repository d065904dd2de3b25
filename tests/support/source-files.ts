import { execFileSync } from 'node:child_process';

/** Paths of all TypeScript sources under packages and apps that git knows or would add: a star of git's goes on through folders. */
export function sourceFiles(): readonly string[] {
  return execFileSync(
    'git',
    ['ls-files', '--cached', '--others', '--exclude-standard', 'packages/*/src/*.ts', 'apps/*/src/*.ts'],
    { encoding: 'utf8' },
  )
    .split('\n')
    .filter((line) => line !== '');
}
