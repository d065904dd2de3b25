import paintWorkerUrl from './paint-worker.ts?worker&url';
import workerUrl from './proof-worker.ts?worker&url';

export { workerUrl };

// where the browser knows trusted types the page's policy takes no bare address, and each policy may be made once
let policy: { readonly createScriptURL: (input: string) => unknown } | undefined;

/** Starts the worker that computes proofs. */
export function startWorker(): Worker {
  return started('proof');
}

/** Starts the worker that paints; `null` where the browser has no canvas for workers. */
export function startPaintWorker(): Worker | null {
  return 'OffscreenCanvas' in globalThis ? started('paint') : null;
}

function started(kind: 'proof' | 'paint'): Worker {
  const { trustedTypes } = globalThis as { readonly trustedTypes?: TrustedTypes };
  // no other address comes out, whatever goes in
  const urlOf = (asked: string): string => (asked === 'paint' ? paintWorkerUrl : workerUrl);
  policy ??= trustedTypes?.createPolicy('pourproof-worker', { createScriptURL: urlOf });
  return new Worker((policy?.createScriptURL(kind) ?? urlOf(kind)) as string, { type: 'module' });
}

/** The part of the browser's interface that TypeScript does not describe. */
interface TrustedTypes {
  readonly createPolicy: (
    name: string,
    rules: { readonly createScriptURL: (input: string) => string },
  ) => { readonly createScriptURL: (input: string) => unknown };
}
