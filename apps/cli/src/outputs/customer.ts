import { customerHtml } from '@pourproof/wording';
import type { Vetted } from 'pourproof';
import type { Request } from '../request.ts';
import { paperOptions } from './paper-options.ts';

/** Sheets for the customer of the one artwork that is vetted. */
export function customerContent(
  [first]: readonly [Vetted, ...Vetted[]],
  { paper, sources: [source] }: Request,
): string {
  const text = source?.kind === 'lettering' ? source.text : null;
  return customerHtml(first, { ...paperOptions(paper), text });
}
