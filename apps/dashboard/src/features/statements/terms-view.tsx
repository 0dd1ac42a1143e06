// What a statement says beyond its lines: deposit, when it is due, calls that fell, what cancelling would leave.
import type { StatementJson } from '@colla/wire';
import { statements as say } from '../../catalogue/statements.ts';
import { sayDay } from '../../locale.ts';
import { Figure, Opens } from '../../ui/index.ts';
import { LineView } from './line-view.tsx';
import { namedCalls, type Reckoned, sentenceFor } from './reckoning.ts';
import { Why } from './why.tsx';

export function TermsView({ of }: { of: Reckoned }) {
  const { deposit, payment, fallen, ifCancelled } = of.statement;
  return (
    <>
      {deposit && <Deposit deposit={deposit} of={of} />}
      {payment && (
        <div className="statement-term">
          <h3>{say('payment')}</h3>
          <p>
            {sentenceFor(payment.clause, of)} {payment.gate && say('gate')}
          </p>
        </div>
      )}
      {fallen.length > 0 && <FallenCalls of={of} />}
      {ifCancelled && <IfCancelled ifCancelled={ifCancelled} of={of} />}
    </>
  );
}

function Deposit({ deposit, of }: { deposit: NonNullable<StatementJson['deposit']>; of: Reckoned }) {
  const due = of.depositDue !== undefined && !of.over && say('depositDue', { day: sayDay(of.depositDue) });
  const summary = (
    <>
      <span>
        {say(of.over ? 'depositWas' : 'deposit')}
        {due && <span className="aside when">{due}</span>}
      </span>
      <Figure amount={deposit.amount} currency={of.statement.currency} />
    </>
  );
  return (
    <Opens summary={summary}>
      <Why
        sentence={sentenceFor(deposit.clause, of)}
        rows={[
          [say('depositOf'), isShare(deposit.arithmetic) ? say('depositBase') : ''],
          [say('arithmetic'), deposit.arithmetic],
        ]}
      />
    </Opens>
  );
}

/** A share is worked out from a base; a sum that the clause names has none. */
function isShare(arithmetic: string): boolean {
  return arithmetic.includes(' × ');
}

function FallenCalls({ of }: { of: Reckoned }) {
  return (
    <div className="statement-term">
      <h3>{say('fallen')}</h3>
      <ul>
        {of.statement.fallen.map(({ call, why, owes }) => (
          <li key={call}>
            {namedCalls([call], of).join('')}: {why}. {say('owes', { owes: owedWords(owes) })}.
          </li>
        ))}
      </ul>
    </div>
  );
}

const OWED = {
  all: 'owesAll',
  nothing: 'owesNothing',
  share: 'owesShare',
  amount: 'owesAmount',
  deposit: 'owesDeposit',
} as const;

function owedWords(owes: string): string {
  return Object.hasOwn(OWED, owes) ? say(OWED[owes as keyof typeof OWED]) : owes;
}

type WhatIf = NonNullable<StatementJson['ifCancelled']>;

function IfCancelled({ ifCancelled, of }: { ifCancelled: WhatIf; of: Reckoned }) {
  const summary = (
    <>
      <span>{say('ifCancelled')}</span>
      <Figure amount={ifCancelled.total} currency={of.statement.currency} />
    </>
  );
  return (
    <Opens summary={summary}>
      <ul className="statement-lines">
        {ifCancelled.lines.map((line) => (
          <LineView key={line.key} line={line} of={of} />
        ))}
      </ul>
    </Opens>
  );
}
