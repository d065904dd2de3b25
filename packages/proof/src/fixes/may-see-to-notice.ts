import type { Notice } from '@pourproof/plane';

/**
 * Whether a maker can see to what a notice tells: cautions take a look that only the maker can take, since nobody else knows whether
 * the artwork as read is the one that is meant. Notes count for nothing.
 */
export function maySeeToNotice({ severity }: Notice): boolean {
  return severity === 'caution';
}
