import {
  CSS_PX_PER_INCH,
  type Drawing,
  type LengthUnit,
  mmFromInches,
  type TextInUnits,
} from '@pourproof/plane';
import { ArtworkError } from './artwork-error.ts';
import { lengthText, sizeText } from './length-text.ts';
import type { RefusalTable } from './refusal-words.ts';

/** A format that people send by mistake. */
export type OtherFormat = keyof typeof OTHER_FORMATS;

const OTHER_FORMATS = {
  png: 'a PNG picture; only drawn shapes can be carved',
  jpeg: 'a JPEG picture; only drawn shapes can be carved',
  gif: 'a GIF picture; only drawn shapes can be carved',
  pdf: 'a PDF file',
  zip: 'a ZIP archive; unpack it first',
  postscript: 'a PostScript file',
  unknown: 'neither an SVG nor a DXF file',
};

/** What may be wrong with a file before it is read, and with a drawing of any format. */
interface FileFaults {
  readonly 'artwork-empty': { readonly name: string };
  readonly 'artwork-unknown': { readonly name: string; readonly format: OtherFormat };
  readonly 'nothing-to-cut': {
    readonly name: string;
    readonly format: Drawing['format'];
    /** Texts of what the reader noticed. */
    readonly noticed: readonly TextInUnits[];
  };
  readonly 'size-of-no-board': {
    readonly name: string;
    readonly widthMm: number;
    readonly heightMm: number;
    /** How its size came about, in words. */
    readonly scaleSource: TextInUnits;
    /** Greatest or least size of a board or a cut, mm. */
    readonly limitMm: number;
  };
}

/** The error for artwork that is of no use to any reader. */
export function fileRefusal<Code extends keyof FileFaults>(
  code: Code,
  parameters: FileFaults[Code],
): ArtworkError {
  return new ArtworkError(code, parameters, (unit) => WORDS[code](parameters, unit));
}

const WORDS: RefusalTable<FileFaults> = {
  'artwork-empty': ({ name }) => ({
    what: `${name} is empty.`,
    remedy: 'Export the drawing again and check the size of the file.',
  }),
  'artwork-unknown': ({ name, format }) => ({
    what: `${name} is ${OTHER_FORMATS[format]}.`,
    remedy: 'Save the drawing as SVG or DXF and try again.',
  }),
  'nothing-to-cut': ({ name, format, noticed }, unit) => ({
    what: [
      `${name} has ${NOTHING[format].what}, so there is nothing to cut.`,
      ...noticed.map((text) => text[unit]),
    ].join(' '),
    remedy: NOTHING[format].remedy,
  }),
  'size-of-no-board': ({ name, widthMm, heightMm, scaleSource, limitMm }, unit) => {
    const isHuge = Math.max(widthMm, heightMm) > limitMm;
    const why = isHuge
      ? `no board is longer than ${limitMm / 1000} m`
      : `no bit cuts less than ${lengthText(limitMm, unit)}`;
    return {
      what: `${name} is ${sizeText(widthMm, heightMm, unit)} (${scaleSource[unit]}), and ${why}: its unit is another one. ${readingsText(widthMm, heightMm, isHuge, unit)}`,
      remedy: 'Give the true width of the artwork, a factor to scale it by, or the unit of a DXF drawing.',
    };
  },
};

/** Units that are taken for one another, and how many of the smaller make the larger. */
const MISTAKEN = [
  ['millimetres', 'centimetres', 10],
  ['millimetres', 'inches', mmFromInches(1)],
  ['millimetres', 'metres', 1000],
  ['inches', 'feet', 12],
  ['pixels', 'millimetres', CSS_PX_PER_INCH / mmFromInches(1)],
] as const;

/** What size each of the usual mistakes would come from. */
function readingsText(widthMm: number, heightMm: number, isHuge: boolean, unit: LengthUnit): string {
  const readings = MISTAKEN.map(([small, large, by]) => {
    const factor = isHuge ? 1 / by : by;
    const [meant, read] = isHuge ? [small, large] : [large, small];
    return `${sizeText(widthMm * factor, heightMm * factor, unit)} if ${meant} were read as ${read}`;
  });
  return `It would be ${readings.slice(0, -1).join(', ')}, or ${readings.at(-1)}.`;
}

/** What is missing in artwork with nothing to cut, and what to do about it. */
const NOTHING = {
  svg: {
    what: 'nothing painted in it',
    remedy: 'Check that the shapes have a fill or a stroke and are visible, and export the drawing again.',
  },
  dxf: {
    what: 'no closed outline in it',
    remedy:
      'Check that the outlines are closed, on layers that are on, in model space, and export the drawing again.',
  },
  lettering: { what: 'no letter that can be seen', remedy: 'Type the words to carve.' },
};
