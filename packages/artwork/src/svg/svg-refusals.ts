import { ArtworkError, type ErrorPlace } from '../artwork-error.ts';
import type { RefusalTable } from '../refusal-words.ts';

/** What may be wrong with an SVG file that cannot be read; each code is explained in docs/unsupported.md. */
interface SvgFaults {
  readonly 'svg-empty': Record<never, never>;
  readonly 'svg-encoding-broken': { readonly encoding: string };
  readonly 'svg-encoding-unknown': { readonly encoding: string };
  readonly 'svg-entities-too-large': { readonly mostCharacters: number };
  readonly 'svg-entity-loop': { readonly entity: string };
  readonly 'svg-nested-too-deeply': { readonly most: number };
  /** Name of the first element; `''` where there is none. */
  readonly 'svg-not-svg': { readonly root: string };
  /** What the XML parser says, without its place and full stop. */
  readonly 'svg-not-well-formed': { readonly reason: string };
  readonly 'svg-packed-broken': Record<never, never>;
  readonly 'svg-packed-too-large': { readonly mostBytes: number };
  readonly 'svg-reuse-too-large': { readonly most: number };
  readonly 'svg-styles-too-large': { readonly most: number };
}

/** The error for an SVG file that cannot be read. */
export function svgRefusal<Code extends keyof SvgFaults>(
  code: Code,
  parameters: SvgFaults[Code],
  place?: ErrorPlace,
): ArtworkError {
  return new ArtworkError(code, parameters, (unit) => WORDS[code](parameters, unit), place);
}

const WORDS: RefusalTable<SvgFaults> = {
  'svg-empty': () => ({
    what: 'The file is empty.',
    remedy: 'Export the drawing again and check the size of the file.',
  }),
  'svg-encoding-broken': ({ encoding }) => ({
    what: `The file has bytes that are not text in its encoding, ${encoding}.`,
    remedy: 'Save the drawing with the encoding UTF-8, or copy the file again if it was damaged.',
  }),
  'svg-encoding-unknown': ({ encoding }) => ({
    what: `The file says that its text is in the encoding "${encoding}", which is not known here.`,
    remedy: 'Save the drawing with the encoding UTF-8.',
  }),
  'svg-entities-too-large': ({ mostCharacters }) => ({
    what: `The file's entities expand to more than ${mostCharacters / 1_000_000} million characters.`,
    remedy:
      'Such files are made to exhaust a computer. Save the drawing as a plain SVG file from the program that made it.',
  }),
  'svg-entity-loop': ({ entity }) => ({
    what: `The entity "${entity}" is made of itself, or of too many others inside one another.`,
    remedy: 'Save the drawing as a plain SVG file from the program that made it.',
  }),
  'svg-nested-too-deeply': ({ most }) => ({
    what: `The file has more than ${most} elements inside one another.`,
    remedy: 'Ungroup the drawing and export it again.',
  }),
  'svg-not-svg': ({ root }) =>
    root === ''
      ? { what: 'The file holds no element.', remedy: 'Check that it is an SVG drawing.' }
      : {
          what: `The file's first element is "${root}", not an svg element of the SVG namespace.`,
          remedy: 'Check that it is an SVG drawing, and export it again.',
        },
  'svg-not-well-formed': ({ reason }) => ({
    what: `The file is not well-formed XML: ${reason}.`,
    remedy: 'Export the drawing again; if the file was cut short, copy it again.',
  }),
  'svg-packed-broken': () => ({
    what: 'The file is gzip-compressed, but it cannot be unpacked.',
    remedy: 'Copy the file again, or save it as a plain SVG file.',
  }),
  'svg-packed-too-large': ({ mostBytes }) => ({
    what: `The compressed file unpacks to more than ${mostBytes / 1024 / 1024} MB.`,
    remedy: 'Save the drawing as a plain SVG file and look at what makes it so large.',
  }),
  'svg-reuse-too-large': ({ most }) => ({
    what: `The file draws parts of itself more than ${most} times.`,
    remedy: 'Such files are made to exhaust a computer. Save the drawing with its copies expanded.',
  }),
  'svg-styles-too-large': ({ most }) => ({
    what: `The style sheets of the file take more than ${most / 1_000_000} million steps to apply.`,
    remedy:
      'Such files are made to exhaust a computer. Write the styles into the elements, or save the drawing as a plain SVG file.',
  }),
};
