import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

export default defineConfig({
  // relative addresses, so that the built folder works wherever it is put
  base: './',
  resolve: { conditions: ['@pourproof/source', 'module', 'browser', 'development|production'] },
  worker: { format: 'es' },
  build: { target: 'es2022', assetsInlineLimit: 0, chunkSizeWarningLimit: 1500 },
  server: { fs: { allow: [fileURLToPath(new URL('../../', import.meta.url))] } },
  preview: { host: '127.0.0.1', port: 4173 },
});
