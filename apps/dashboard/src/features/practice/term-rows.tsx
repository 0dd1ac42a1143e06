// The terms of the place, row by row.
import { practice } from '../../catalogue/practice.ts';
import { Button, DayField, TextField } from '../../ui/index.ts';
import { emptyTerm, type TermRow } from './terms.ts';

interface TermRowsProps {
  terms: readonly TermRow[];
  /** As the tariffs call them. */
  names: readonly string[];
  onChange: (terms: TermRow[]) => void;
}

export function TermRows({ terms, names, onChange }: TermRowsProps) {
  const change = (key: number, to: Partial<TermRow>) =>
    onChange(terms.map((term) => (term.key === key ? { ...term, ...to } : term)));
  return (
    <fieldset className="practice-terms">
      <legend>{practice('terms')}</legend>
      <p className="aside">{practice('termsWhy')}</p>
      {terms.map((term, place) => (
        <div className="fields" key={term.key}>
          <TextField
            label={practice('termName')}
            suggestions={names}
            at={`/terms/${place}/name`}
            value={term.name}
            onType={(name) => change(term.key, { name })}
          />
          <DayField
            label={practice('termFrom')}
            at={`/terms/${place}/from`}
            value={term.from}
            onType={(from) => change(term.key, { from })}
          />
          <DayField
            label={practice('termTo')}
            at={`/terms/${place}/to`}
            value={term.to}
            onType={(to) => change(term.key, { to })}
          />
          <Button
            kind="quiet"
            label={practice('removeTerm', { number: place + 1 })}
            onPress={() => onChange(terms.filter(({ key }) => key !== term.key))}
          >
            {practice('takeOut')}
          </Button>
        </div>
      ))}
      <div>
        <Button onPress={() => onChange([...terms, emptyTerm(terms)])}>{practice('addTerm')}</Button>
      </div>
    </fieldset>
  );
}
