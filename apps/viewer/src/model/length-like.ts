import { mmFromInches } from '@pourproof/plane';

/** A length in mm as it is typed, in the unit of another typed length; in mm where there is none. */
export function lengthLike(mm: number, typed: string | undefined): string {
  const isInch = /(?:in|inch|inches|["″”])\s*$/iu.test(typed ?? '');
  return isInch ? `${Number((mm / mmFromInches(1)).toFixed(4))}in` : `${Number(mm.toFixed(3))}mm`;
}
