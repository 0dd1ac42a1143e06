// How somebody is addressed on an invoice: name, address, e-mail, and the number an institution needs to see.
import type { PartyJson } from '@colla/wire';
import { useState } from 'react';
import { useAnswer, useSend } from '../../books.ts';
import { engagements as say } from '../../catalogue/engagements.ts';
import { Button, Dialog, Form, LinesField, Shown, TextField, useStatus } from '../../ui/index.ts';

export function PartyDialog({ id, onClose }: { id: string; onClose: () => void }) {
  const answer = useAnswer('getParty', { params: { id } });
  return (
    <Dialog title={say('partyTitle')} onClose={onClose}>
      <Shown answer={answer} what={say('fetchingParty')}>
        {(party) => <PartyForm party={party} onClose={onClose} />}
      </Shown>
    </Dialog>
  );
}

function PartyForm({ party, onClose }: { party: PartyJson; onClose: () => void }) {
  const { send, busy, problem } = useSend('changeParty');
  const [draft, setDraft] = useState(() => ({
    name: party.name,
    address: party.address.join('\n'),
    email: party.email ?? '',
    reference: party.reference ?? '',
  }));
  const status = useStatus();
  const keep = async () => {
    const address = draft.address.split('\n').filter((line) => line.trim() !== '');
    if (!(await send({ params: { id: party.id }, body: { ...draft, address } }))) return;
    status(say('changed'));
    onClose();
  };
  const foot = (
    <>
      <Button type="submit" kind="primary" busy={busy}>
        {say('save')}
      </Button>
      <Button onPress={onClose}>{say('giveUp')}</Button>
    </>
  );
  return (
    <Form problem={problem} onSubmit={keep} foot={foot}>
      <TextField
        label={say('partyName')}
        at="/name"
        value={draft.name}
        onType={(name) => setDraft({ ...draft, name })}
      />
      <LinesField
        label={say('address')}
        hint={say('addressHint')}
        optional
        at="/address"
        value={draft.address}
        onType={(address) => setDraft({ ...draft, address })}
      />
      <TextField
        label={say('email')}
        optional
        type="email"
        at="/email"
        value={draft.email}
        onType={(email) => setDraft({ ...draft, email })}
      />
      <TextField
        label={say('partyReference')}
        hint={say('partyReferenceHint')}
        optional
        at="/reference"
        value={draft.reference}
        onType={(reference) => setDraft({ ...draft, reference })}
      />
    </Form>
  );
}
