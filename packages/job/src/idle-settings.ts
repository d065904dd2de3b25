import type { Drawing, Notice } from '@pourproof/plane';
import type { JobFile } from './job-file.ts';

type Format = Drawing['format'];

/** What a key of the job is about, in words, and the artwork that it is for. */
const ONLY_FOR: readonly (readonly [key: keyof JobFile, words: string, formats: readonly Format[]])[] = [
  ['carve', 'what of the paint is carved', ['svg']],
  ['fileUnit', 'the unit of a DXF drawing', ['dxf']],
  ['join', 'the widest gap that is closed between lines of a DXF drawing', ['dxf']],
  ['capHeight', 'the height of capitals', ['lettering']],
  ['singleLine', 'letters of single strokes', ['lettering']],
  ['align', 'the alignment of lettering', ['lettering']],
  ['tracking', 'the room between letters', ['lettering']],
  ['lineSpacing', 'the distance of lines', ['lettering']],
  ['arc', 'the arc of lettering', ['lettering']],
  ['axis', 'an axis of a variable font', ['lettering']],
];
const NAMES: Readonly<Record<Format, string>> = { svg: 'an SVG', dxf: 'a DXF', lettering: 'lettering' };

/** What means nothing where the wood is not sealed. */
const ONLY_SEALED: readonly (readonly [key: keyof JobFile, words: string])[] = [
  ['coats', 'the number of seal coats'],
  ['sealHours', 'how long the seal is left'],
];

/** What means nothing for lettering of a single line; on an arc alignment still says where it stands. */
const ONLY_SEVERAL_LINES: readonly (readonly [key: keyof JobFile, words: string])[] = [
  ['align', 'the alignment of lettering'],
  ['lineSpacing', 'the distance of lines'],
];

/**
 * What a job asks for that changes nothing for it or for its artwork: a notice each, so that nobody counts on it.
 *
 * @param lines how many lines of lettering have something to see; of no matter for drawings
 */
export function idleSettings(job: Partial<JobFile>, format: Format, lines: number): readonly Notice[] {
  const ofFormat = ONLY_FOR.filter(([, , formats]) => !formats.includes(format));
  const isOneLine = format === 'lettering' && lines === 1;
  const ofLines = ONLY_SEVERAL_LINES.filter(([key]) => key !== 'align' || job.arc === undefined);
  const isBare = (job.seal ?? 'none') === 'none';
  return [
    ...ofFormat.map(([key, words]) => [key, words, `this is ${NAMES[format]}`] as const),
    ...(isOneLine ? ofLines : []).map(
      ([key, words]) => [key, words, 'the lettering is a single line'] as const,
    ),
    ...(isBare ? ONLY_SEALED : []).map(([key, words]) => [key, words, 'there is no seal'] as const),
  ]
    .filter(([key]) => job[key] !== undefined)
    .map(([key, words, why]) => idleNotice(`The job sets ${words} (${key})`, why));
}

/** The notice that a font was given for a file in which no text asked for it. */
export function idleFont(): Notice {
  return idleNotice('A font is given', 'the file has no text that takes letters from it');
}

function idleNotice(what: string, why: string): Notice {
  return {
    code: 'setting-without-effect',
    text: `${what}, but ${why}: it changes nothing.`,
    where: [],
    severity: 'note',
  };
}
