// What a clause's sentence does not say: further parameters, which calls it is for, who pays, its name, its place.
import { menu } from '@colla/rates';
import { useLayoutEffect } from 'react';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { Button, Buttons, Opens, TextField } from '../../ui/index.ts';
import type { ClauseCardProps } from './clause-card.tsx';
import { termsParameters } from './clause-parameters.ts';
import { Conditions } from './conditions.tsx';
import { leftOf } from './left.ts';
import type { Parameter } from './parameter.ts';
import { GroupFields, ParameterField } from './parameter-field.tsx';
import { slipsAt } from './reading.ts';

type ClauseMoreProps = ClauseCardProps & {
  at: string;
  /** Says whether it is open. */
  onOpen: (open: boolean) => void;
};

export function ClauseMore(props: ClauseMoreProps) {
  const { clause, filling, at } = props;
  const parts = termsParameters(clause.kind, filling.reader);
  const left = leftOf(parts, clause.terms, `${at}/terms`, filling.said);
  const wrong = filling.slips.some(
    ({ pointer }) => pointer.startsWith(`${at}/`) && !filling.said.has(pointer),
  );
  const summary = (
    <span className="clause-more">
      {say('more')} <span className="aside">{left.map(({ title }) => title).join(' · ')}</span>
    </span>
  );
  return (
    <Opens summary={summary} open={wrong}>
      {() => <MoreInside {...props} parts={parts} left={left.length > 0} />}
    </Opens>
  );
}

/** Is there while it is open. */
function MoreInside(props: ClauseMoreProps & { parts: readonly Parameter[]; left: boolean }) {
  const { clause, filling, at, parts, left, onChange, onOpen } = props;
  useLayoutEffect(() => {
    onOpen(true);
    return () => onOpen(false);
  }, [onOpen]);
  return (
    <div className="form clause-inside">
      <p className="aside">{menu[clause.kind].help}</p>
      {left && (
        <GroupFields
          parts={parts}
          fields={clause.terms}
          at={`${at}/terms`}
          filling={filling}
          onChange={(terms) => onChange({ terms })}
        />
      )}
      <Conditions
        title={say('appliesTo')}
        fields={clause.selector}
        at={`${at}/for`}
        filling={filling}
        onChange={(selector) => onChange({ selector })}
        draw={(asked) => <ParameterField {...asked} />}
      />
      <NameAndPayer {...props} />
      <ClauseButtons {...props} />
    </div>
  );
}

function NameAndPayer({ clause, filling, onChange, at }: ClauseMoreProps) {
  const wrong = (field: string) => slipsAt(filling.slips, `${at}/${field}`);
  return (
    <div className="fields">
      {!filling.said.has(`${at}/payer`) && (
        <TextField
          label={say('payerField')}
          hint={say('payerHint')}
          optional
          at={`${at}/payer`}
          wrong={wrong('payer')}
          value={clause.payer}
          onType={(payer) => onChange({ payer })}
        />
      )}
      <TextField
        label={say('shortName')}
        hint={say('shortNameHint')}
        at={`${at}/id`}
        wrong={wrong('id')}
        value={clause.id}
        onType={(id) => onChange({ id })}
      />
    </div>
  );
}

function ClauseButtons({ place, handling: { onMove, onDuplicate, onRemove } }: ClauseMoreProps) {
  const number = place + 1;
  return (
    <Buttons>
      <Button kind="quiet" label={say('upLabel', { number })} onPress={() => onMove(-1)}>
        {say('up')}
      </Button>
      <Button kind="quiet" label={say('downLabel', { number })} onPress={() => onMove(1)}>
        {say('down')}
      </Button>
      <Button kind="quiet" label={say('duplicateClauseLabel', { number })} onPress={onDuplicate}>
        {say('duplicateClause')}
      </Button>
      <Button kind="quiet" label={say('removeLabel', { number })} onPress={onRemove}>
        {say('remove')}
      </Button>
    </Buttons>
  );
}
