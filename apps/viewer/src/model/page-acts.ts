import type { ArtworkSource, NamedBytes } from './artwork-source.ts';
import type { Bench } from './bench.ts';
import type { JobPart } from './changed-job.ts';
import type { OpenedFiles } from './opened-files.ts';
import type { Shelf } from './shelf.ts';

/** What of a shelf can be taken off by itself. */
export type ShelfPart = keyof Shelf;

/**
 * One thing that a maker did, as plain data: the browser can clone it, post it and keep it, and the state is what the acts make of a blank page
 * one after another.
 */
export type PageAct =
  /** Files that were dropped or chosen together. */
  | { readonly do: 'open'; readonly files: OpenedFiles }
  /** The demo order, with a ticket of its own; the maker's order waits aside. */
  | { readonly do: 'show-demo'; readonly demo: ArtworkSource }
  | { readonly do: 'leave-demo' }
  /** Words in a font of the page's, the maker's own or, with `null`, in single strokes. */
  | {
      readonly do: 'set-lettering';
      readonly text: string;
      readonly font: NamedBytes | null;
      readonly part: JobPart;
      readonly run: string;
    }
  /** Parts of the job; `undefined` resets a value to its default. */
  | {
      readonly do: 'change-job';
      readonly part: JobPart;
      /** The note that stood there when it was changed, and has been heeded with it. */
      readonly seen: string;
      readonly run: string;
    }
  | { readonly do: 'take-off'; readonly what: ShelfPart }
  /** Shop, materials and coupons that were opened in another window. */
  | { readonly do: 'take-shelf'; readonly shelf: Shelf }
  | { readonly do: 'undo' }
  | { readonly do: 'redo' }
  | { readonly do: 'go-to'; readonly step: number }
  /** A bench that was kept, or a new one, in place of the one that is there. */
  | { readonly do: 'lay'; readonly bench: Bench }
  /** The same bench, kept under another id from now on. */
  | { readonly do: 'keep-as'; readonly id: string; readonly note: string }
  | { readonly do: 'note'; readonly note: string };
