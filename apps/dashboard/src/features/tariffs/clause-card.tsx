// One clause while it is written: its sentence to fill in, and what the sentence does not say folded below it.
import { menu } from '@colla/rates';
import { type KeyboardEvent, type ReactNode, useEffect, useMemo, useRef, useState } from 'react';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { useBelow, withoutBelow } from './below.ts';
import type { Piece } from './blanks.ts';
import { ClauseMore } from './clause-more.tsx';
import { blanksOf, ClauseSentence, type Sentence, useSentence } from './clause-sentence.tsx';
import { type ClauseDraft, writeClause } from './draft.ts';
import { leavesOf, pointerOf } from './leaves.ts';
import { slipsAt } from './reading.ts';
import type { Filling, Reader } from './typed.ts';

/** What can be done with a whole clause. */
export interface Handling {
  readonly onMove: (by: -1 | 1) => void;
  readonly onDuplicate: () => void;
  readonly onRemove: () => void;
}

export interface ClauseCardProps {
  clause: ClauseDraft;
  /** Its place, counted from zero. */
  place: number;
  filling: Filling;
  /** Has just been added: begins open, and in its first field. */
  fresh: boolean;
  /** On a narrow window a clause is its sentence, and opens to be written in. */
  narrow: boolean;
  onChange: (to: Partial<ClauseDraft>) => void;
  handling: Handling;
}

export function ClauseCard(props: ClauseCardProps) {
  const { clause, place, filling, fresh, handling, onChange } = props;
  const at = `/clauses/${place}`;
  const [more, setMore] = useState(false);
  const sentence = useSplit(clause, filling.reader, more);
  const said = new Set(blanksOf(sentence.pieces).map((blank) => at + blank.at));
  const wrong = slipsAt(filling.slips, at);
  const kind = menu[clause.kind];
  const number = place + 1;
  const card = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (fresh) card.current?.querySelector<HTMLElement>('[data-at]')?.focus();
  }, [fresh]);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a group of fields within a sentence, not a set of them
    <div
      ref={card}
      role="group"
      aria-label={say('clauseLabel', { number, kind: kind.title })}
      onKeyDown={(event) => moveBy(event, handling)}
    >
      <Folded {...props} at={at} says={sayOf(sentence.pieces)}>
        <p className="aside">{kind.title}</p>
        {sentence.pieces ? (
          <ClauseSentence clause={clause} at={at} sentence={sentence} filling={filling} onChange={onChange} />
        ) : (
          <p className="overdue">{slipsAt(filling.slips, at, { below: true }) ?? say('unread')}</p>
        )}
        {wrong && <p className="wrong">{wrong}</p>}
        <ClauseMore {...props} at={at} filling={{ ...filling, said }} onOpen={setMore} />
      </Folded>
    </div>
  );
}

/** The sentence with blanks for what is not asked below it. */
function useSplit(clause: ClauseDraft, reader: Reader, more: boolean): Sentence {
  const sentence = useSentence(clause, reader);
  const all = useMemo(() => {
    const { written } = writeClause(clause, '', reader);
    return leavesOf(written, clause.kind, reader).map(({ path }) => pointerOf(path));
  }, [clause, reader]);
  const said = new Set(blanksOf(sentence.pieces).map(({ at }) => at));
  const below = useBelow({ all, said, open: more });
  return { ...sentence, pieces: sentence.pieces && withoutBelow(sentence.pieces, below) };
}

/** Alt with an arrow moves the clause that one is in. */
function moveBy(event: KeyboardEvent, { onMove }: Handling): void {
  if (!event.altKey || (event.key !== 'ArrowUp' && event.key !== 'ArrowDown')) return;
  event.preventDefault();
  onMove(event.key === 'ArrowUp' ? -1 : 1);
}

function sayOf(pieces: readonly Piece[] = []): string {
  return pieces.map((piece) => (typeof piece === 'string' ? piece : piece.text)).join('');
}

/** Shut it says what is wrong beside its sentence; open, that is said within. */
function Folded(props: ClauseCardProps & { at: string; says: string; children: ReactNode }) {
  const { narrow, fresh, says, clause, filling, at, children } = props;
  const [open, setOpen] = useState(fresh);
  if (!narrow) return children;
  const wrong = slipsAt(filling.slips, at) ?? slipsAt(filling.slips, at, { below: true });
  return (
    <details className="clause-card" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <span className="aside">{menu[clause.kind].title}</span>
        <span>{says}</span>
        {wrong && !open && <span className="wrong">{wrong}</span>}
      </summary>
      {children}
    </details>
  );
}
