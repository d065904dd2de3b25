import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import process from 'node:process';

const PLACES = [
  process.env.CHROMIUM,
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
];

/** Path of a Chromium on this machine, or undefined. The variable CHROMIUM wins. */
export function findChromium() {
  return PLACES.find((path) => path !== undefined && path !== '' && existsSync(path));
}

/**
 * Path of a Chromium, installed from the distribution's packages where none is found and that is allowed.
 * Throws with what to install where it can't be had: the viewer's tests never skip in silence.
 */
export function ensureChromium() {
  const found = findChromium();
  if (found !== undefined) {
    return found;
  }
  if (existsSync('/usr/bin/apt-get') && process.getuid?.() === 0) {
    console.log('No Chromium found: installing the distribution’s package "chromium" …');
    const options = {
      stdio: ['ignore', 'ignore', 'inherit'],
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    };
    try {
      execFileSync('apt-get', ['update', '-q'], options);
      execFileSync(
        'apt-get',
        ['install', '-y', '-q', '--no-install-recommends', 'chromium', 'fonts-dejavu-core'],
        options,
      );
    } catch (error) {
      console.error(String(error));
    }
  }
  const installed = findChromium();
  if (installed === undefined) {
    throw new Error(
      'The viewer is tested in a real browser and none was found. Install Chromium (Debian, Ubuntu: "sudo apt-get install chromium") or set CHROMIUM to the path of one, then run npm test again.',
    );
  }
  return installed;
}
