// npm start: installs what is missing, builds what changed, serves. The server runs in this very process,
// so that a second start costs one Node and a stop reaches the server directly.
import { join } from 'node:path';
import { build } from './build.mjs';
import { install } from './install.mjs';
import { endWithNpm, root } from './root.mjs';

endWithNpm();
install();
build();
process.env.NODE_ENV = 'production';
process.env.PORT ||= '4170';
process.env.DATA_DIR ||= join(root, 'data');
const server = new URL('../apps/api/dist/main.js', import.meta.url).href;
await import(server);
