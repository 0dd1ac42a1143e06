// What the first screen loads, compressed as a server would send it. Fonts are compressed in themselves and counted
// beside; answers of the books are not the dashboard's.
import { extname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { build } from 'esbuild';
import type { Row } from '../measure.ts';
import { openSeason } from '../season-page.ts';

/** What the dashboard takes from each of the three. */
const PARTS = {
  react: 'createElement',
  'react-dom/client': 'createRoot',
  'chart.js': 'BarController, BarElement, CategoryScale, Chart, LinearScale',
};

const USE = `
  Chart.register(BarController, BarElement, CategoryScale, LinearScale);
  const ref = (canvas) => new Chart(canvas, { type: 'bar' });
  createRoot(document.body).render(createElement('canvas', { ref }));
`;

const season = await openSeason({ calls: 60 });
const files = [...season.loaded];
await season.end();

const isFont = ([name]: [string, Buffer]) => extname(name) === '.woff2';
const fonts = sum(files.filter(isFont).map(([, body]) => body.length));
const ours = sum(files.filter((file) => !isFont(file)).map(([, body]) => gzipSync(body).length));
const reference = gzipSync(await bare()).length / 1024;

const row: Row = {
  id: 'web-1',
  ours: `first load of the dashboard, gzip (and ${fonts.toFixed(0)} KB of fonts)`,
  reference: 'React + react-dom + the parts of Chart.js it uses',
  goal: { atMost: 1.9 },
  unit: 'KB',
  rounds: 1,
  run: async () => ({ ours, reference }),
};

export default row;

function sum(bytes: readonly number[]): number {
  return bytes.reduce((all, each) => all + each, 0) / 1024;
}

async function bare(): Promise<Uint8Array> {
  const taken = Object.entries(PARTS).map(([library, parts]) => `import { ${parts} } from '${library}';`);
  const contents = [...taken, USE].join('\n');
  const { outputFiles } = await build({
    stdin: { contents, resolveDir: fileURLToPath(new URL('../../apps/dashboard', import.meta.url)) },
    bundle: true,
    minify: true,
    write: false,
    format: 'esm',
    target: 'es2022',
    define: { 'process.env.NODE_ENV': '"production"' },
  });
  return outputFiles[0]?.contents ?? new Uint8Array();
}
