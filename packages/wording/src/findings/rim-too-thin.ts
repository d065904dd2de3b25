import type { FindingWords } from './finding-words.ts';
import { movedText } from './moved-text.ts';
import { subject } from './parts-of-sentences.ts';

/** Words of too little wood between a pocket and the edge, a hole or a groove. */
export const rimTooThin: FindingWords = {
  title: 'Too little wood at the rim',
  headline: (finding, _reader, { measured, limit }) =>
    finding.severity === 'note'
      ? `${measured} of wood stays at the edge${finding.acrossGrain === true ? ', with the fibres running out through it' : ''}: enough for this depth, but shops leave ${limit} by habit.`
      : `${subject(finding, 'rim', 'rims')} too thin: ${measured} of wood${finding.acrossGrain === true ? ', with the fibres running out through it,' : ''} where common practice leaves ${limit}.`,
  why: ({ acrossGrain, severity }) =>
    severity === 'note'
      ? 'The habit leaves room for a clamp, for a round-over at the edge and for a board that is not quite square.'
      : acrossGrain === true
        ? 'Short grain between a pocket and an edge or a hole splits off under the bit, and colour follows the fibres out through it.'
        : 'A thin rim bends away from the bit and splits along the grain, or breaks when the edge is planed or sanded.',
  fixes: { move: movedText },
  advice: ({ fix, severity }) =>
    fix.options.length > 0 || severity === 'note'
      ? []
      : ['Make the artwork smaller or the board larger: no simple move leaves enough wood all round.'],
  measuredHow: ({ acrossGrain }) => (acrossGrain === true ? 'across the grain' : 'along the grain'),
};
