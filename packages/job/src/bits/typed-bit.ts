import type { BitInput, BitStructure } from './bit-input.ts';

/** A bit as it is typed, lengths in mm: `vee:60deg:12.7mm:tip 0.1mm`. */
export function typedBit(bit: BitInput): string {
  if (typeof bit === 'string') {
    return bit;
  }
  const length = typeof bit.cuttingLengthMm === 'number' ? `:length ${bit.cuttingLengthMm}mm` : '';
  return `${bit.kind}:${sizes(bit)}${length}`;
}

function sizes(bit: BitStructure): string {
  switch (bit.kind) {
    case 'flat':
    case 'ball':
      return `${bit.diameterMm}mm`;
    case 'bull':
      return `${bit.diameterMm}mm:corner ${bit.cornerMm}mm`;
    case 'vee':
      return `${bit.angleDeg}deg:${bit.diameterMm}mm${tip(bit)}`;
    case 'taper':
      return `${bit.tipDiameterMm}mm:${bit.sideDeg}deg:${bit.diameterMm}mm`;
    case 'profile':
      return bit.points.map(({ heightMm, diameterMm }) => `${diameterMm}mm@${heightMm}mm`).join(',');
  }
}

function tip({ tipMm = 0, tipRadiusMm = 0 }: BitStructure & { readonly kind: 'vee' }): string {
  return tipMm > 0 ? `:tip ${tipMm}mm` : tipRadiusMm > 0 ? `:tip radius ${tipRadiusMm}mm` : '';
}
