// What a statement says beyond its lines: deposit, when it is due, calls that fell, music that came late, what is owed
// to others, what cancelling would leave.
import { statements as say } from '../../catalogue/statements.ts';
import { sayDay } from '../../locale.ts';
import { AmountLine } from '../../ui/index.ts';
import { namedCalls, type Reckoned, sentenceFor } from './reckoning.ts';
import { cancelledWhy, depositWhy, lineWhy } from './whys.ts';

export function TermsView({ of }: { of: Reckoned }) {
  const { deposit, payment, fallen, late, toOthers, ifCancelled } = of.statement;
  const due = of.depositDue !== undefined && !of.over && say('depositDue', { day: sayDay(of.depositDue) });
  return (
    <>
      {toOthers.length > 0 && <ToOthers of={of} />}
      {deposit && <AmountLine why={depositWhy(deposit, of)} under={due} />}
      {payment && (
        <div className="statement-term">
          <h3>{say('payment')}</h3>
          <p>{sentenceFor(payment.clause, of)}</p>
        </div>
      )}
      {fallen.length > 0 && <FallenCalls of={of} />}
      {late.length > 0 && <LateMusic of={of} />}
      {ifCancelled && <AmountLine why={cancelledWhy(ifCancelled, of)} />}
    </>
  );
}

/** In none of the sums above: the payer owes it to somebody else. */
function ToOthers({ of }: { of: Reckoned }) {
  return (
    <div className="statement-term">
      <h3>{say('toOthers')}</h3>
      <ul className="statement-lines">
        {of.statement.toOthers.map((line) => (
          <li key={line.key}>
            <AmountLine why={lineWhy(line, of)} under={say('toPayee', { payee: line.payee })} />
          </li>
        ))}
      </ul>
    </div>
  );
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

function LateMusic({ of }: { of: Reckoned }) {
  return (
    <div className="statement-term">
      <h3>{say('late')}</h3>
      <ul>
        {of.statement.late.map(({ clause, work, dueOn, daysLate, means }) => (
          <li key={`${clause} ${work}`}>
            {say('latePart', { work, day: sayDay(dueOn), count: daysLate })} {lateWords(means)}
          </li>
        ))}
      </ul>
    </div>
  );
}

const MEANS = {
  'a charge': 'late_charge',
  'the pianist may decline': 'late_decline',
  'hours are lost': 'late_lost',
} as const;

function lateWords(means: string): string {
  return Object.hasOwn(MEANS, means) ? say(MEANS[means as keyof typeof MEANS]) : means;
}
