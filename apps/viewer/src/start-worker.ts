import workerUrl from './proof-worker.ts?worker&url';

/** Starts the worker that computes proofs. */
export function startWorker(): Worker {
  // where the browser knows trusted types the page's policy takes no bare address
  const { trustedTypes } = globalThis as { readonly trustedTypes?: TrustedTypes };
  const policy = trustedTypes?.createPolicy('pourproof-worker', { createScriptURL: () => workerUrl });
  return new Worker((policy?.createScriptURL('') ?? workerUrl) as string, { type: 'module' });
}

/** The part of the browser's interface that TypeScript does not describe. */
interface TrustedTypes {
  readonly createPolicy: (
    name: string,
    rules: { readonly createScriptURL: () => string },
  ) => { readonly createScriptURL: (input: string) => unknown };
}
