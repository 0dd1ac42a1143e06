// What cancelling costs, as a line of steps under rehearsal letters; and the same steps as a table, letter by letter, for
// who does not see the line.
import type { Temporal } from '@colla/calendar';
import { type Currency, toDecimal } from '@colla/money';
import type { CurveStep } from '@colla/rates';
import { whatIf as say } from '../../catalogue/what-if.ts';
import { sayMoney } from '../../locale.ts';
import { Amount, type Column, Filled, Table, type Why, WhyView } from '../../ui/index.ts';
import { drawCurve, letterOf } from './curve-drawing.ts';
import { Picture } from './curve-picture.tsx';
import { partsOf } from './what-if-moments.ts';

interface CurveViewProps {
  curve: readonly CurveStep[];
  /** When the first call begins. */
  until: Temporal.ZonedDateTime;
  currency: Currency;
  whyOf: (step: CurveStep) => Why;
}

export function CurveView({ curve, until, currency, whyOf }: CurveViewProps) {
  const drawing = drawCurve(curve, until);
  const [only, ...more] = curve;
  if (!drawing || !only) return null;
  if (more.length === 0) {
    const total = <Left step={only} currency={currency} whyOf={whyOf} what={say('curve')} said />;
    return (
      <p>
        <Filled text={say('curveFlat', partsOf(until))} values={{ total }} />
      </p>
    );
  }
  return (
    <div className="what-if-curve">
      <h3>{say('curve')}</h3>
      <Picture drawing={drawing} until={until} top={sayMoney(toDecimal(drawing.top, currency), currency)} />
      <Table
        caption={say('curve')}
        captionUnseen
        columns={columnsOf(whyOf, currency)}
        rows={curve.map((step, at) => ({ ...step, at }))}
        rowKey={({ from }) => from.toString()}
      />
      <p className="aside">{say('clock', { zone: cityOf(until) })}</p>
    </div>
  );
}

interface Row extends CurveStep {
  readonly at: number;
}

function columnsOf(whyOf: CurveViewProps['whyOf'], currency: Currency): Column<Row>[] {
  return [
    {
      key: 'from',
      head: say('from'),
      cell: (step) => (
        <span>
          <span className="what-if-letter">{letterOf(step.at)}</span> {sayStep(step)}
        </span>
      ),
    },
    {
      key: 'leaves',
      head: say('leaves'),
      figure: true,
      cell: (step) => {
        const what = say('leavesFrom', { when: sayStep(step) });
        return <Left step={step} currency={currency} whyOf={whyOf} what={what} />;
      },
    },
  ];
}

/** “from now on”, “after Tue 1 Dec, 10:00”. */
function sayStep({ at, from, after }: Row): string {
  if (at === 0) return say('fromNow');
  return say(after ? 'afterWhen' : 'fromWhen', partsOf(from));
}

interface LeftProps extends Pick<CurveViewProps, 'currency' | 'whyOf'> {
  step: CurveStep;
  what: string;
  /** In a sentence that says what it is. */
  said?: boolean;
}

/** Its why is worked out once it is opened. */
function Left({ step, currency, whyOf, what, said = false }: LeftProps) {
  const later = () => <WhyView why={whyOf(step)} />;
  const why = { what, amount: toDecimal(step.total, currency), currency, later };
  return <Amount why={why} bare={!said} said={said} />;
}

/** “Lisbon” of Europe/Lisbon: zones are named after a city whose clocks they keep. */
function cityOf({ timeZoneId }: Temporal.ZonedDateTime): string {
  return (timeZoneId.split('/').at(-1) ?? timeZoneId).replaceAll('_', ' ');
}
