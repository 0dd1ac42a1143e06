// Three examples priced at once; beside a new version, what each came to under the one before.
import { toDecimal } from '@colla/money';
import type { Tariff } from '@colla/rates';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { type Column, Figure, Part, Table } from '../../ui/index.ts';
import { aboveBy } from './changes.ts';
import { type ExampleShape, type Examples, SHAPES } from './example.ts';
import { priceExample } from './example-priced.ts';
import type { Reader } from './typed.ts';

interface ExamplesTableProps {
  examples: Examples;
  before: Tariff | undefined;
  now: Tariff | undefined;
  reader: Reader & { readonly zone: string };
}

interface Row {
  readonly shape: ExampleShape;
  readonly before: bigint | undefined;
  readonly now: bigint | undefined;
}

export function ExamplesTable({ examples, before, now, reader }: ExamplesTableProps) {
  const total = (tariff: Tariff | undefined, shape: ExampleShape) =>
    tariff && priceExample(examples[shape], tariff, reader).statement?.total;
  const rows = SHAPES.map((shape) => ({ shape, before: total(before, shape), now: total(now, shape) }));
  const figure = (amount: bigint | undefined) =>
    amount === undefined ? (
      say('notPriced')
    ) : (
      <Figure amount={toDecimal(amount, reader.currency)} currency={reader.currency} bare />
    );
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

  function difference({ before, now }: Row) {
    if (before === undefined || now === undefined) return say('notPriced');
    return <Figure amount={aboveBy(now, before, reader.currency)} currency={reader.currency} bare />;
  }
}
