// Bundles the server into dist/: what every start needs in one file, what is loaded late (`import()`) and what
// runs in a worker (`*.worker.ts`) in files of their own, and the heavy packages left where npm put them.
import { existsSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { basename, dirname, join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const here = dirname(fileURLToPath(import.meta.url));
const dist = join(here, 'dist');
const packages = join(here, '..', '..', 'packages');

rmSync(dist, { recursive: true, force: true });
await build({
  entryPoints: { main: join(here, 'src', 'main.ts'), ...workers() },
  outdir: dist,
  bundle: true,
  splitting: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  chunkNames: '[name]-[hash]',
  external: ['pdfkit', 'fontkit', '@electric-sql/pglite', 'postgres'],
  // express and its like are CommonJS, and ask for what Node gives by `require`.
  banner: {
    js: "import { createRequire } from 'node:module';\nconst require = createRequire(import.meta.url);",
  },
  plugins: [{ name: 'places', setup: keepPlaces }],
  logLevel: 'warning',
});

function workers() {
  const rooms = readdirSync(packages).map((room) => join(packages, room, 'src'));
  const files = [join(here, 'src'), ...rooms].flatMap((folder) => filesUnder(folder));
  const found = files.filter((file) => file.endsWith('.worker.ts'));
  return Object.fromEntries(found.map((file) => [basename(file, '.ts'), file]));
}

/**
 * @param {string} folder
 * @returns {string[]}
 */
function filesUnder(folder) {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory() ? filesUnder(join(folder, entry.name)) : [join(folder, entry.name)],
  );
}

// A source finds its migrations and fonts beside itself by `new URL('…', import.meta.url)`. In the bundle such a
// URL still starts from the source's own place, so nothing is copied; only a worker is one of the bundle's files.
/** @param {import('esbuild').PluginBuild} bundle */
function keepPlaces(bundle) {
  bundle.onLoad({ filter: /\.ts$/ }, ({ path }) => {
    if (path.includes(`${sep}node_modules${sep}`)) return undefined;
    const text = readFileSync(path, 'utf8');
    if (/import\.meta\.(dirname|filename)/.test(text)) {
      return { errors: [{ text: `${path}: use import.meta.url, which the bundle keeps true` }] };
    }
    return { contents: withPlaces(text, path), loader: 'ts' };
  });
}

/**
 * @param {string} text
 * @param {string} path
 */
function withPlaces(text, path) {
  const place = relative(dist, path).split(sep).join('/');
  return text
    .replace(/(['"])[^'"]*?([^'"/]+\.worker)\.ts\1,\s*import\.meta\.url/g, "'./$2.js', import.meta['url']")
    .replaceAll('import.meta.url', `new URL(${JSON.stringify(place)}, import.meta.url).href`)
    .replaceAll("import.meta['url']", 'import.meta.url');
}
