import type { LevelMethodId } from '@pourproof/materials';

/** What to mind with each way of levelling, in one sentence. */
export const LEVELLING_WORDS: Readonly<Record<LevelMethodId, string>> = {
  planer:
    'One pass of 1/32 in, the last one shallower: resin chips on planer knives, so many use a drum sander instead.',
  drum: 'Start at 80 grit, keep it cool, and let only cold resin under the drum.',
  hand: 'Use a hard block from 80 to 220 grit; a soft pad dishes wood beside resin.',
  cutter:
    'Surface the board flat before carving with the same setup, so that cut and levelling share one plane.',
};
