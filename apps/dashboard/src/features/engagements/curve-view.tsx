// What cancelling costs, as a line of steps under rehearsal letters; and the same steps as a table, letter by letter, for
// who does not see the line.
import type { Temporal } from '@colla/calendar';
import { type Currency, toDecimal } from '@colla/money';
import type { CurveStep } from '@colla/rates';
import { whatIf as say } from '../../catalogue/what-if.ts';
import { sayDay, sayMoney, sayTime } from '../../locale.ts';
import { Amount, type Column, Table, type Why, WhyView } from '../../ui/index.ts';
import { type Drawing, drawCurve, letterOf } from './curve-drawing.ts';

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
    const total = sayMoney(toDecimal(only.total, currency), currency);
    return <p>{say('curveFlat', { ...partsOf(until), total })}</p>;
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

interface PictureProps {
  drawing: Drawing;
  until: Temporal.ZonedDateTime;
  /** The amount at the top. */
  top: string;
}

/** The line is stretched to its room; letters stand above it in their own shape. */
function Picture({ drawing, until, top }: PictureProps) {
  const [first, last] = [sayWhen(drawing.begins), sayWhen(until)];
  return (
    <div className="what-if-picture" role="img" aria-label={say('picture', { first, last })}>
      <p className="aside">{top}</p>
      <div className="what-if-line">
        <svg viewBox="0 0 100 40" preserveAspectRatio="none" aria-hidden="true">
          <path className="ground" d="M0 40H100" />
          <path className="steps" d={drawing.steps.map(({ x }) => `M${x * 100} 0V40`).join('')} />
          <path className="line" d={pathOf(drawing.corners)} />
        </svg>
        {drawing.steps.map(({ letter, x }) => (
          <span key={letter} className="what-if-letter" style={{ insetInlineStart: `${x * 100}%` }}>
            {letter}
          </span>
        ))}
      </div>
      <p className="what-if-ends aside">
        <span>{first}</span>
        <span>{last}</span>
      </p>
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
      cell: ({ from, at }) => (
        <>
          <span className="what-if-letter">{letterOf(at)}</span> {at === 0 ? say('fromNow') : sayWhen(from)}
        </>
      ),
    },
    {
      key: 'leaves',
      head: say('leaves'),
      figure: true,
      cell: (step) => (
        <Amount
          why={{
            what: say('leavesFrom', { when: step.at === 0 ? say('fromNow') : sayWhen(step.from) }),
            amount: toDecimal(step.total, currency),
            currency,
            later: () => <WhyView why={whyOf(step)} />,
          }}
          bare
        />
      ),
    },
  ];
}

/** Two units are kept free above the line and below it, so that its stroke is not cut. */
function pathOf(corners: Drawing['corners']): string {
  return corners.map(([x, y], at) => `${at === 0 ? 'M' : 'L'}${x * 100} ${38 - y * 36}`).join('');
}

function partsOf(at: Temporal.ZonedDateTime): { day: string; time: string } {
  const text = at.toString();
  return { day: sayDay(text, 'weekday'), time: sayTime(text) };
}

function sayWhen(at: Temporal.ZonedDateTime): string {
  return say('when', partsOf(at));
}

/** “Lisbon” of Europe/Lisbon: zones are named after a city whose clocks they keep. */
function cityOf({ timeZoneId }: Temporal.ZonedDateTime): string {
  return (timeZoneId.split('/').at(-1) ?? timeZoneId).replaceAll('_', ' ');
}
