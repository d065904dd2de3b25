import type { ArtName } from './art-shapes.ts';

/** Inks of the page, by the name of its style. */
export const INKS = ['ink', 'blue', 'blue-wash', 'orange'] as const;

export type Ink = (typeof INKS)[number] | 'white';

/** How a shape is drawn: widths and dashes in px whatever the scale. */
export interface ArtLook {
  readonly fill: Ink | 'hatch' | null;
  readonly fillAlpha?: number;
  /** Areas of several blocks in one shape may overlap, and then leave each other out. */
  readonly isEvenOdd?: boolean;
  readonly stroke: Ink;
  readonly widthPx: number;
  readonly dashPx?: readonly number[];
  readonly isRoundEnded?: boolean;
}

/** Look of every shape; patterns and dashes tell things apart in black and white too. */
export const ART_LOOKS: Readonly<Record<ArtName, ArtLook>> = {
  'bleed-high': {
    fill: 'orange',
    fillAlpha: 0.08,
    isEvenOdd: true,
    stroke: 'orange',
    widthPx: 0.8,
    dashPx: [1.5, 3],
  },
  'bleed-median': { fill: 'orange', fillAlpha: 0.22, isEvenOdd: true, stroke: 'orange', widthPx: 0.9 },
  drawn: { fill: 'white', stroke: 'ink', widthPx: 0.8 },
  cut: { fill: 'blue-wash', stroke: 'blue', widthPx: 1.4 },
  depth: { fill: null, stroke: 'blue', widthPx: 0.8 },
  standing: { fill: 'hatch', stroke: 'orange', widthPx: 1 },
  narrow: { fill: null, stroke: 'ink', widthPx: 2.6, dashPx: [0.1, 4.4], isRoundEnded: true },
  'bleed-wall': { fill: null, stroke: 'ink', widthPx: 2.4 },
  'level-ground': { fill: null, stroke: 'ink', widthPx: 5 },
  'level-lost': { fill: null, stroke: 'white', widthPx: 2.6, dashPx: [2, 2.6] },
  'level-spoilt': { fill: null, stroke: 'white', widthPx: 2.6 },
  'level-close': { fill: null, stroke: 'ink', widthPx: 2, dashPx: [6, 3] },
  'level-holds': { fill: null, stroke: 'blue', widthPx: 1.2 },
  'level-uncut': { fill: null, stroke: 'ink', widthPx: 2, dashPx: [0.5, 4], isRoundEnded: true },
};

/** The same looks as a style sheet, for the legend and for paper; a hatch is the business of who draws it. */
export function artStyle(): string {
  return Object.entries(ART_LOOKS)
    .map(([name, look]) => {
      const rules = [
        look.fill === 'hatch' ? null : `fill: ${look.fill === null ? 'none' : inkStyle(look.fill)}`,
        look.fillAlpha === undefined ? null : `fill-opacity: ${look.fillAlpha}`,
        look.isEvenOdd === true ? 'fill-rule: evenodd' : null,
        `stroke: ${inkStyle(look.stroke)}`,
        `stroke-width: ${look.widthPx}`,
        look.dashPx === undefined ? null : `stroke-dasharray: ${look.dashPx.join(' ')}`,
        look.isRoundEnded === true ? 'stroke-linecap: round' : null,
      ];
      return `.${name} { ${rules.filter((rule) => rule !== null).join('; ')} }`;
    })
    .join('\n');
}

function inkStyle(ink: Ink): string {
  return ink === 'white' ? '#fff' : `var(--${ink})`;
}
