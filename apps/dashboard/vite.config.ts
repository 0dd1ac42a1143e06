// How the dashboard is built into dist/, which the server serves; `npx vite` in this folder shows it while it is
// being written, and passes what it asks on to a server started by `npm start`.
import { defineConfig } from 'vite';

const server = `http://127.0.0.1:${process.env.PORT ?? '4170'}`;

export default defineConfig({
  esbuild: { jsx: 'automatic' },
  build: { target: 'es2022', outDir: 'dist', emptyOutDir: true },
  server: { proxy: { '/api': server } },
});
