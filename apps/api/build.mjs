// Bundles the server into dist/: what every start needs in main.js, what is loaded late (`import()`) beside it.
import { rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { bundle } from '@colla/infra/bundle';

const folder = fileURLToPath(new URL('dist', import.meta.url));
const main = fileURLToPath(new URL('src/main.ts', import.meta.url));

rmSync(folder, { recursive: true, force: true });
await bundle({ entries: { main }, folder });
