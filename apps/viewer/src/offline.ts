import { installOffline } from './start-worker.ts';

/** What there is to say of the page without a connection: nothing yet, that it works, or that a newer version is there. */
export type OfflineState = 'none' | 'ready' | 'newer';

/** Keeps the page for days without a connection. A newer version is never put in its place by itself. */
export class Offline {
  state: OfflineState = 'none';
  readonly #changed: () => void;
  #registration: ServiceWorkerRegistration | null = null;
  #isInstalling = false;

  constructor(changed: () => void) {
    this.#changed = changed;
  }

  /** Installs it once; called when the first proof is there, which needs the connection and the processor more. */
  async install(): Promise<void> {
    if (this.#isInstalling) {
      return;
    }
    this.#isInstalling = true;
    try {
      this.#registration = await installOffline();
    } catch {
      // the page goes on with its connection
      return;
    }
    this.#watch();
    this.#registration?.addEventListener('updatefound', () => this.#watch());
  }

  /** Takes the newer version and loads the page again; what was done must have been kept. */
  take(): void {
    navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
    this.#registration?.waiting?.postMessage({ type: 'SKIP_WAITING' });
  }

  #watch(): void {
    this.#look();
    this.#registration?.installing?.addEventListener('statechange', () => this.#look());
  }

  #look(): void {
    const { waiting = null, active = null } = this.#registration ?? {};
    const state = waiting !== null && active !== null ? 'newer' : active !== null ? 'ready' : 'none';
    if (state !== this.state) {
      this.state = state;
      this.#changed();
    }
  }
}
