import type { WordsFor } from './fault-words.ts';
import { spokenPlace } from './setting-name.ts';

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
  'two-sizes': ({ keys }, _, name) => ({
    what: `${keys.map((each) => spokenPlace(each, name)).join(' and ')} are given together, and they may disagree.`,
    remedy: `Check them, and give one of ${name('width')}, ${name('height')} and ${name('scale')}: the artwork keeps its proportions.`,
  }),
  'two-artworks': ({ file }, _, name) => ({
    what: `${file ?? 'the job'} names both ${name('artwork')} and ${name('text')}.`,
    remedy: 'Check which of them is meant, and take the other one out.',
  }),
  'two-coupons': (_, key) => ({
    what: `${key} are given in the job and beside it.`,
    remedy: 'Keep them in one place.',
  }),
  'text-empty': (_, key) => ({ what: `${key} is empty.`, remedy: 'Type the words to carve.' }),
  'text-for-file': (_, key) => ({
    what: 'the job has a text, but a file is vetted.',
    remedy: `Vet the file or the lettering, one at a time: take ${key} out.`,
  }),
  'artwork-for-text': (_, key) => ({
    what: 'the job names an artwork file, but lettering is vetted.',
    remedy: `Vet the file or the lettering, one at a time: take ${key} out.`,
  }),
  'lettering-size': ({ scale, instead }, key, name) => ({
    what: `${key} does not size lettering.`,
    remedy:
      instead === null
        ? `Give ${name('capHeight')} 15mm or ${name('width')} 120mm.`
        : `Leave it out and give ${name('capHeight')} ${instead}, which is ${scale} times as large.`,
  }),
  'lettering-two-sizes': (_, key, name) => ({
    what: `${key} and ${name('width')} are given together, and they may disagree.`,
    remedy: 'Give one of them.',
  }),
  'lettering-without-size': (_, key, name) => ({
    what: 'lettering needs a size.',
    remedy: `Give ${key} 15mm, or ${name('width')} 120mm.`,
  }),
  'lettering-without-font': (_, key, name) => ({
    what: 'lettering needs a font.',
    remedy: `Give ${key} with the file of the font that will be carved, or ${name('singleLine')} for letters of single strokes.`,
  }),
  'font-and-single-line': (_, key, name) => ({
    what: `${name('singleLine')} has letters of its own, but ${key} is given too.`,
    remedy: `Give ${name('singleLine')} or a font, one of them.`,
  }),
  'not-for-drawing': (_, key) => ({
    what: `${key} says how artwork is read, but this drawing has been read already.`,
    remedy: `Read the artwork with it, or take ${key} out of the job.`,
  }),
  'bit-too-short': ({ depth, bit, length }, _, name) => ({
    what: `${name('depth')} is ${depth}, but the cutting edge of the ${bit} is only ${length} long.`,
    remedy: 'Cut no deeper, or give a longer bit that is no wider after it: it goes on below.',
  }),
  'calendar-without-start': (_, __, name) => ({
    what: 'a calendar needs the day and time when carving starts.',
    remedy: `Add ${name('start')} "2026-12-01 09:00" with yours.`,
  }),
  'unknown-finding': ({ typed, near }, key) => ({
    what: `${key} "${typed}" is no finding and no notice.`,
    remedy: `${near === null ? '' : `Did you mean ${near}? `}Write the code that stands beside it in the answer, as oil-in-wood.`,
  }),
  'not-to-be-seen-to': ({ finding, settings, isDrawn, isTested }, key, name) => ({
    what: `${key}: ${finding} is found, and saying that it is seen to does not cure it.`,
    remedy: notSeenToRemedy(
      settings.map((each) => spokenPlace(each, name)),
      isDrawn,
      isTested,
    ),
  }),
  'not-json': ({ file, reason }) => ({ what: `${file} is not JSON: ${reason}.`, remedy: 'Write it again.' }),
  'unknown-file': ({ file }) => ({
    what: `${file} is neither a job, a shop, a materials nor a coupons file.`,
    remedy:
      'Its "schema" must be pourproof/job@1, pourproof/shop@1, pourproof/materials@1 or pourproof/coupons@1.',
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
