/** Every finding there can be, by its stable code: the only list. Each has a file in checks/ and a page in docs/findings/. */
export const FINDING_CODES = [
  'bit-cannot-enter',
  'stroke-near-bit-width',
  'stroke-too-narrow-to-level',
  'high-bleed-wall',
  'outline-open',
  'outline-crosses',
] as const;

/** The code of a finding. */
export type FindingCode = (typeof FINDING_CODES)[number];
