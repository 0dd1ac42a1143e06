// What the next invoice will ask for, line by line, each with its why.
import { type Currency, currency as currencyOf, toDecimal } from '@colla/money';
import { granted } from '@colla/refusal';
import type { EngagementWholeJson } from '@colla/wire';
import { engagements as say } from '../../catalogue/engagements.ts';
import { sayDay, sayFigure } from '../../locale.ts';
import { AmountLine, sayFact, summed, type Why } from '../../ui/index.ts';
import type { Asking } from './asking.ts';
import { callNames } from './names.ts';

interface AskingViewProps {
  asking: Asking;
  engagement: EngagementWholeJson;
}

export function AskingView({ asking, engagement }: AskingViewProps) {
  const parts = partsOf(asking, engagement);
  const code = granted(currencyOf(engagement.currency));
  const total = {
    what: say('total'),
    amount: toDecimal(asking.billable.total, code),
    currency: code,
  };
  const lines = [...parts.lines, ...parts.taxes];
  return (
    <div>
      <ul className="engagement-asked">
        {lines.map((why, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the lines of an invoice never change places
          <li key={at}>
            <AmountLine why={why} under={why.arithmetic} bare />
          </li>
        ))}
        <li className="whole">
          <AmountLine why={summed(total, [...parts.lines, ...parts.added])} />
        </li>
      </ul>
      <p className="aside">{say('willBeDue', { day: sayDay(asking.dueOn) })}</p>
    </div>
  );
}

/** The lines and the taxes as their whys; those taxes apart that are added to the lines. */
function partsOf({ billable }: Asking, engagement: EngagementWholeJson) {
  const currency = granted(currencyOf(engagement.currency));
  const sentenceOf = (clause: string | undefined) =>
    engagement.agreement?.sentences.find((said) => said.clause === clause)?.sentence;
  const names = callNames(engagement.calls);
  const lines = billable.lines.map(
    (line): Why => ({
      what: line.what,
      amount: toDecimal(line.amount, currency),
      currency,
      sentence: sentenceOf(line.clause),
      about: line.calls.flatMap((id) => names[id] ?? []),
      facts: line.facts.map(sayFact),
      arithmetic: line.arithmetic,
    }),
  );
  const taxWhy = (tax: Asking['billable']['taxes'][number]) => taxOf(tax, currency, sentenceOf(tax.clause));
  return {
    lines,
    taxes: billable.taxes.map(taxWhy),
    added: billable.taxes.filter(({ inside }) => !inside).map(taxWhy),
  };
}

function taxOf(
  { name, amount, base, arithmetic }: Asking['billable']['taxes'][number],
  currency: Currency,
  sentence: string | undefined,
): Why {
  return {
    what: say('tax', { name }),
    amount: toDecimal(amount, currency),
    currency,
    sentence,
    facts: [say('taxOn', { base: sayFigure(toDecimal(base, currency), currency) })],
    arithmetic,
  };
}
