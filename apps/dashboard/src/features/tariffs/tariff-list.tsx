// Every tariff by its name, with the version that is newest.
import type { TariffJson } from '@colla/wire';
import { Link } from 'wouter';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { sayDay, sayNumber } from '../../locale.ts';
import { ButtonLink, type Column, Empty, Table } from '../../ui/index.ts';
import { ExampleMenu } from './example-menu.tsx';

const columns: readonly Column<TariffJson>[] = [
  { key: 'name', head: say('name'), cell: ({ id, name }) => <Link href={`/tariffs/${id}`}>{name}</Link> },
  { key: 'currency', head: say('currency'), cell: ({ currency }) => currency },
  {
    key: 'version',
    head: say('version'),
    cell: ({ latest }) => say('since', { version: latest.version, day: sayDay(latest.from) }),
  },
  {
    key: 'clauses',
    head: say('clauses'),
    figure: true,
    cell: ({ latest }) => sayNumber(latest.sentences.length),
  },
];

export function TariffList({ tariffs }: { tariffs: readonly TariffJson[] }) {
  if (tariffs.length === 0) {
    return (
      <Empty title={say('none')}>
        <p>{say('noneWhy')}</p>
        <ButtonLink to="/tariffs/new" kind="primary">
          {say('add')}
        </ButtonLink>
        <h3>{say('startFromExample')}</h3>
        <ExampleMenu />
      </Empty>
    );
  }
  return (
    <Table caption={say('title')} captionUnseen columns={columns} rows={tariffs} rowKey={({ id }) => id} />
  );
}
