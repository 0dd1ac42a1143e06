// The payer says yes: what is frozen by it is said before it is.
import { Temporal } from '@colla/calendar';
import type { EngagementWholeJson, OrganisationJson, StatementAnswerJson } from '@colla/wire';
import { useRef, useState } from 'react';
import { useSend } from '../../books.ts';
import { engagements as say } from '../../catalogue/engagements.ts';
import {
  Amount,
  Button,
  DayField,
  Dialog,
  Filled,
  Form,
  TextField,
  TimeField,
  useStatus,
  WhyView,
} from '../../ui/index.ts';
import { useWhole } from './explaining.tsx';
import { payerNames } from './names.ts';
import { pricedBy } from './priced.ts';
import { clock } from './spans.ts';

interface AgreeDialogProps {
  engagement: EngagementWholeJson;
  organisation: OrganisationJson;
  answer: StatementAnswerJson | undefined;
  onClose: () => void;
}

export function AgreeDialog({ engagement, organisation, answer, onClose }: AgreeDialogProps) {
  const { id, title, quote } = engagement;
  const { send, busy, problem } = useSend('agreeEngagement');
  const [acceptedBy, setAcceptedBy] = useState(Object.values(payerNames(engagement))[0] ?? '');
  const [now] = useState(() => momentNow(organisation.zone));
  const [said, setSaid] = useState(now);
  const gone = useRef(false);
  const status = useStatus();
  const agree = async () => {
    // Left as it is, it is the moment in which this is sent.
    const body = said === now ? { acceptedBy } : { acceptedBy, said: { ...said, zone: organisation.zone } };
    if (!(await send({ params: { id }, body }))) return;
    status(say('nowEngaged', { title }));
    gone.current = true;
    onClose();
  };
  const foot = (
    <>
      <Button type="submit" kind="primary" busy={busy}>
        {say('agreeIt')}
      </Button>
      <Button onPress={onClose}>{say('giveUp')}</Button>
    </>
  );
  return (
    <Dialog title={say('agreeTitle', { title })} onClose={onClose} gone={gone}>
      <Form problem={problem} onSubmit={agree} foot={foot}>
        {answer && (
          <p>
            <Filled
              text={say('agreeTotal')}
              values={{
                total: <Total engagement={engagement} answer={answer} organisation={organisation} />,
              }}
            />
          </p>
        )}
        <p>{say('agreeWhy', { count: quote?.sentences.length ?? 0 })}</p>
        <TextField label={say('acceptedBy')} at="/acceptedBy" value={acceptedBy} onType={setAcceptedBy} />
        <div className="fields">
          <DayField
            label={say('saidOn')}
            at="/said/on"
            value={said.on}
            onType={(on) => setSaid({ ...said, on })}
          />
          <TimeField
            label={say('saidAt')}
            at="/said/at"
            value={said.at}
            onType={(at) => setSaid({ ...said, at })}
          />
        </div>
        <p className="aside">{say('saidWhy')}</p>
      </Form>
    </Dialog>
  );
}

function momentNow(zone: string): { on: string; at: string } {
  const now = Temporal.Now.zonedDateTimeISO(zone);
  return { on: now.toPlainDate().toString(), at: clock(now) };
}

interface TotalProps extends Pick<AgreeDialogProps, 'engagement' | 'organisation'> {
  answer: StatementAnswerJson;
}

function Total({ engagement, organisation, answer }: TotalProps) {
  const whole = useWhole();
  const { total: amount, currency } = answer.statement;
  const what = say('agreeTotalOf');
  const later = () => <WhyView why={{ ...whole(pricedBy(answer, engagement, organisation)), what }} />;
  return <Amount why={{ what, amount, currency, later }} said />;
}
