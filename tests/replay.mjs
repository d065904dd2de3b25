// `npm run replay -- FILE`: vets what a self-check bundle (NAME.fault.json) holds once more with this checkout, and says whether the fault
// is still there. Exit code: 70 where it is, 0 where it is gone, 2 for a file that is no bundle or that is refused.
import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { ProofFault, refusalOf, refusalText, replay, VERSION } from 'pourproof';

const SCHEMA = 'pourproof/fault@1';

/** Figures as they are compared: more digits than any unit of a shop shows. */
const told = (value) => (typeof value === 'number' ? Number(value.toPrecision(12)) : value);

/** Replays the bundle of a file, given as its text; the exit code and what is to be printed. */
export async function replayed(text, name) {
  const bundle = bundleOf(text);
  if (bundle === null) {
    return {
      code: 2,
      text: `${name} is no bundle of ours: give the NAME.fault.json that was written (${SCHEMA}).`,
    };
  }
  const from = `${name}, written by pourproof ${bundle.versions?.pourproof}, replayed by ${VERSION}`;
  try {
    const { report } = await replay(bundle);
    return {
      code: 0,
      text: `${from}: the fault is gone; the verdict is ${report.verdict}. It was: ${bundle.what}`,
    };
  } catch (error) {
    const refusal = refusalOf(error);
    if (refusal !== null) {
      return { code: 2, text: `${from}: refused. ${refusalText(refusal)}` };
    }
    return { code: 70, text: [`${from}: the fault is still there.`, ...faultLines(error)].join('\n') };
  }
}

function bundleOf(text) {
  try {
    const bundle = JSON.parse(text);
    return bundle?.schema === SCHEMA && typeof bundle.source === 'object' ? bundle : null;
  } catch {
    return null;
  }
}

function faultLines(error) {
  const {
    misses = [],
    seed = null,
    what,
  } = error instanceof ProofFault ? error.bundle : { what: String(error) };
  const cause = error instanceof Error && error.cause instanceof Error ? error.cause : error;
  return [
    `  ${what}`,
    ...misses.map(
      ({ id, unit, got, least, most, by }) =>
        `  ${id}: ${told(got)} ${unit}, must lie between ${told(least)} and ${told(most)}; off by ${told(by)}`,
    ),
    ...(seed === null ? [] : [`  seed of the places: ${seed}`]),
    ...(misses.length === 0 && cause instanceof Error ? [String(cause.stack)] : []),
  ];
}

if (process.argv[1] !== undefined && resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
  const [path, ...more] = process.argv.slice(2);
  if (path === undefined || more.length > 0) {
    console.error('npm run replay -- FILE: the NAME.fault.json that was written beside the outputs');
    process.exitCode = 2;
  } else {
    const text = await readFile(resolve(process.env.INIT_CWD ?? '.', path), 'utf8').catch(() => '');
    const answer = await replayed(text, path);
    (answer.code === 0 ? console.log : console.error)(answer.text);
    process.exitCode = answer.code;
  }
}
