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

/** Installs what answers without a connection. Resolves to `null` where the browser has no such thing, or not on this page. */
export async function installOffline(): Promise<ServiceWorkerRegistration | null> {
  if (!('serviceWorker' in navigator) || !import.meta.env.PROD) {
    return null;
  }
  return navigator.serviceWorker.register(addressOf('offline') as string);
}

function started(kind: 'proof' | 'paint'): Worker {
  return new Worker(addressOf(kind) as string, { type: 'module' });
}

type Kind = 'proof' | 'paint' | 'offline';

const ADDRESSES: Readonly<Record<Kind, string>> = {
  proof: workerUrl,
  paint: paintWorkerUrl,
  offline: './sw.js',
};

function addressOf(kind: Kind): unknown {
  const { trustedTypes } = globalThis as { readonly trustedTypes?: TrustedTypes };
  // no other address comes out, whatever goes in
  const urlOf = (asked: string): string => ADDRESSES[asked as Kind] ?? workerUrl;
  policy ??= trustedTypes?.createPolicy('pourproof-worker', { createScriptURL: urlOf });
  return policy?.createScriptURL(kind) ?? urlOf(kind);
}

/** The part of the browser's interface that TypeScript does not describe. */
interface TrustedTypes {
  readonly createPolicy: (
    name: string,
    rules: { readonly createScriptURL: (input: string) => string },
  ) => { readonly createScriptURL: (input: string) => unknown };
}
