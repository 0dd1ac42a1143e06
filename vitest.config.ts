// How the tests run: one project for each kind of room. `npx vitest run packages/money` runs one room's.
import { defineConfig } from 'vitest/config';

const domain = '{bank,calendar,engagements,example,hours,invoicing,ledger,money,rates,refusal,travel}';
const doors = '{packages/{paper,store,wire},apps/api}';
const setupFiles = ['infra/vitest.setup.ts'];
// The doors open real databases and files; the first opening on a busy machine takes its time.
const patience = { testTimeout: 60_000, hookTimeout: 120_000 };

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'domain',
          include: [`packages/${domain}/src/**/*.test.ts`],
          setupFiles,
          testTimeout: 30_000,
        },
      },
      { test: { name: 'doors', include: [`${doors}/src/**/*.test.ts`], setupFiles, ...patience } },
      { test: { name: 'dashboard', include: ['apps/dashboard/src/**/*.test.{ts,tsx}'], setupFiles } },
      { test: { name: 'house', include: ['infra/**/*.test.ts'], setupFiles, ...patience } },
    ],
  },
});
