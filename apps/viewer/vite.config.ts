import { defineConfig } from 'vite';

export default defineConfig({
  root: import.meta.dirname,
  base: './',
  resolve: { conditions: ['@pourproof/source', 'module', 'browser', 'development|production'] },
  worker: { format: 'es' },
  build: { target: 'es2023', chunkSizeWarningLimit: 2000 },
  server: { host: '127.0.0.1' },
  preview: { host: '127.0.0.1', port: 4321 },
});
