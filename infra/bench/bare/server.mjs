// The least that could serve: bare Express and an open embedded database. PORT, and DATA_DIR for the database.
import { PGlite } from '@electric-sql/pglite';
import express from 'express';

const database = new PGlite(process.env.DATA_DIR);
await database.query('select 1');
const port = Number(process.env.PORT);
const listener = express().listen(port, '127.0.0.1', () => console.log(`http://127.0.0.1:${port}/`));
process.once('SIGTERM', async () => {
  listener.close();
  await database.close();
  process.exit(0);
});
