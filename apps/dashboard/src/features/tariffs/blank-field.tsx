// One blank in a sentence: at rest it reads as the sentence does, and holds what is typed while one is in it.
import { type KeyboardEvent, type ReactNode, useLayoutEffect, useRef, useState } from 'react';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import type { Blank } from './blanks.ts';
import type { LeafShape } from './leaves.ts';

interface BlankFieldProps {
  blank: Blank;
  /** JSON pointer in the tariff. */
  at: string;
  /** What is typed, as it stands in the draft. */
  typed: string;
  /** The id of the sentence that says what is wrong with it, where something is. */
  wrong: string | undefined;
  /** Whether the words that it chooses among are shown below the sentence. */
  open: boolean;
  onFocus: () => void;
  onBlur: () => void;
  onType: (typed: string) => void;
  onOpen: () => void;
}

export function BlankField(props: BlankFieldProps) {
  const { is } = props.blank.leaf.shape;
  if (is === 'choice' || is === 'variant') return <BlankChoice {...props} />;
  if (is === 'several' || is === 'clauses') return <BlankWords {...props} />;
  return <BlankText {...props} />;
}

/** A figure or words: typed as in any field, read as in the sentence. */
function BlankText({ blank, typed, onFocus, onBlur, onType, ...wired }: BlankFieldProps) {
  const input = useRef<HTMLInputElement>(null);
  const [inIt, setInIt] = useState(false);
  const entered = useRef(false);
  const { shape } = blank.leaf;
  const isWrong = wired.wrong !== undefined;
  const shown = inIt || isWrong ? typed : blank.text;
  useLayoutEffect(() => {
    if (inIt) input.current?.select();
  }, [inIt]);
  return (
    <span className={isWrong ? 'blank missed' : 'blank'}>
      <Sized text={shown}>
        <input
          {...wiringOf(blank, wired)}
          ref={input}
          value={shown}
          inputMode={shape.is === 'amount' || shape.is === 'figure' ? 'decimal' : 'text'}
          autoComplete="off"
          onFocus={() => {
            entered.current = true;
            setInIt(true);
            onFocus();
          }}
          // The press that enters it would put the mark between its letters: it is all to be typed over.
          onClick={() => {
            if (entered.current) input.current?.select();
            entered.current = false;
          }}
          onBlur={() => {
            setInIt(false);
            onBlur();
          }}
          onKeyDown={staysIn}
          onChange={(event) => onType(event.target.value)}
        />
      </Sized>
      {(inIt || isWrong) && !blank.plain && <span aria-hidden="true">{unitOf(shape)}</span>}
    </span>
  );
}

function BlankChoice({ blank, typed, onFocus, onBlur, onType, ...wired }: BlankFieldProps) {
  const shown = blank.words.find(({ word }) => word === typed)?.says ?? blank.text;
  return (
    <span className="blank">
      <Sized text={shown}>
        <select
          {...wiringOf(blank, wired)}
          value={typed}
          onFocus={onFocus}
          onBlur={onBlur}
          onChange={(event) => onType(event.target.value)}
        >
          {blank.words.map(({ word, says }) => (
            <option key={word} value={word}>
              {says}
            </option>
          ))}
        </select>
      </Sized>
    </span>
  );
}

/** Some of many words: pressed, it shows them below the sentence. */
function BlankWords({ blank, at, wrong, open, onOpen }: BlankFieldProps) {
  return (
    <button
      type="button"
      className="blank-words"
      data-at={at}
      aria-describedby={wrong}
      aria-expanded={open}
      aria-label={say('blankWords', { title: blank.leaf.title, words: blank.text })}
      onClick={onOpen}
    >
      {blank.text}
    </button>
  );
}

/** As wide as its text: an unseen copy takes the room. */
function Sized({ text, children }: { text: string; children: ReactNode }) {
  return (
    <span className="blank-room">
      <span aria-hidden="true">{text || ' '}</span>
      {children}
    </span>
  );
}

function wiringOf({ leaf }: Blank, { at, wrong }: Pick<BlankFieldProps, 'at' | 'wrong'>) {
  return {
    'aria-label': leaf.title,
    'aria-invalid': wrong === undefined ? undefined : true,
    'aria-describedby': wrong,
    'data-at': at,
  };
}

/** Enter ends a line of a form, not a figure in a sentence: one does not keep a tariff by it. */
function staysIn(event: KeyboardEvent): void {
  if (event.key === 'Enter') event.preventDefault();
}

/** The unit of what is typed, where the sentence does not say it beside it. */
function unitOf(shape: LeafShape): string {
  return shape.is === 'figure' ? say(`unit_${shape.unit}`) : '';
}
