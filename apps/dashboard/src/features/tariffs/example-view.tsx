// The example beside the clauses: its calls can be changed, and it is priced by the same function as an invoice.
import type { Tariff } from '@colla/rates';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { Options, Part } from '../../ui/index.ts';
import { type Example, type ExampleShape, SHAPES } from './example.ts';
import { ExampleForm } from './example-form.tsx';
import { priceExample } from './example-priced.ts';
import { type ShowStatement, shownBy } from './example-shown.ts';
import type { Reader } from './typed.ts';

interface ExampleViewProps {
  shape: ExampleShape;
  example: Example;
  tariff: Tariff | undefined;
  reader: Reader & { readonly zone: string };
  show: ShowStatement;
  onChoose: (shape: ExampleShape) => void;
  onChange: (example: Example) => void;
  /** All three are to be taken from the clauses again. */
  onAgain: () => void;
}

const shapes = () => SHAPES.map((shape) => ({ value: shape, label: say(`shape_${shape}`) }));

export function ExampleView(props: ExampleViewProps) {
  const { shape, example, tariff, reader, show, onChoose, onChange, onAgain } = props;
  const priced = tariff ? priceExample(example, tariff, reader) : { statement: undefined, slips: [] };
  return (
    <Part title={say('example')}>
      <Options label={say('shape')} value={shape} options={shapes()} onChoose={onChoose} />
      {tariff && priced.statement ? (
        show(shownBy(priced.statement, { tariff, example, locale: reader.locale }))
      ) : (
        <p className="aside">{say('exampleNone')}</p>
      )}
      <p className="aside">{say('exampleUnder')}</p>
      <ExampleForm
        example={example}
        currency={reader.currency}
        slips={priced.slips}
        onChange={onChange}
        onAgain={onAgain}
      />
    </Part>
  );
}
