import type { FindingWords } from './finding-words.ts';
import { subject } from './parts-of-sentences.ts';
import { noLess } from './way-length.ts';

/** Words of cured resin that a later round leaves thin. */
export const resinLeftThin: FindingWords = {
  title: 'A later round leaves a colour too thin',
  headline: (finding, _reader, { measured, limit }) =>
    `${subject(finding, 'line or dot of cured colour', 'lines or dots of cured colour')} left only ${measured} wide by the cut of this round; below ${limit} edges chip.`,
  why: () =>
    'Cured resin is brittle where it is thin: the bit or the sanding block takes chips out of it, and what is left no longer reads.',
  fixes: {
    widen: ({ byMm }, { units }) => `Leave the earlier colour ${noLess(byMm, units)} wider there.`,
  },
};
