import { flatBitsBelow, parseBit, widestMm } from '@pourproof/job';
import type { MaterialsBook } from '@pourproof/materials';

/** A bit as a field shows it: a flat one is its size alone. */
export function shownBit(bit: string): string {
  return bit.startsWith('flat:') ? bit.slice('flat:'.length) : bit;
}

/** What was typed into a field, as a job has it. */
export function typedBitText(text: string): string {
  return text.includes(':') ? text : `flat:${text}`;
}

/** The next smaller flat bit at hand, in the unit of the last one where there is one, as typed; the last one again where there is none. */
export function smallerBit(bits: readonly string[], { cutters }: MaterialsBook): string {
  const text = bits.at(-1) ?? '';
  const unit = /in\b|"/u.test(text) ? 'in' : 'mm';
  const [next] = flatBitsBelow(widestMm(parseBit(text)), unit, cutters);
  const size = cutters.value.find(({ shape, diameterMm }) => shape === 'flat' && diameterMm === next);
  return size === undefined ? text : `flat:${size.label}`;
}
