import type { WordsFor } from './fault-words.ts';

/** Words for settings that contradict one another or what is vetted. */
export const sourceFaultWords: WordsFor<
  | 'two-sizes'
  | 'two-artworks'
  | 'two-coupons'
  | 'text-empty'
  | 'text-for-file'
  | 'artwork-for-text'
  | 'lettering-size'
  | 'lettering-two-sizes'
  | 'lettering-without-size'
  | 'lettering-without-font'
  | 'font-and-single-line'
  | 'not-for-drawing'
  | 'bit-too-short'
  | 'calendar-without-start'
  | 'unknown-finding'
  | 'not-to-be-seen-to'
  | 'not-json'
  | 'unknown-file'
  | 'two-files'
> = {
  'two-sizes': ({ keys }) => ({
    what: `${keys.join(' and ')} are given together, and they may disagree.`,
    remedy: 'Check them, and give one of width, height and scale: the artwork keeps its proportions.',
  }),
  'two-artworks': ({ file }) => ({
    what: `${file ?? 'the job'} names both artwork and text.`,
    remedy: 'Check which of them is meant, and take the other one out.',
  }),
  'two-coupons': () => ({
    what: 'coupons are given in the job and beside it.',
    remedy: 'Keep them in one place.',
  }),
  'text-empty': () => ({ what: 'text is empty.', remedy: 'Type the words to carve.' }),
  'text-for-file': () => ({
    what: 'the job has a text, but a file is vetted.',
    remedy: 'Vet the file or the lettering, one at a time: take text out.',
  }),
  'artwork-for-text': () => ({
    what: 'the job names an artwork file, but lettering is vetted.',
    remedy: 'Vet the file or the lettering, one at a time: take artwork out.',
  }),
  'lettering-size': ({ scale, instead }, key) => ({
    what: `${key} does not size lettering.`,
    remedy:
      instead === null
        ? 'Give capHeight 15mm or width 120mm.'
        : `Leave it out and give capHeight ${instead}, which is ${scale} times as large.`,
  }),
  'lettering-two-sizes': () => ({
    what: 'capHeight and width are given together, and they may disagree.',
    remedy: 'Give one of them.',
  }),
  'lettering-without-size': () => ({
    what: 'lettering needs a size.',
    remedy: 'Give capHeight 15mm, or width 120mm.',
  }),
  'lettering-without-font': () => ({
    what: 'lettering needs a font.',
    remedy: 'Give the font that will be carved, or singleLine for letters of single strokes.',
  }),
  'font-and-single-line': (_, key) => ({
    what: `singleLine has letters of its own, but ${key} is given too.`,
    remedy: 'Give singleLine or a font, one of them.',
  }),
  'not-for-drawing': (_, key) => ({
    what: `${key} says how artwork is read, but this drawing has been read already.`,
    remedy: `Read the artwork with it, or take ${key} out of the job.`,
  }),
  'bit-too-short': ({ depth, bit, length }) => ({
    what: `depth is ${depth}, but the cutting edge of the ${bit} is only ${length} long.`,
    remedy: 'Cut no deeper, or give a longer bit that is no wider after it: it goes on below.',
  }),
  'calendar-without-start': () => ({
    what: 'a calendar needs the day and time when carving starts.',
    remedy: 'Add start, as in --start "2026-12-01 09:00".',
  }),
  'unknown-finding': ({ typed, known, near }, key) => ({
    what: `${key} "${typed}" is no finding.`,
    remedy: `${near === null ? '' : `Did you mean ${near}? `}Codes: ${known.join(', ')}.`,
  }),
  'not-to-be-seen-to': ({ finding, settings, isDrawn, isTested }, key) => ({
    what: `${key}: ${finding} is found, and saying that it is seen to does not cure it.`,
    remedy: notSeenToRemedy(settings, isDrawn, isTested),
  }),
  'not-json': ({ file, reason }) => ({ what: `${file} is not JSON: ${reason}.`, remedy: 'Write it again.' }),
  'unknown-file': ({ file }) => ({
    what: `${file} is neither a job, a materials nor a coupons file.`,
    remedy: 'Its "schema" must be pourproof/job@1, pourproof/materials@1 or pourproof/coupons@1.',
  }),
  'two-files': ({ kind }) => ({ what: `Two ${kind} were given at once.`, remedy: 'Choose one of them.' }),
};

function notSeenToRemedy(settings: readonly string[], isDrawn: boolean, isTested: boolean): string {
  const ways = [
    ...(settings.length > 0 ? [`change ${settings.join(' or ')} as the finding says`] : []),
    ...(isDrawn ? ['change the drawing and vet the new one'] : []),
    ...(isTested ? ['cut test slots and give what you read as coupons'] : []),
  ];
  return ways.length === 0
    ? 'Take it out: no work at the bench clears this finding.'
    : `Take it out, and ${ways.join(', or ')}.`;
}
