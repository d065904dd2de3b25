import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { afterAll, describe, expect, test } from 'vitest';

const README = readFileSync('README.md', 'utf8');
const SCRIPT = 'tests/docs/from-readme.mjs';

const blocks = (language: string): string[] =>
  [...README.matchAll(new RegExp(`^\`\`\`${language}\\n([\\s\\S]*?)^\`\`\``, 'gmu'))].map(
    (match) => match[1]!,
  );

const commands = blocks('sh').flatMap((block) => block.trim().split('\n'));

afterAll(() => {
  rmSync(SCRIPT, { force: true });
});

describe('README runs as written', () => {
  test('its two set-up commands name scripts that exist, and nothing else', () => {
    const setUp = commands.filter((line) => line.startsWith('npm ci'));
    expect(setUp).toEqual(['npm ci && npm run demo', 'npm ci && npm test']);
    const { scripts } = JSON.parse(readFileSync('package.json', 'utf8')) as {
      scripts: Record<string, string>;
    };
    expect(Object.keys(scripts)).toEqual(expect.arrayContaining(['demo', 'test', 'start', 'prepare']));
  });

  test.each(commands.filter((line) => line.startsWith('npx pourproof')))('%s', (line) => {
    mkdirSync('proof-out', { recursive: true });
    const { status, stdout, stderr } = spawnSync('bash', ['-c', line], { encoding: 'utf8' });
    expect(stderr).toBe('');
    // 1 is a verdict of stop, which is an answer and not a failure
    expect([0, 1]).toContain(status);
    expect(stdout.length).toBeGreaterThan(200);
  });

  test('npm run demo prints the verdict and writes the sheet and the overlay where it says', () => {
    const { status, stdout } = spawnSync('npm', ['run', '--silent', 'demo'], { encoding: 'utf8' });
    expect(status).toBe(0);
    expect(stdout).toMatch(/^STOP /mu);
    const written = [...stdout.matchAll(/written to (\S+)/gu)].map((match) => match[1]!);
    expect(written).toHaveLength(2);
    for (const file of written) {
      expect(readFileSync(file, 'utf8').length).toBeGreaterThan(1000);
    }
  });

  test('its library example prints a verdict and a headline for each finding', () => {
    const [example] = blocks('js');
    writeFileSync(SCRIPT, example!);
    const { status, stdout, stderr } = spawnSync('node', [SCRIPT], { encoding: 'utf8' });
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect(stdout).toMatch(/^(clear|caution|stop) [\d.]+ mm² cut$/mu);
    expect(stdout.trim().split('\n').length).toBeGreaterThan(1);
  });
});
