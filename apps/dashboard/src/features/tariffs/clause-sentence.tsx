// A clause as its sentence, with its figures as fields in it.
import { type KeyboardEvent, type ReactNode, useEffect, useId, useMemo, useRef, useState } from 'react';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { BlankField } from './blank-field.tsx';
import { type Blank, type Piece, piecesOf } from './blanks.ts';
import { type ClauseDraft, typeAt, typedAt, writeClause } from './draft.ts';
import { ClausesField, SeveralField } from './parameter-field.tsx';
import { slipsAt } from './reading.ts';
import { turnTo } from './shown.ts';
import { daysOf, hasSides, onSide, sideTyped, withoutSide } from './side.ts';
import { type Filling, fieldsOf, type Reader, type Typed } from './typed.ts';

/** The pieces of a clause as it is being written, and which of them one is in. */
export interface Sentence {
  /** Undefined where it could not be read yet. */
  readonly pieces: readonly Piece[] | undefined;
  readonly enter: (at: string | undefined) => void;
  /** The blank whose words are shown below the sentence. */
  readonly opened: string | undefined;
  readonly open: (at: string | undefined) => void;
}

/**
 * The sentence while it is written. What is wrong, and a figure that is no longer said, leave the sentence as it last
 * could be read: the field one types in, and the words one ticks, stay where they are until one leaves them.
 */
export function useSentence(clause: ClauseDraft, reader: Reader): Sentence {
  const [entered, enter] = useState<string>();
  const [opened, open] = useState<string>();
  const fresh = useMemo(() => {
    const { written, slips } = writeClause(clause, '', reader);
    return slips.length > 0 ? undefined : piecesOf(written, reader);
  }, [clause, reader]);
  const [held, setHeld] = useState(fresh);
  const isGone = (of: string | undefined) => of !== undefined && !blanksOf(fresh).some(({ at }) => at === of);
  const stays = !fresh || isGone(entered) || isGone(opened);
  if (!stays && fresh !== held) setHeld(fresh);
  return { pieces: stays ? held : fresh, enter, opened, open };
}

export function blanksOf(pieces: readonly Piece[] = []): Blank[] {
  return pieces.filter((piece) => typeof piece !== 'string');
}

interface ClauseSentenceProps {
  clause: ClauseDraft;
  /** JSON pointer of the clause. */
  at: string;
  sentence: Sentence;
  filling: Filling;
  onChange: (to: Partial<ClauseDraft>) => void;
}

export function ClauseSentence({ clause, at, sentence, filling, onChange }: ClauseSentenceProps) {
  const { pieces = [], enter, opened, open: setOpened } = sentence;
  const id = useId();
  const whole = useRef<HTMLDivElement>(null);
  const [chosen, setChosen] = useState<string>();
  const blanks = blanksOf(pieces);
  const open = blanks.find((blank) => blank.at === opened);
  useEffect(() => {
    if (chosen === undefined) return;
    setChosen(undefined);
    if (document.activeElement === document.body) goTo(`${at}${chosen}`, whole.current);
  }, [chosen, at]);
  const type = (blank: Blank) => (typed: string) => {
    if (isChosen(blank)) setChosen(blank.at);
    onChange(typedIn(clause, blank, typed, filling.reader));
  };
  const wrong = blanks.find((blank) => slipsAt(filling.slips, at + blank.at));
  return (
    <div ref={whole} className="clause-sentence">
      <p>
        {pieces.map((piece, place) =>
          typeof piece === 'string' ? (
            <span key={`after ${blankBefore(pieces, place)}`}>{piece}</span>
          ) : (
            <BlankField
              key={piece.at}
              blank={piece}
              at={at + piece.at}
              typed={textOf(clause, piece)}
              wrong={slipsAt(filling.slips, at + piece.at) ? `${id}wrong` : undefined}
              open={piece === open}
              onFocus={() => enter(isChosen(piece) ? undefined : piece.at)}
              onBlur={() => enter(undefined)}
              onType={type(piece)}
              onOpen={() => setOpened(piece === open ? undefined : piece.at)}
            />
          ),
        )}
      </p>
      {wrong && (
        <p className="wrong" id={`${id}wrong`}>
          {slipsAt(filling.slips, at + wrong.at)}
        </p>
      )}
      {open && (
        <WordsBelow
          onClose={() => {
            setOpened(undefined);
            goTo(at + open.at, whole.current);
            // Its blank may go with it, where nothing is ticked any more.
            setChosen(open.at);
          }}
        >
          <WordsOf
            blank={open}
            at={at + open.at}
            value={typedAt(clause, open.leaf.path)}
            filling={filling}
            onChange={(words) => onChange(typeAt(clause, open.leaf.path, words))}
          />
        </WordsBelow>
      )}
    </div>
  );
}

function isChosen({ leaf: { shape } }: Blank): boolean {
  return shape.is === 'choice' || shape.is === 'variant';
}

/** What stands between two blanks is known by the first: so no field moves when another comes before it. */
function blankBefore(pieces: readonly Piece[], place: number): string {
  const before = pieces[place - 1];
  return typeof before === 'object' ? before.at : '';
}

/** What is typed for a blank; of a variant, the word of the one chosen. */
function textOf(clause: ClauseDraft, { leaf }: Blank): string {
  const { shape, path } = leaf;
  const days = daysOf(path);
  if (days) return sideTyped(String(typedAt(clause, days)));
  const typed = typedAt(clause, path);
  const text = shape.is === 'variant' ? fieldsOf(typed)[shape.by] : typed;
  if (typeof text !== 'string') return '';
  return hasSides(leaf) ? withoutSide(text) : text;
}

/** What of a clause is other when something else is typed into one of its blanks. */
function typedIn(clause: ClauseDraft, { leaf }: Blank, typed: string, reader: Reader): Partial<ClauseDraft> {
  const { shape, path } = leaf;
  const days = daysOf(path);
  if (days) return typeAt(clause, days, onSide(String(typedAt(clause, days)), typed));
  const was = typedAt(clause, path);
  if (shape.is === 'variant') return typeAt(clause, path, turnTo(shape, fieldsOf(was), typed, reader));
  return typeAt(clause, path, hasSides(leaf) ? onSide(typed, sideTyped(String(was))) : typed);
}

/** The field at a pointer, or the first that has come to stand within it. */
function goTo(at: string, inside: HTMLElement | null): void {
  const fields = [...(inside?.querySelectorAll<HTMLElement>('[data-at]') ?? [])];
  const field = fields.find(({ dataset }) => dataset.at === at || dataset.at?.startsWith(`${at}/`));
  (field ?? fields[0])?.focus();
}

/** The words of a blank, below the sentence: one is taken to them, and Escape leads back. */
function WordsBelow({ onClose, children }: { onClose: () => void; children: ReactNode }) {
  const words = useRef<HTMLDivElement>(null);
  useEffect(() => {
    words.current?.querySelector('input')?.focus();
  }, []);
  const close = (event: KeyboardEvent) => {
    if (event.key !== 'Escape') return;
    event.stopPropagation();
    onClose();
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: Escape leads back from the fields inside it
    <div ref={words} className="clause-words" onKeyDown={close}>
      {children}
      <button type="button" className="button quiet" onClick={onClose}>
        {say('wordsDone')}
      </button>
    </div>
  );
}

interface WordsOfProps {
  blank: Blank;
  at: string;
  value: Typed;
  filling: Filling;
  onChange: (words: readonly string[]) => void;
}

function WordsOf({ blank: { leaf }, at, value, filling, onChange }: WordsOfProps) {
  const field = { label: leaf.title, at, optional: false, wrong: undefined };
  return leaf.shape.is === 'several' ? (
    <SeveralField field={field} words={leaf.shape.words} value={value} onChange={onChange} />
  ) : (
    <ClausesField field={field} others={filling.others} value={value} onChange={onChange} />
  );
}
