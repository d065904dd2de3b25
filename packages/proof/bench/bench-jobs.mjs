import { RADIUS_MM } from '../../geometry/bench/all-measures.mjs';

/** Diameter of the bits, as that of the opening that other engines make. */
const BIT_MM = 2 * RADIUS_MM;
const SHARED = {
  depth: '3mm',
  wood: 'maple',
  grain: '0deg',
  seal: 'epoxy',
  sealHours: '24h',
  resin: 'deep-pour',
  level: '0.5mm',
  colour: 'blue',
};
/** Jobs that are proved with nothing kept, by the bits they cut with. */
export const JOBS = {
  'flat bit': { ...SHARED, bit: [`flat:${BIT_MM}mm`] },
  'ball bit': { ...SHARED, bit: [`ball:${BIT_MM}mm`] },
  'V and clearing bit': { ...SHARED, bit: ['vee:60deg:1/2in', `flat:${BIT_MM}mm`] },
};

const BOARD = { wood: undefined, grain: undefined, board: 'plain 900x400x20mm maple', place: '8mm,9mm' };
/** One setting changed while the rest is kept: what the change is called, its aim in A, the setting, and what the job before has besides. */
export const CHANGES = [
  ['levelling', 0.5, { level: '0.6mm' }],
  ['overpour', 0.5, { overpour: '0.4mm' }],
  ['scale', 0.5, { weigh: 'fine' }],
  ['colour', 0.5, { colour: 'red' }],
  ['dates', 0.5, { start: '2026-12-02 09:00' }],
  ['grain', 3, { grain: '30deg' }],
  ['wood', 3, { wood: 'cherry' }],
  ['seal', 3, { seal: 'shellac' }],
  ['resin', 3, { resin: 'coating' }],
  ['place', 3, { ...BOARD, place: '12mm,9mm' }, BOARD],
  ['depth', 4, { depth: '2.8mm' }],
  [
    'bit',
    4,
    (job) => ({
      bit: job.bit.map((bit) => bit.replace(`${BIT_MM}mm`, `${BIT_MM + 0.1}mm`).replace('60deg', '62deg')),
    }),
  ],
];

/** A job with one setting changed. */
export function changed(settings, change) {
  return { ...settings, ...(typeof change === 'function' ? change(settings) : change) };
}
