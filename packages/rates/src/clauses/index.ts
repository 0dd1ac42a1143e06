// The menu: every kind of clause, one line each. A new kind is one new file and its line here.

import { cancellation } from './cancellation.ts';
import { change } from './change.ts';
import { cost } from './cost.ts';
import { deposit } from './deposit.ts';
import { discount } from './discount.ts';
import { docking } from './docking.ts';
import { either } from './either.ts';
import { entitlement } from './entitlement.ts';
import { fixed } from './fixed.ts';
import { highest } from './highest.ts';
import { hourly } from './hourly.ts';
import { latePayment } from './late-payment.ts';
import { lateScore } from './late-score.ts';
import { limit } from './limit.ts';
import { pack } from './package.ts';
import { payee } from './payee.ts';
import { payment } from './payment.ts';
import { split } from './split.ts';
import { supplement } from './supplement.ts';
import { tax } from './tax.ts';
import { travel } from './travel.ts';

export const menu = {
  hourly,
  fixed,
  package: pack,
  entitlement,
  supplement,
  highest,
  either,
  'late-score': lateScore,
  change,
  discount,
  docking,
  limit,
  travel,
  cost,
  split,
  payee,
  cancellation,
  deposit,
  payment,
  'late-payment': latePayment,
  tax,
} as const;
