import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

// Bundled as the app is: no inline assets, relative addresses, workers as modules.
export default defineConfig({
  base: './',
  logLevel: 'error',
  plugins: [react()],
  worker: { format: 'es' },
  build: { emptyOutDir: true, target: 'es2022', assetsInlineLimit: 0, modulePreload: { polyfill: false } },
});
