/**
 * All findings by their stable codes, the only list. Each has a file in checks/, its words in
 * wording/findings/ and a page in docs/findings/.
 */
export const FINDING_CODES = [
  'oil-in-wood',
  'off-the-board',
  'clamp-in-the-way',
  'floor-too-thin',
  'hole-under-pocket',
  'rim-too-thin',
  'colours-touch',
  'bit-cannot-enter',
  'cut-ends-short',
  'stroke-near-bit-width',
  'floor-left-ridged',
  'vee-ends-early',
  'stroke-too-narrow-to-level',
  'ghost-stroke',
  'sands-through',
  'board-not-flat',
  'high-bleed-wall',
  'bleed-reaches-neighbour',
  'bleed-reaches-edge',
  'bleed-reaches-block',
  'floor-drinks',
  'seal-not-cured',
  'seal-past-bond',
  'short-grain-will-break',
  'island-too-small',
  'resin-left-thin',
  'pour-too-deep',
  'cup-too-large',
  'pour-hurried',
  'pour-flush',
  'resin-too-cold',
  'resin-too-warm',
  'pigment-too-much',
  'ratio-mistaken',
  'batch-too-small',
  'mix-too-small',
  'visible-bleed-likely',
  'colour-hides-or-shows',
  'outline-open',
  'outline-crosses',
] as const;

/** The code of a finding. */
export type FindingCode = (typeof FINDING_CODES)[number];
