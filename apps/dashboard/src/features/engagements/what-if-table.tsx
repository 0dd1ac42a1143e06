// The answers to “what if?”, each with what it comes to and what lies between that and all going as agreed.
import { toDecimal } from '@colla/money';
import { headWord } from '../../catalogue/engagements.ts';
import { whatIf as say } from '../../catalogue/what-if.ts';
import { Amount, type Column, Table, type Why, WhyView } from '../../ui/index.ts';
import type { Case } from './what-if.ts';
import { caseWhy, differenceWhy, sayCase, type WholeWhy } from './what-if-whys.ts';

interface WhatIfTableProps {
  cases: readonly Case[];
  whole: WholeWhy;
  /** The clauses' sentences as they were agreed. */
  sentences: readonly { readonly clause: string; readonly sentence: string }[];
}

export function WhatIfTable({ cases, whole, sentences }: WhatIfTableProps) {
  const [stands] = cases;
  if (!stands) return null;
  const sentenceOf = (clause: string) => sentences.find((said) => said.clause === clause)?.sentence;
  const whyOf = (of: Case) => caseWhy(of, whole, sentenceOf);
  const columns: Column<Case>[] = [
    { key: 'what', head: say('what'), cell: (of) => <CaseName of={of} /> },
    {
      key: 'total',
      head: say('total'),
      figure: true,
      cell: (of) => <Worked what={sayCase(of)} of={of} amount={of.total} why={() => whyOf(of)} />,
    },
    {
      key: 'difference',
      head: say('difference'),
      figure: true,
      cell: (of) =>
        of !== stands && (
          <Worked
            what={say('differenceOf', { what: sayCase(of) })}
            of={of}
            amount={of.total - stands.total}
            why={() => differenceWhy(of, stands, whyOf)}
          />
        ),
    },
  ];
  return (
    <Table caption={say('title')} captionUnseen columns={columns} rows={cases} rowKey={({ name }) => name} />
  );
}

interface WorkedProps {
  what: string;
  of: Case;
  amount: bigint;
  why: () => Why;
}

/** Its why is worked out once it is opened. */
function Worked({ what, of, amount, why }: WorkedProps) {
  const { currency } = of.statement;
  const later = () => <WhyView why={why()} />;
  return <Amount why={{ what, amount: toDecimal(amount, currency), currency, later }} bare />;
}

function CaseName({ of }: { of: Case }) {
  return (
    <span className="what-if-case">
      <span>{sayCase(of)}</span>
      {of.why.length > 0 && <span className="aside">{of.why.map(headWord).join('; ')}</span>}
    </span>
  );
}
