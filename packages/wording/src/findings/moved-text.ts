import type { Fix } from '@pourproof/proof';
import type { Reader } from './finding-words.ts';
import { noLess } from './way-length.ts';

/** The way out of moving the artwork. */
export function movedText({ rightMm, downMm }: Extract<Fix, { do: 'move' }>, reader: Reader): string {
  const ways = [
    ...wayText(rightMm, 'to the right', 'to the left', reader),
    ...wayText(downMm, 'down', 'up', reader),
  ];
  return `Move the artwork ${ways.join(' and ')}, as drawn.`;
}

/** One direction of a move; none where it is 0. */
function wayText(mm: number, ahead: string, back: string, { units }: Reader): readonly string[] {
  return mm === 0 ? [] : [`${noLess(Math.abs(mm), units)} ${mm > 0 ? ahead : back}`];
}
