import type { Picture } from '@pourproof/proof';

type Block = Picture['blocks'][number];

/** Lightness of the tints of black and of white: whatever the wood, the inks of the picture stand out from it (our choice; a test looks). */
const DARKEST = 77;
const LIGHTEST = 97;
/** Share of the wood's own colourfulness that its tint keeps (our choice). */
const CHROMA = 0.6;

/** A wood of a glue-up as the picture and its legend show it. */
export interface WoodTint {
  readonly name: string;
  /** Stands on its blocks, for eyes and printers that see no colour. */
  readonly letter: string;
  /** CSS colour after the wood's own; `'none'` where that is not known. */
  readonly colour: string;
}

/** The woods of a board by their tints, in the order in which they first lie on it; none where there is one wood only. */
export function woodTints(blocks: readonly Block[]): readonly WoodTint[] {
  const woods = new Map(blocks.map((block) => [block.species, block.lab] as const));
  return woods.size < 2
    ? []
    : [...woods].map(([name, lab], k) => ({ name, letter: letterOf(k), colour: tintOf(lab) }));
}

/** A wood's colour as a ground for ink. */
export function tintOf(lab: Block['lab']): string {
  if (lab === null) {
    return 'none';
  }
  const [lightness, a, b] = lab;
  const light = DARKEST + ((LIGHTEST - DARKEST) * Math.min(Math.max(lightness, 0), 100)) / 100;
  return `lab(${[light, a * CHROMA, b * CHROMA].map((value) => Number(value.toFixed(2))).join(' ')})`;
}

/** A to Z, then AA, AB, … */
function letterOf(k: number): string {
  const last = String.fromCharCode('A'.charCodeAt(0) + (k % 26));
  return k < 26 ? last : `${letterOf(Math.floor(k / 26) - 1)}${last}`;
}
