// Leaves the template of the embedded books in dist/, so that a first start has only to copy it.
import { rmSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const source = fileURLToPath(new URL('src/template.ts', import.meta.url));
const outfile = fileURLToPath(new URL('dist/template.mjs', import.meta.url));

rmSync(new URL('dist', import.meta.url), { recursive: true, force: true });
await build({
  entryPoints: [source],
  outfile,
  bundle: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  packages: 'external',
  // The sources find what lies beside them from where they are, not from where the bundle is.
  define: { 'import.meta.url': JSON.stringify(pathToFileURL(source).href) },
  logLevel: 'warning',
});
const { makeTemplate } = await import(pathToFileURL(outfile).href);
await makeTemplate();
rmSync(outfile);
