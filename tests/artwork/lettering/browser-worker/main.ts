const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
const out = document.getElementById('out') as HTMLElement;
worker.onmessage = (event: MessageEvent<string>) => {
  out.textContent = event.data;
};
worker.onerror = (event) => {
  out.textContent = `the worker failed: ${event.message}`;
};
