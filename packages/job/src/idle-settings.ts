import { type Drawing, type Notice, textInUnits } from '@pourproof/plane';
import type { Job } from './job.ts';
import type { AppliesTo } from './settings/setting.ts';
import { SETTING_KEYS, SETTINGS } from './settings/table.ts';

type Format = Drawing['format'];

const NAMES: Readonly<Record<Format, string>> = { svg: 'an SVG', dxf: 'a DXF', lettering: 'lettering' };

/**
 * What a job asks for that changes nothing for it or for its artwork: a notice each, so that nobody counts on
 * it.
 *
 * @param lines how many lines of lettering have something to see; of no matter for drawings
 */
export function idleSettings(job: Job, format: Format, lines: number): readonly Notice[] {
  const found = SETTING_KEYS.filter((key) => job.given.includes(key)).flatMap((key) => {
    const { only } = SETTINGS[key];
    const reason = only?.about === undefined ? null : reasonOf(key, only, job, format, lines);
    return reason === null ? [] : [{ ...reason, what: `The job sets ${only?.about}`, key }];
  });
  return found.toSorted((a, b) => a.rank - b.rank).map(({ what, why, key }) => idleNotice(what, why, key));
}

/** Why a setting changes nothing, the reasons in the order in which they are told. */
function reasonOf(
  key: string,
  only: AppliesTo,
  job: Job,
  format: Format,
  lines: number,
): { readonly rank: number; readonly why: string } | null {
  if (only.formats !== undefined && !only.formats.includes(format)) {
    return { rank: 0, why: `this is ${NAMES[format]}` };
  }
  // on an arc the alignment of a single line still says where it stands
  const isOneLine = lines === 1 && !(key === 'align' && job.lettering.arc !== undefined);
  if (only.hasLines === true && isOneLine) {
    return { rank: 1, why: 'the lettering is a single line' };
  }
  return only.isSealed === true && job.seal === 'none' ? { rank: 2, why: 'there is no seal' } : null;
}

/** The notice that a font was given for a file in which no text asked for it. */
export function idleFont(): Notice {
  return idleNotice('A font is given', 'the file has no text that takes letters from it', 'font');
}

/** The notice that a finding or a caution is called seen to that is not there, or only a note. */
export function idleSeenTo(code: string, isNote: boolean): Notice {
  const why = isNote ? 'it is only a note' : 'it is not found';
  return idleNotice(`The job says that ${code} is seen to`, why, 'seenTo');
}

function idleNotice(what: string, why: string, setting: string): Notice {
  return {
    code: 'setting-without-effect',
    text: textInUnits(`${what}, but ${why}: it changes nothing.`),
    where: [{ setting }],
    severity: 'note',
  };
}
