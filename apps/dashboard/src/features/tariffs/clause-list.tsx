// The clauses of a tariff that is being written, in their order, and the menu to add one.
import { type Kind, menu } from '@colla/rates';
import { useState } from 'react';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { Button, useStatus } from '../../ui/index.ts';
import { ClauseEditor } from './clause-editor.tsx';
import { ClauseMenu } from './clause-menu.tsx';
import {
  addClause,
  type ClauseDraft,
  changeClause,
  moveClause,
  removeClause,
  type TariffDraft,
} from './draft.ts';
import type { Reading } from './reading.ts';
import type { Reader } from './typed.ts';

interface ClauseListProps {
  draft: TariffDraft;
  reading: Reading;
  reader: Reader;
  onChange: (draft: TariffDraft) => void;
}

export function ClauseList({ draft, reading, reader, onChange }: ClauseListProps) {
  const [choosing, setChoosing] = useState(false);
  const [added, setAdded] = useState<number>();
  const status = useStatus();
  const add = (kind: Kind) => {
    const next = addClause(draft, kind, reader);
    setChoosing(false);
    setAdded(next.clauses.at(-1)?.key);
    status(say('added', { kind: menu[kind].title }));
    onChange(next);
  };
  const move = (clause: ClauseDraft, place: number, by: -1 | 1) => {
    onChange(moveClause(draft, clause.key, by));
    status(say('moved', { number: Math.min(Math.max(place + by, 0), draft.clauses.length - 1) + 1 }));
  };
  const remove = (clause: ClauseDraft) => {
    onChange(removeClause(draft, clause.key));
    status(say('removed', { name: clause.id }));
  };
  const filling = (clause: ClauseDraft) => ({
    reader,
    slips: reading.slips,
    others: draft.clauses.filter((other) => other !== clause).map(({ id }) => id),
  });
  return (
    <section className="part" aria-label={say('clauses')}>
      <h2>{say('clauses')}</h2>
      {draft.clauses.length === 0 && <p>{say('noClauses')}</p>}
      <ol className="tariff-clauses">
        {draft.clauses.map((clause, place) => (
          <ClauseEditor
            key={clause.key}
            clause={clause}
            place={place}
            sentence={reading.sentences.get(place)}
            filling={filling(clause)}
            open={clause.key === added}
            onChange={(to) => onChange(changeClause(draft, clause.key, to))}
            onMove={(by) => move(clause, place, by)}
            onRemove={() => remove(clause)}
          />
        ))}
      </ol>
      <div>
        <Button onPress={() => setChoosing(true)}>{say('addClause')}</Button>
      </div>
      {choosing && <ClauseMenu onChoose={add} onClose={() => setChoosing(false)} />}
    </section>
  );
}
