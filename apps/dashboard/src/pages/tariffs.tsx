// Which tariffs there are.
import { useAnswer } from '../books.ts';
import { tariffs as say } from '../catalogue/tariffs.ts';
import { TariffList } from '../features/tariffs/tariff-list.tsx';
import { ButtonLink, Page, Shown } from '../ui/index.ts';

export function Screen() {
  const answer = useAnswer('listTariffs', { query: { limit: 200 } });
  const some = answer.is === 'here' && answer.value.items.length > 0;
  return (
    <Page
      title={say('title')}
      under={say('under')}
      actions={
        some && (
          <>
            <ButtonLink to="/tariffs/new" kind="primary">
              {say('add')}
            </ButtonLink>
            <ButtonLink to="/tariffs/compare">{say('compareTwo')}</ButtonLink>
          </>
        )
      }
    >
      <Shown answer={answer} what={say('fetching')}>
        {({ items }) => <TariffList tariffs={items} />}
      </Shown>
    </Page>
  );
}
