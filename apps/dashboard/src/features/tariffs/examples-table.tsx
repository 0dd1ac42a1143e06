// Three examples priced at once; beside a new version, what each came to under the one before.
import { fromDecimal, toDecimal } from '@colla/money';
import type { Tariff } from '@colla/rates';
import { granted } from '@colla/refusal';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { Amount, type Column, Part, summed, Table, takenOff, type Why } from '../../ui/index.ts';
import { aboveBy } from './changes.ts';
import { type ExampleShape, type Examples, SHAPES } from './example.ts';
import { priceExample } from './example-priced.ts';
import { type ShowStatement, shownBy } from './example-shown.ts';
import type { Reader } from './typed.ts';

interface ExamplesTableProps {
  examples: Examples;
  before: Tariff | undefined;
  now: Tariff | undefined;
  reader: Reader & { readonly zone: string };
  show: ShowStatement;
}

interface Row {
  readonly shape: ExampleShape;
  readonly before: Why | undefined;
  readonly now: Why | undefined;
}

export function ExamplesTable({ examples, before, now, reader, show }: ExamplesTableProps) {
  const { currency, locale } = reader;
  /** A total opens to its whole statement. */
  const totalOf = (tariff: Tariff | undefined, shape: ExampleShape): Why | undefined => {
    const example = examples[shape];
    const statement = tariff && priceExample(example, tariff, reader).statement;
    if (!tariff || !statement) return undefined;
    const what = say('exampleUnderVersion', {
      shape: say(`shape_${shape}`),
      tariff: tariff.name,
      version: tariff.version,
    });
    const later = () => show(shownBy(statement, { tariff, example, locale }));
    return { what, amount: toDecimal(statement.total, currency), currency, later };
  };
  const rows = SHAPES.map((shape) => ({ shape, before: totalOf(before, shape), now: totalOf(now, shape) }));
  const figure = (why: Why | undefined) => (why ? <Amount why={why} bare /> : say('notPriced'));
  const columns: Column<Row>[] = [
    { key: 'shape', head: say('examplesShape'), cell: ({ shape }) => say(`shape_${shape}`) },
    ...(before
      ? [
          {
            key: 'before',
            head: say('examplesBefore', { version: before.version }),
            figure: true,
            cell: (row: Row) => figure(row.before),
          },
        ]
      : []),
    {
      key: 'now',
      head: say(before ? 'examplesNow' : 'examplesTotal'),
      figure: true,
      cell: (row) => figure(row.now),
    },
    ...(before ? [{ key: 'difference', head: say('difference'), figure: true, cell: difference }] : []),
  ];
  return (
    <Part title={say('examples')}>
      <Table
        caption={say('examples')}
        captionUnseen
        columns={columns}
        rows={rows}
        rowKey={({ shape }) => shape}
      />
    </Part>
  );

  function difference({ shape, before, now }: Row) {
    if (!before || !now) return say('notPriced');
    const between = {
      what: say('differenceOf', { shape: say(`shape_${shape}`) }),
      amount: aboveBy(readAmount(now), readAmount(before), currency),
      currency,
    };
    return <Amount why={summed(between, [now, takenOff(before)])} bare />;
  }

  function readAmount({ amount }: Why): bigint {
    return granted(fromDecimal(amount, currency));
  }
}
