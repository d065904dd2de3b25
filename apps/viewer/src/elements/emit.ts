import type { JobFile } from '@pourproof/proof';
import type { Failure } from '../model/question.ts';
import type { NewSource, Selection } from '../proof-controller.ts';

/** What elements tell the page, by event name. */
export interface PageEvents {
  readonly 'source-opening': null;
  readonly 'source-chosen': NewSource;
  readonly 'source-failed': Failure;
  readonly 'demo-chosen': null;
  readonly 'job-changed': { readonly [Key in keyof JobFile]?: JobFile[Key] | undefined };
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
