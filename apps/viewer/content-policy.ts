/** What the page and its worker may do alike. */
const ALIKE = {
  'default-src': "'none'",
  'script-src': "'self'",
  'style-src': "'self'",
  'font-src': "'self'",
  'img-src': "'self' data:",
  'connect-src': "'self'",
  'worker-src': "'self'",
  'manifest-src': "'self'",
  'base-uri': "'none'",
  'form-action': "'none'",
};

/** What every file of the page may do, the worker included; sent as the header `Content-Security-Policy`. */
export const HEADER_POLICY: string = policy({
  ...ALIKE,
  // in the worker alone, see PAGE_POLICY: HarfBuzz, which shapes letters, is WebAssembly
  'script-src': "'self' 'wasm-unsafe-eval'",
  'frame-ancestors': "'none'",
});

/** What the page itself may do, in its own head so that it holds wherever it is put: no text becomes code, by no way. */
export const PAGE_POLICY: string = policy({
  ...ALIKE,
  'require-trusted-types-for': "'script'",
  'trusted-types': 'lit-html pourproof-worker',
});

function policy(rules: Readonly<Record<string, string>>): string {
  return Object.entries(rules)
    .map(([rule, value]) => `${rule} ${value}`)
    .join('; ');
}
