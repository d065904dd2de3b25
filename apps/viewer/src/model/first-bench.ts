import { afterAct } from './after-act.ts';
import type { ArtworkSource } from './artwork-source.ts';
import { type Bench, newBench, stateOf } from './bench.ts';
import { BLANK_PAGE, emptyOrder, type PageState } from './page-state.ts';
import type { Shelf } from './shelf.ts';

/** What a maker sees who has nothing kept yet: the demo, with an order of their own aside on which all is as usual or as in their shop. */
export function firstBench(id: string, shelf: Shelf, demo: ArtworkSource): Bench {
  const shown = stateOf(afterAct(blankBench(id, shelf), { do: 'show-demo', demo }));
  return newBench(id, shown, 'The demo');
}

/** A sheet with nothing on it. */
export function blankBench(id: string, shelf: Shelf): Bench {
  const blank: PageState = { ...BLANK_PAGE, ...emptyOrder(shelf), shelf };
  return newBench(id, blank, 'Blank sheet');
}
