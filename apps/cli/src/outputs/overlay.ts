import { overlaySvg } from '@pourproof/wording';
import type { Vetted } from 'pourproof';

/** The drawing in real size, of the first that was vetted. */
export function overlayContent([first]: readonly [Vetted, ...Vetted[]]): string {
  return overlaySvg(first);
}
