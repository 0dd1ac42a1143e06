// The template of the embedded books: a database with every table and nothing in it. Copying it takes a fraction
// of the time that making one takes. It is made when the program is built, and found by what is in it.

import { createHash } from 'node:crypto';
import { cpSync, existsSync, mkdirSync, mkdtempSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readMigrationFiles } from 'drizzle-orm/migrator';
import { openEmbedded } from './embedded.ts';
import { migrate, migrationsFolder } from './migrate.ts';

const templates = fileURLToPath(new URL('../dist/templates', import.meta.url));

/** Makes the template where it is missing. */
export async function makeTemplate(): Promise<void> {
  const template = templateFolder();
  if (existsSync(template)) return;
  mkdirSync(templates, { recursive: true });
  const draft = mkdtempSync(join(templates, 'draft-'));
  const database = await openEmbedded(draft);
  await migrate(database);
  await database.close();
  moveInto(draft, template);
}

/** Gives an empty book to a folder that is not there yet; leaves it to PostgreSQL where there is no template. */
export function copyTemplate(folder: string): void {
  const template = templateFolder();
  if (existsSync(folder) || !existsSync(template)) return;
  const draft = `${folder}.draft`;
  rmSync(draft, { recursive: true, force: true });
  cpSync(template, draft, { recursive: true });
  // Whole or not at all: a copy that was interrupted is never opened.
  renameSync(draft, folder);
}

function templateFolder(): string {
  const hash = createHash('sha256');
  for (const migration of readMigrationFiles({ migrationsFolder })) hash.update(migration.hash);
  return join(templates, hash.digest('hex').slice(0, 16));
}

/** Another process may have made the same template meanwhile; it is as good. */
function moveInto(draft: string, template: string): void {
  try {
    renameSync(draft, template);
  } catch (reason) {
    rmSync(draft, { recursive: true });
    if (!existsSync(template)) throw reason;
  }
}
