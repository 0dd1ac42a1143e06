// The clauses of a tariff that is being written, in their order, and the menu to add one.
import { type Kind, menu } from '@colla/rates';
import { useRef, useState } from 'react';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { Button, useStatus } from '../../ui/index.ts';
import { ClauseCard } from './clause-card.tsx';
import { ClauseMenu } from './clause-menu.tsx';
import {
  addClause,
  type ClauseDraft,
  changeClause,
  duplicateClause,
  moveClause,
  removeClause,
  type TariffDraft,
} from './draft.ts';
import { useNarrow } from './narrow.ts';
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
  const heading = useRef<HTMLHeadingElement>(null);
  const narrow = useNarrow();
  const status = useStatus();
  const { clauses } = draft;
  const take = (next: TariffDraft, said: string) => {
    const fresh = next.clauses.find(({ key }) => !clauses.some((clause) => clause.key === key));
    if (fresh) setAdded(fresh.key);
    status(said);
    onChange(next);
  };
  const add = (kind: Kind) => {
    setChoosing(false);
    take(addClause(draft, kind, reader), say('added', { kind: menu[kind].title }));
  };
  const move = (clause: ClauseDraft, place: number, by: -1 | 1) => {
    const number = Math.min(Math.max(place + by, 0), clauses.length - 1) + 1;
    take(moveClause(draft, clause.key, by), say('moved', { number }));
  };
  const remove = (clause: ClauseDraft) => {
    take(removeClause(draft, clause.key), say('removed', { name: clause.id }));
    heading.current?.focus();
  };
  const filling = (clause: ClauseDraft) => ({
    reader,
    slips: reading.slips,
    others: clauses.filter((other) => other !== clause).map(({ id }) => id),
    said: new Set<string>(),
  });
  return (
    <section className="part" aria-label={say('clauses')}>
      <h2 ref={heading} tabIndex={-1}>
        {say('clauses')}
      </h2>
      {clauses.length === 0 ? (
        <p>{say('noClauses')}</p>
      ) : (
        <p className="aside">{say(narrow ? 'clausesHintNarrow' : 'clausesHint')}</p>
      )}
      <ol className="tariff-clauses">
        {clauses.map((clause, place) => (
          <li key={clause.key}>
            <ClauseCard
              clause={clause}
              place={place}
              filling={filling(clause)}
              fresh={clause.key === added}
              narrow={narrow}
              onChange={(to) => onChange(changeClause(draft, clause.key, to))}
              handling={{
                onMove: (by) => move(clause, place, by),
                onDuplicate: () =>
                  take(duplicateClause(draft, clause.key), say('duplicated', { number: place + 1 })),
                onRemove: () => remove(clause),
              }}
            />
          </li>
        ))}
      </ol>
      <div>
        <Button onPress={() => setChoosing(true)}>{say('addClause')}</Button>
      </div>
      {choosing && <ClauseMenu onChoose={add} onClose={() => setChoosing(false)} />}
    </section>
  );
}
