// A tariff version is put to the payer; what it comes to is seen, line by line, before it is.
import type { EngagementWholeJson, OrganisationJson, TariffJson } from '@colla/wire';
import { useState } from 'react';
import { useAnswer } from '../../books.ts';
import { engagements as say } from '../../catalogue/engagements.ts';
import { ButtonLink, Choice, Dialog, Shown } from '../../ui/index.ts';
import type { ShowPriced } from './priced.ts';
import { QuoteForm } from './quote-form.tsx';

interface QuoteDialogProps {
  engagement: EngagementWholeJson;
  organisation: OrganisationJson;
  show: ShowPriced;
  onClose: () => void;
}

export function QuoteDialog(props: QuoteDialogProps) {
  const { engagement, onClose } = props;
  const { currency, title } = engagement;
  const tariffs = useAnswer('listTariffs', { query: { limit: 200 } });
  return (
    <Dialog title={say('quoteTitle', { title })} onClose={onClose}>
      <Shown answer={tariffs} what={say('fetchingTariffs')}>
        {({ items }) => {
          const fitting = items.filter((tariff) => tariff.currency === currency);
          return fitting.length === 0 ? (
            <div className="form">
              <p>{say('noTariff', { currency })}</p>
              <ButtonLink to="/tariffs/new" kind="primary">
                {say('toTariffs')}
              </ButtonLink>
            </div>
          ) : (
            <TariffChoice {...props} tariffs={fitting} />
          );
        }}
      </Shown>
    </Dialog>
  );
}

function TariffChoice(props: QuoteDialogProps & { tariffs: readonly TariffJson[] }) {
  const { tariffs, engagement } = props;
  const quoted = tariffs.find(({ name }) => name === engagement.quote?.tariff.name);
  const [id, setId] = useState(quoted?.id ?? tariffs[0]?.id ?? '');
  const tariff = useAnswer('getTariff', { params: { id } });
  return (
    <div className="form">
      <Choice
        label={say('tariff')}
        value={id}
        options={tariffs.map((tariff) => ({ value: tariff.id, label: tariff.name }))}
        onChoose={setId}
      />
      <Shown answer={tariff} what={say('fetchingTariffs')}>
        {(tariff) => <QuoteForm key={tariff.id} {...props} tariff={tariff} />}
      </Shown>
    </div>
  );
}
