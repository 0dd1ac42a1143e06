// Names a span of days.
import { useState } from 'react';
import { useLocation } from 'wouter';
import { useSend } from '../../books.ts';
import { season } from '../../catalogue/season.ts';
import { Button, DayField, Form, TextField, useStatus } from '../../ui/index.ts';

export function NameSeason({ onNamed }: { onNamed: () => void }) {
  const [name, setName] = useState('');
  const [from, setFrom] = useState('');
  const [to, setTo] = useState('');
  const naming = useSend('addSeason');
  const say = useStatus();
  const [, go] = useLocation();
  const submit = async () => {
    const named = await naming.send({ body: { name, from, to } });
    if (!named) return;
    say(season('named', { name: named.name }));
    onNamed();
    go(`/seasons/${named.id}`);
  };
  return (
    <Form
      problem={naming.problem}
      onSubmit={submit}
      foot={
        <Button type="submit" kind="primary" busy={naming.busy}>
          {season('nameIt')}
        </Button>
      }
    >
      <TextField
        label={season('seasonName')}
        hint={season('seasonNameHint')}
        at="/name"
        value={name}
        onType={setName}
      />
      <div className="fields">
        <DayField label={season('from')} at="/from" value={from} onType={setFrom} />
        <DayField label={season('to')} at="/to" value={to} onType={setTo} />
      </div>
    </Form>
  );
}
