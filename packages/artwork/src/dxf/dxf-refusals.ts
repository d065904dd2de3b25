import { ArtworkError, type ErrorPlace } from '../artwork-error.ts';
import { lengthText } from '../length-text.ts';
import type { RefusalTable } from '../refusal-words.ts';

/** What may be wrong with a DXF file that cannot be read; each code is explained in docs/unsupported.md. */
interface DxfFaults {
  readonly 'empty-file': Record<never, never>;
  readonly 'not-dxf': { readonly found: 'dwg' | 'no-pairs' };
  readonly 'too-deep-blocks': { readonly most: number };
  readonly 'too-many-copies': { readonly most: number };
  readonly 'too-much-detail': { readonly mostPoints: number; readonly toleranceMm: number };
}

/** The error for a DXF file that cannot be read. */
export function dxfRefusal<Code extends keyof DxfFaults>(
  code: Code,
  parameters: DxfFaults[Code],
  place?: ErrorPlace,
): ArtworkError {
  return new ArtworkError(code, parameters, (unit) => WORDS[code](parameters, unit), place);
}

const WORDS: RefusalTable<DxfFaults> = {
  'empty-file': () => ({ what: 'The DXF file is empty.', remedy: 'Export the drawing again.' }),
  'not-dxf': ({ found }) =>
    found === 'dwg'
      ? {
          what: 'This is a DWG file, not a DXF file.',
          remedy: 'Save the drawing as DXF in the program that made it.',
        }
      : {
          what: 'This is not a DXF file: it has no pairs of group codes and values.',
          remedy: 'Export the drawing as DXF (any version, text or binary).',
        },
  'too-deep-blocks': ({ most }) => ({
    what: `Blocks lie within blocks more than ${most} deep.`,
    remedy: 'Explode the blocks that hold the artwork and export again.',
  }),
  'too-many-copies': ({ most }) => ({
    what: `The blocks of this file multiply to more than ${most} entities.`,
    remedy: 'Explode the blocks that hold the artwork and export only those.',
  }),
  'too-much-detail': ({ mostPoints, toleranceMm }, unit) => ({
    what: `The curves of this file make more than ${mostPoints} points at a tolerance of ${lengthText(toleranceMm, unit)}.`,
    remedy: 'Check the unit of the file, or allow a larger tolerance.',
  }),
};
