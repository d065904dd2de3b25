import workerUrl from './proof-worker.ts?worker&url';

export { workerUrl };

// where the browser knows trusted types the page's policy takes no bare address, and each policy may be made once
let policy: { readonly createScriptURL: (input: string) => unknown } | undefined;

/** Starts the worker that computes proofs. */
export function startWorker(): Worker {
  const { trustedTypes } = globalThis as { readonly trustedTypes?: TrustedTypes };
  policy ??= trustedTypes?.createPolicy('pourproof-worker', { createScriptURL: () => workerUrl });
  return new Worker((policy?.createScriptURL('') ?? workerUrl) as string, { type: 'module' });
}

/** The part of the browser's interface that TypeScript does not describe. */
interface TrustedTypes {
  readonly createPolicy: (
    name: string,
    rules: { readonly createScriptURL: () => string },
  ) => { readonly createScriptURL: (input: string) => unknown };
}
