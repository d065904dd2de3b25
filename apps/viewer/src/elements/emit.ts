import type { Layer } from '../draw/layer.ts';
import type { JobPart } from '../model/changed-job.ts';
import type { ChosenFont } from '../model/loads.ts';
import type { ChosenFile } from '../model/opened-files.ts';
import type { PageAct, ShelfPart } from '../model/page-acts.ts';
import type { Selection } from '../model/selection.ts';

/** What elements tell the page, by event name. */
export interface PageEvents {
  readonly 'demo-chosen': null;
  readonly 'demo-left': null;
  readonly 'lettering-chosen': { readonly text: string; readonly font: ChosenFont; readonly part: JobPart };
  /** A name as it is typed: with the font that is chosen for it, and the go that it belongs to. */
  readonly 'name-typed': { readonly text: string; readonly choice: string; readonly run: string };
  readonly 'files-chosen': readonly ChosenFile[];
  /** What the maker has for every job, taken off. */
  readonly 'part-taken-off': ShelfPart;
  readonly 'part-saved': ShelfPart;
  /** A kept job to open or to delete, by its id; and one to begin. */
  readonly 'job-opened': string;
  readonly 'job-deleted': string;
  readonly 'job-begun': null;
  /** Whether this job takes the shelf of another tab. */
  readonly 'shelf-answered': 'take' | 'leave';
  /** Another step to go to. */
  readonly 'step-chosen': PageAct & { readonly do: 'undo' | 'redo' | 'go-to' };
  readonly 'job-changed': JobPart;
  readonly 'layer-chosen': Layer;
  readonly 'place-chosen': Selection | null;
}

/** Tells the page something from an element, through all shadow roots. */
export function emit<Name extends keyof PageEvents>(
  from: Element,
  name: Name,
  detail: PageEvents[Name],
): void {
  from.dispatchEvent(new CustomEvent(name, { detail, bubbles: true, composed: true }));
}
