import type { Layer } from '../draw/layer.ts';
import type { JobPart } from '../model/changed-job.ts';
import type { ChosenFont } from '../model/loads.ts';
import type { ChosenFile } from '../model/opened-files.ts';
import type { Selection } from '../model/selection.ts';

/** What elements tell the page, by event name. */
export interface PageEvents {
  readonly 'demo-chosen': null;
  readonly 'demo-left': null;
  readonly 'lettering-chosen': { readonly text: string; readonly font: ChosenFont; readonly part: JobPart };
  readonly 'files-chosen': readonly ChosenFile[];
  readonly 'materials-dropped': null;
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
