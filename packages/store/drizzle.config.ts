// `npx drizzle-kit generate` writes the next migration from the tables. What it does not know (forced row-level
// security, grants) is added to the new file by hand; see migrations/0000_books.sql.

import { defineConfig } from 'drizzle-kit';

export default defineConfig({ dialect: 'postgresql', schema: './src/tables/index.ts', out: './migrations' });
