// To whom an invoice goes, as it will stand on it.
import { useAnswer } from '../../books.ts';
import { engagements as say } from '../../catalogue/engagements.ts';
import { Button, Shown } from '../../ui/index.ts';

export function Addressed({ party, onChange }: { party: string; onChange: () => void }) {
  const answer = useAnswer('getParty', { params: { id: party } });
  return (
    <Shown answer={answer} what={say('fetchingParty')}>
      {({ name, address, reference }) => (
        <div>
          <address className="engagement-address">
            {[name, ...address, reference].filter(Boolean).map((line) => (
              <span key={line}>{line}</span>
            ))}
          </address>
          {address.length === 0 && <p className="aside">{say('noAddress')}</p>}
          <Button kind="quiet" onPress={onChange}>
            {say('changeAddress')}
          </Button>
        </div>
      )}
    </Shown>
  );
}
