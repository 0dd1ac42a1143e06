// The season in a few sentences: its hours, its money. Each amount opens to its why.

import type { WeekOfHours } from '@colla/invoicing';
import { Fragment, type ReactNode } from 'react';
import { season } from '../../catalogue/season.ts';
import { sayHours } from '../../locale.ts';
import { Amount, Filled } from '../../ui/index.ts';
import { isOwing, isSome, minutesByStanding, moneyIn, type OwedMoney, payersIn } from './sums.ts';
import type { StaveJson } from './view.ts';
import { type Earning, type Explained, earnedInAll, earnedWhys, owedWhy, type Which } from './whys.ts';

interface SummingProps {
  staves: readonly StaveJson[];
  weeks: readonly WeekOfHours[];
  earned: readonly Earning[];
  /** Whether the whole season is in view. */
  whole: boolean;
  explained: Explained;
}

export function Summing(props: SummingProps) {
  const sums = moneyIn(props.staves).filter(isOwing);
  const money = sums.length === 0 ? [season('sumNothing')] : sums.flatMap((sum) => sayOwing(sum, props));
  return (
    <p className="summing">
      {[sayWork(props), ...money, ...sayEarned(props)].map((sentence, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: sentences never change places
        <Fragment key={at}>
          {at > 0 && ' '}
          {sentence}
        </Fragment>
      ))}
    </p>
  );
}

function sayWork({ staves, weeks, whole }: SummingProps): string {
  const { played, agreed, held } = minutesByStanding(weeks);
  return season(whole ? 'sumHours' : 'sumHoursShown', {
    count: staves.reduce((calls, { marks }) => calls + marks.length, 0),
    played: sayHours(played),
    agreed: sayHours(agreed),
    held: sayHours(held),
  });
}

function sayOwing(sum: OwedMoney, { staves, explained }: SummingProps): ReactNode[] {
  const parts = payersIn(staves).flatMap(({ from }) => from);
  const amount = (which: Which) => <Amount said why={owedWhy(which, sum, parts, explained)} />;
  const sentence = (key: 'sumToInvoice' | 'sumBeyond' | 'sumOwed' | 'sumOverdue', which: Which) => (
    <Filled text={season(key)} values={{ amount: amount(which), overdue: amount('overdue') }} />
  );
  return [
    ...(isSome(sum.toInvoice) ? [sentence('sumToInvoice', 'toInvoice')] : []),
    ...(isSome(sum.beyond) ? [sentence('sumBeyond', 'beyond')] : []),
    ...(isSome(sum.owed) ? [sentence(isSome(sum.overdue) ? 'sumOverdue' : 'sumOwed', 'owed')] : []),
  ];
}

function sayEarned({ earned, explained }: SummingProps): ReactNode[] {
  return earnedInAll(earnedWhys(earned, explained)).map((why) => (
    <Filled
      key={why.currency}
      text={season('sumEarned')}
      values={{ amount: <Amount said why={{ ...why, what: season('earnedTitle') }} /> }}
    />
  ));
}
