// All rates raised by a share: every amount is seen before and after, and taken into a new version to be looked through.
import { currency as currencyOf } from '@colla/money';
import { readTariff, sentencesOf, type WrittenTariff } from '@colla/rates';
import { granted, refused } from '@colla/refusal';
import { useState } from 'react';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { spokenLocale } from '../../locale.ts';
import { Button, type Column, Dialog, Figure, Form, NumberField, Options, Table } from '../../ui/index.ts';
import { readFigure } from './figure.ts';
import { type Raised, ROUNDINGS, type Rounding, raiseRates } from './raise.ts';

interface RaiseDialogProps {
  written: WrittenTariff;
  onTake: (written: WrittenTariff) => void;
  onClose: () => void;
}

export function RaiseDialog({ written, onTake, onClose }: RaiseDialogProps) {
  const [typed, setTyped] = useState('3');
  const [round, setRound] = useState<Rounding>('whole');
  const share = readFigure(typed, { unit: 'share', least: -9000, most: 90_000 }, say('raiseBy'));
  const reader = { currency: granted(currencyOf(written.currency)), locale: spokenLocale() };
  const by = { share: refused(share) ? 0 : share, round };
  const { written: next, raised } = raiseRates(written, by, reader);
  const foot = (
    <>
      <Button type="submit" kind="primary">
        {say('raiseTake')}
      </Button>
      <Button onPress={onClose}>{say('giveUp')}</Button>
    </>
  );
  return (
    <Dialog title={say('raiseTitle', { name: written.name })} onClose={onClose}>
      <Form onSubmit={() => !refused(share) && onTake(next)} foot={foot}>
        <NumberField
          label={say('raiseBy')}
          hint={say('raiseByHint')}
          unit="%"
          wrong={refused(share) ? share.sentence : undefined}
          value={typed}
          onType={setTyped}
        />
        <Options
          label={say('raiseRound')}
          hint={say('raiseRoundHint')}
          value={round}
          options={ROUNDINGS.map((value) => ({ value, label: say(`round_${value}`) }))}
          onChoose={setRound}
        />
        {raised.length === 0 ? <p>{say('raiseNone')}</p> : <RaisedTable raised={raised} written={written} />}
      </Form>
    </Dialog>
  );
}

function RaisedTable({ raised, written }: { raised: readonly Raised[]; written: WrittenTariff }) {
  const { currency } = written;
  const sentences = new Map(
    sentencesOf(granted(readTariff(written)), spokenLocale()).map(({ clause, sentence }) => [
      clause,
      sentence,
    ]),
  );
  const isFirst = (row: Raised) => raised.find(({ clause }) => clause === row.clause) === row;
  const columns: Column<Raised>[] = [
    {
      key: 'clause',
      head: say('compareClause'),
      cell: (row) => (
        <div className="tariff-raised">
          {isFirst(row) && <p>{sentences.get(row.clause)}</p>}
          <p className="aside">{row.title}</p>
        </div>
      ),
    },
    {
      key: 'was',
      head: say('raiseBefore'),
      figure: true,
      cell: ({ was }) => <Figure amount={was} currency={currency} bare />,
    },
    {
      key: 'is',
      head: say('raiseAfter'),
      figure: true,
      cell: ({ is }) => <Figure amount={is} currency={currency} bare />,
    },
  ];
  return (
    <Table
      caption={say('raise')}
      captionUnseen
      columns={columns}
      rows={raised}
      rowKey={({ pointer }) => pointer}
    />
  );
}
