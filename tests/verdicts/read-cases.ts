import { readFileSync } from 'node:fs';

/** A job with what an experienced maker says of it: a line of `cases.txt`. */
export interface VerdictCase {
  readonly name: string;
  /** Whether pourproof is known to judge it otherwise today. */
  readonly isKnownWrong: boolean;
  readonly artwork: string;
  readonly flags: readonly string[];
  readonly verdict: 'clear' | 'caution' | 'stop' | 'refused';
  readonly codes: readonly string[];
  readonly notCodes: readonly string[];
  readonly reason: string;
}

/** The job that a careful maker would sign; a flag of a case replaces all of the same name in it. */
const SOUND =
  '--bit flat:2mm --depth 3mm --wood maple --grain 0deg --seal epoxy --seal-hours 24h --level 0.5mm --weigh fine --boards 6 --colour blue';

/** All cases in the order of the file, each with the heading it stands under. */
export function readCases(): ReadonlyMap<string, readonly VerdictCase[]> {
  const cases = new Map<string, VerdictCase[]>();
  let heading = '';
  for (const line of readFileSync(new URL('cases.txt', import.meta.url), 'utf8').split('\n')) {
    if (line.startsWith('==')) {
      heading = line.replaceAll('=', '').trim();
      cases.set(heading, []);
    } else if (line !== '' && !line.startsWith('#')) {
      cases.get(heading)?.push(caseOf(line));
    }
  }
  return cases;
}

function caseOf(line: string): VerdictCase {
  const cells = line.split('|').map((cell) => cell.trim());
  const [name = '', artwork = '', flags = '', verdict = '', codes = '', notCodes = '', reason = ''] = cells;
  if (cells.length !== 7 || !isVerdict(verdict)) {
    throw new Error(`a case has seven columns and a verdict in the fourth: ${line}`);
  }
  return {
    name: name.replace(/^\? /u, ''),
    isKnownWrong: name.startsWith('? '),
    artwork,
    flags: jobFlags(flags),
    verdict,
    codes: words(codes),
    notCodes: words(notCodes),
    reason,
  };
}

function isVerdict(text: string): text is VerdictCase['verdict'] {
  return ['clear', 'caution', 'stop', 'refused'].includes(text);
}

/** Words parted by spaces, but not within quotes. */
function words(text: string): string[] {
  return [...text.matchAll(/"([^"]*)"|(\S+)/gu)].map(([, quoted, bare]) => quoted ?? bare ?? '');
}

/** Flags with their values; a flag of the case replaces all of the same name in the sound job. */
function jobFlags(text: string): string[] {
  const own = grouped(words(text.replace('$sound', '')));
  const sound = text.includes('$sound') ? grouped(words(SOUND)) : [];
  const given = new Set(own.map(([flag]) => flag));
  // a board names its wood and fibres itself
  const spokenFor = given.has('--board') ? ['--wood', '--grain'] : [];
  return [...sound.filter(([flag = '']) => !given.has(flag) && !spokenFor.includes(flag)), ...own].flat();
}

function grouped(list: readonly string[]): readonly string[][] {
  const groups: string[][] = [];
  for (const word of list) {
    if (word.startsWith('--')) {
      groups.push([word]);
    } else {
      groups.at(-1)?.push(word);
    }
  }
  return groups;
}
