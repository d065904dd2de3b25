import { idleSeenTo, type Job, JobError, nearestWord } from '@pourproof/job';
import { NOTICE_CODES, type Notice } from '@pourproof/plane';
import { FINDING_CODES } from '../codes.ts';
import type { Finding } from '../report/finding-schema.ts';
import { FIX_SETTINGS } from './apply-fix.ts';
import { FIX_WORK, type FixWork } from './fix-work.ts';
import { maySeeToNotice } from './may-see-to-notice.ts';

/** Looks at the drawing: a stop needs more than a look. */
const LOOKED_AT_DRAWING: ReadonlySet<string> = new Set(['redraw-ends', 'close-gap', 'merge-shapes']);

/** Codes that the maker may name. */
const KNOWN: readonly string[] = [...FINDING_CODES, ...NOTICE_CODES];

/** What the maker says of the findings: each that may be seen to with whether it is, and notices of what is said in vain. */
export interface SeenTo {
  readonly findings: readonly Finding[];
  readonly notices: readonly Notice[];
}

/**
 * Marks the findings that the job says are seen to. One may be seen to where a way out of it is work at the bench that no setting
 * tells of, and, short of a stop, where it takes a look that only the maker can take. Cautions from reading the artwork all take such
 * a look: see {@link maySeeToNotice}.
 *
 * @param proposed the same findings with all ways out that their checks propose: they tell whether being seen to is a cure
 * @param told what the reader told
 * @throws {JobError} for a code that is none, or whose finding is there and not cured by being seen to
 */
export function seenTo(
  findings: readonly Finding[],
  proposed: readonly Finding[],
  told: readonly Notice[],
  { seenTo: codes }: Job,
): SeenTo {
  const given = new Set(codes);
  for (const code of given) {
    refuseUnknown(code);
  }
  return {
    findings: findings.map((finding, k) =>
      given.has(finding.code) ? markedSeenTo(finding, proposed[k] ?? finding) : marked(finding),
    ),
    notices: [...given].flatMap((code) => {
      const found = [...findings, ...told.filter(maySeeToNotice)].some((each) => each.code === code);
      const isNote = told.some((each) => each.code === code);
      return found ? [] : [idleSeenTo(code, isNote)];
    }),
  };
}

function marked(finding: Finding): Finding {
  return maySeeTo(finding) ? { ...finding, seenTo: false } : finding;
}

function markedSeenTo(finding: Finding, proposed: Finding): Finding {
  if (!maySeeTo(proposed)) {
    throw notToBeSeenTo(finding);
  }
  return { ...finding, seenTo: true };
}

function maySeeTo({ severity, fix: { options } }: Finding): boolean {
  const has = (work: FixWork): boolean => options.some((fix) => FIX_WORK[fix.do] === work);
  return has('bench') || (severity !== 'stop' && has('look'));
}

function refuseUnknown(code: string): void {
  if (!KNOWN.includes(code)) {
    const near = nearestWord(code, KNOWN);
    throw new JobError('unknown-finding', 'seenTo', { typed: code, near });
  }
}

function notToBeSeenTo({ code, fix: { options } }: Finding): JobError {
  return new JobError('not-to-be-seen-to', 'seenTo', {
    finding: code,
    settings: [...new Set(options.flatMap((fix) => FIX_SETTINGS[fix.do].slice(0, 1)))],
    isDrawn: options.some((fix) => FIX_WORK[fix.do] === 'drawing' || LOOKED_AT_DRAWING.has(fix.do)),
    isTested: options.some((fix) => fix.do === 'test-coupon'),
  });
}
