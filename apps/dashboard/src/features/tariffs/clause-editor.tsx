// One clause while it is written: its sentence, and below it the fields that the sentence is made of.
import { menu } from '@colla/rates';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { Button, Buttons, Opens, TextField } from '../../ui/index.ts';
import { type ClauseDraft, selectorParameters, termsParameters } from './draft.ts';
import { GroupFields } from './parameter-field.tsx';
import { slipsAt } from './reading.ts';
import type { Filling } from './typed.ts';

interface ClauseEditorProps {
  clause: ClauseDraft;
  /** Its place, counted from zero. */
  place: number;
  sentence: string | undefined;
  filling: Filling;
  open: boolean;
  onChange: (to: Partial<ClauseDraft>) => void;
  onMove: (by: -1 | 1) => void;
  onRemove: () => void;
}

export function ClauseEditor(props: ClauseEditorProps) {
  const { clause, place, sentence, filling, open, onChange } = props;
  const at = `/clauses/${place}`;
  const kind = menu[clause.kind];
  const wrong = slipsAt(filling.slips, at);
  const said = sentence ?? slipsAt(filling.slips, at, { below: true }) ?? say('unread');
  return (
    <li>
      <Opens open={open} summary={<span className={sentence ? undefined : 'overdue'}>{said}</span>}>
        <div className="form">
          <p className="aside">
            {kind.title}. {kind.help}
          </p>
          {wrong && sentence && <p className="overdue">{wrong}</p>}
          <GroupFields
            parts={termsParameters(clause.kind, filling.reader)}
            fields={clause.terms}
            at={`${at}/terms`}
            filling={filling}
            onChange={(terms) => onChange({ terms })}
          />
          <AppliesTo {...props} at={at} />
          <ClauseButtons {...props} />
        </div>
      </Opens>
    </li>
  );
}

/** Which calls it is for, who pays it, and its short name: often left as they are, so they are folded. */
function AppliesTo({ clause, filling, onChange, at }: ClauseEditorProps & { at: string }) {
  const wrong = (field: string) => slipsAt(filling.slips, `${at}/${field}`);
  const hasSelector = Object.values(clause.selector).some(
    (words) => Array.isArray(words) && words.length > 0,
  );
  return (
    <>
      <Opens open={hasSelector} summary={<span>{say('appliesTo')}</span>}>
        <div className="form">
          <p className="aside">{say('appliesHint')}</p>
          <GroupFields
            parts={selectorParameters}
            fields={clause.selector}
            at={`${at}/for`}
            filling={filling}
            onChange={(selector) => onChange({ selector })}
          />
        </div>
      </Opens>
      <div className="fields">
        <TextField
          label={say('payerField')}
          hint={say('payerHint')}
          optional
          at={`${at}/payer`}
          wrong={wrong('payer')}
          value={clause.payer}
          onType={(payer) => onChange({ payer })}
        />
        <TextField
          label={say('shortName')}
          hint={say('shortNameHint')}
          at={`${at}/id`}
          wrong={wrong('id')}
          value={clause.id}
          onType={(id) => onChange({ id })}
        />
      </div>
    </>
  );
}

function ClauseButtons({ place, onMove, onRemove }: ClauseEditorProps) {
  const number = place + 1;
  return (
    <Buttons>
      <Button kind="quiet" label={say('upLabel', { number })} onPress={() => onMove(-1)}>
        {say('up')}
      </Button>
      <Button kind="quiet" label={say('downLabel', { number })} onPress={() => onMove(1)}>
        {say('down')}
      </Button>
      <Button kind="quiet" label={say('removeLabel', { number })} onPress={onRemove}>
        {say('remove')}
      </Button>
    </Buttons>
  );
}
