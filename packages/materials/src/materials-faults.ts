/** What may be wrong with an entry of the maker's materials, by code: the parameters that its message is made from. */
export interface MaterialsFaults {
  readonly 'unknown-like': { readonly like: string; readonly known: readonly string[] };
  readonly 'new-needs-like': { readonly known: readonly string[] };
  readonly 'out-of-range': {
    readonly value: number;
    /** Above the bound, from the bound on, or from above 0 up to the bound. */
    readonly range: 'above' | 'from' | PartRange;
    readonly bound: number;
  };
  readonly 'curve-order': { readonly point: CurvePoint; readonly before: CurvePoint };
  readonly conflict: { readonly gelMin: number; readonly potLifeMin: number };
}

/** What is wrong with an entry of the maker's materials. */
export type MaterialsErrorCode = keyof MaterialsFaults;

interface CurvePoint {
  readonly hours: number;
  readonly factor: number;
}

/** A quantity that lies above 0 and at most at a bound. */
export type PartRange = 'lightness' | 'solids' | 'angle';

interface FaultWords {
  readonly what: string;
  readonly remedy: string;
}

/** The one place where a fault of an entry becomes sentences, which follow its place. */
export function faultWords<Code extends MaterialsErrorCode>(
  code: Code,
  parameters: MaterialsFaults[Code],
): FaultWords {
  return WORDS[code](parameters);
}

const WORDS: {
  readonly [Code in MaterialsErrorCode]: (parameters: MaterialsFaults[Code]) => FaultWords;
} = {
  'unknown-like': ({ like, known }) => ({ what: `“${like}” is not known.`, remedy: knownIds(known) }),
  'new-needs-like': ({ known }) => ({
    what: 'is a new id.',
    remedy: `Add "like" with the id to start from. ${knownIds(known)}`,
  }),
  'out-of-range': ({ value, range, bound }) => {
    switch (range) {
      case 'above':
        return { what: `is ${value}.`, remedy: `It must be a number above ${bound}.` };
      case 'from':
        return { what: `is ${value}.`, remedy: `It must be a number from ${bound} on.` };
      case 'lightness':
        return { what: 'is out of range:', remedy: `lightness must lie between 0 and ${bound}.` };
      case 'solids':
        return { what: 'is out of range:', remedy: `solids are a share from 0 to ${bound}.` };
      case 'angle':
        return {
          what: 'is out of range:',
          remedy: `a V or a tapered ball needs its angle between 0 and ${bound} degrees.`,
        };
    }
  },
  'curve-order': ({ point, before }) => ({
    what: `${point.hours} h with factor ${point.factor} does not follow ${before.hours} h with ${before.factor}.`,
    remedy: 'Hours must rise from above 0 and factors must not rise from 1.',
  }),
  conflict: ({ gelMin, potLifeMin }) => ({
    what: `gels after ${gelMin} min, before its pot life of ${potLifeMin} min ends.`,
    remedy: 'Thin layers gel later than a cup: check both.',
  }),
};

function knownIds(known: readonly string[]): string {
  return `Known ids: ${known.join(', ')}.`;
}
