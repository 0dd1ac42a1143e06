// In the night when clocks go back a time comes twice: only then it is asked which one is meant.
import { comesTwice, type WrittenSpan } from '@colla/calendar';
import { engagements as say } from '../../catalogue/engagements.ts';
import { Options } from '../../ui/index.ts';

interface TwiceFieldsProps {
  span: WrittenSpan;
  onChange: (to: { fromAgain: boolean } | { untilAgain: boolean }) => void;
}

export function TwiceFields({ span, onChange }: TwiceFieldsProps) {
  const { on, from, until, untilOn = on, zone, fromAgain, untilAgain } = span;
  return (
    <>
      {comesTwice(on, from, zone) && (
        <Which
          label={say('startsTwice', { time: from })}
          again={fromAgain === true}
          onChange={(fromAgain) => onChange({ fromAgain })}
        />
      )}
      {comesTwice(untilOn, until, zone) && (
        <Which
          label={say('endsTwice', { time: until })}
          again={untilAgain === true}
          onChange={(untilAgain) => onChange({ untilAgain })}
        />
      )}
    </>
  );
}

const options = [
  { value: 'first' as const, label: say('firstTime') },
  { value: 'second' as const, label: say('secondTime') },
];

interface WhichProps {
  label: string;
  again: boolean;
  onChange: (again: boolean) => void;
}

function Which({ label, again, onChange }: WhichProps) {
  return (
    <Options
      label={label}
      value={again ? 'second' : 'first'}
      options={options}
      onChoose={(chosen) => onChange(chosen === 'second')}
    />
  );
}
