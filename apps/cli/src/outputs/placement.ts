import { placementHtml } from '@pourproof/wording';
import type { Vetted } from 'pourproof';
import type { Request } from '../request.ts';
import { paperOptions } from './paper-options.ts';

/** Sheets in real size of the one artwork that is vetted. */
export function placementContent([first]: readonly [Vetted, ...Vetted[]], { paper }: Request): string {
  return placementHtml(first, paperOptions(paper));
}
