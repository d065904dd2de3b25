import type { Sealer } from '@pourproof/materials';

/** A seal coat in the words of a way out; whoever applies the way out finds the seal by the same words. */
export function sealWords(coats: number, seal: Sealer): string {
  return `${coats} ${coats === 1 ? 'coat' : 'coats'} of ${seal.name}, left ${seal.readyHours.high} h`;
}
