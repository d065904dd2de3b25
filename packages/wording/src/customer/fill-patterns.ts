/** Ways to fill an area that a printer without colours tells apart, in the order in which colours take them (our choice). Steps in mm. */
const FILLS: readonly string[] = [
  '<rect width="2" height="2" fill="#9a9a9a"/>',
  '<rect width="2" height="2" fill="#fff"/><path d="M-0.5 0.5L0.5 -0.5M0 2L2 0M1.5 2.5L2.5 1.5" stroke="#000" stroke-width="0.3"/>',
  '<rect width="2" height="2" fill="#fff"/><circle cx="1" cy="1" r="0.45" fill="#000"/>',
  '<rect width="2" height="2" fill="#d8d8d8"/><path d="M0 1H2M1 0V2" stroke="#000" stroke-width="0.2"/>',
  '<rect width="2" height="2" fill="#fff"/><path d="M0 1H2" stroke="#000" stroke-width="0.5"/>',
  '<rect width="2" height="2" fill="#444"/><circle cx="1" cy="1" r="0.4" fill="#fff"/>',
];

/** More colours than this begin again, and are told apart by their numbers. */
export const FILL_COUNT: number = FILLS.length;

/** Definitions of so many fills as SVG patterns `fill-1` and on. */
export function fillPatterns(count: number): string {
  const patterns = FILLS.slice(0, count).map(
    (drawn, k) =>
      `<pattern id="fill-${k + 1}" width="2" height="2" patternUnits="userSpaceOnUse">${drawn}</pattern>`,
  );
  return `<defs>${patterns.join('')}</defs>`;
}

/** The paint of colour k, counted from 0. */
export function fillOf(k: number): string {
  return `url(#fill-${(k % FILL_COUNT) + 1})`;
}
