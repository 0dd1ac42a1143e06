// Every route of the table and who answers it. A route without an answer does not compile.

import type { Handlers } from './answer.ts';
import { agreements } from './routes/agreements.ts';
import { calls } from './routes/calls.ts';
import { engagements } from './routes/engagements.ts';
import { example } from './routes/example.ts';
import { invoices } from './routes/invoices.ts';
import { ledger } from './routes/ledger.ts';
import { money } from './routes/money.ts';
import { organisations } from './routes/organisations.ts';
import { parties } from './routes/parties.ts';
import { payments } from './routes/payments.ts';
import { programme } from './routes/programme.ts';
import { seasons } from './routes/seasons.ts';
import { statements } from './routes/statements.ts';
import { tariffs } from './routes/tariffs.ts';
import { travel } from './routes/travel.ts';

export const handlers: Handlers = {
  ...organisations,
  ...example,
  ...parties,
  ...tariffs,
  ...engagements,
  ...calls,
  ...programme,
  ...travel,
  ...statements,
  ...agreements,
  ...invoices,
  ...payments,
  ...money,
  ...ledger,
  ...seasons,
};
