import { type LengthUnit, MM_PER_INCH } from '@pourproof/plane';

/** A round length to draw as a bar, with its name. */
export interface ScaleBar {
  readonly lengthMm: number;
  readonly label: string;
  /** Equal parts that it is divided in, black and white by turns. */
  readonly parts: number;
}

interface Step {
  readonly size: number;
  readonly label: string;
  readonly parts: number;
}

const MM_STEPS: readonly Step[] = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000].map((size) => ({
  size,
  label: `${size} mm`,
  parts: String(size).startsWith('2') ? 4 : 5,
}));
const INCH_STEPS: readonly Step[] = [
  { size: 1 / 16, label: '1/16 in', parts: 2 },
  { size: 1 / 8, label: '1/8 in', parts: 2 },
  { size: 1 / 4, label: '1/4 in', parts: 4 },
  { size: 1 / 2, label: '1/2 in', parts: 4 },
  ...[1, 2, 4, 6, 12, 24].map((size) => ({ size, label: `${size} in`, parts: size === 6 ? 6 : 4 })),
];

/** The largest round length that is at most a third of a picture's width, or the smallest there is. */
export function scaleBar(widthMm: number, unit: LengthUnit): ScaleBar {
  const factor = unit === 'mm' ? 1 : MM_PER_INCH;
  const steps = unit === 'mm' ? MM_STEPS : INCH_STEPS;
  const step = steps.findLast(({ size }) => size * factor <= widthMm / 3) ?? steps[0];
  const { size, label, parts } = step ?? { size: 1, label: '', parts: 1 };
  return { lengthMm: size * factor, label, parts };
}
