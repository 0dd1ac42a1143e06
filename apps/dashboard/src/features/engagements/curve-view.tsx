// What cancelling costs, as a line of steps; and the same steps as a table, for who does not see the line.
import type { Temporal } from '@colla/calendar';
import { type Currency, toDecimal } from '@colla/money';
import type { CurveStep } from '@colla/rates';
import { whatIf as say } from '../../catalogue/what-if.ts';
import { sayDay, sayMoney, sayTime } from '../../locale.ts';
import { type Column, Figure, Table } from '../../ui/index.ts';
import { drawCurve } from './curve-drawing.ts';

interface CurveViewProps {
  curve: readonly CurveStep[];
  /** When the first call begins. */
  until: Temporal.ZonedDateTime;
  currency: Currency;
}

export function CurveView({ curve, until, currency }: CurveViewProps) {
  const drawing = drawCurve(curve, until);
  const [only, ...more] = curve;
  if (!drawing || !only) return null;
  if (more.length === 0) {
    const total = sayMoney(toDecimal(only.total, currency), currency);
    return <p>{say('curveFlat', { ...partsOf(until), total })}</p>;
  }
  const [first, last] = [sayWhen(drawing.begins), sayWhen(until)];
  return (
    <div className="what-if-curve">
      <h3>{say('curve')}</h3>
      <p className="aside figure">{sayMoney(toDecimal(drawing.top, currency), currency)}</p>
      <svg
        viewBox="0 0 100 40"
        preserveAspectRatio="none"
        role="img"
        aria-label={say('picture', { first, last })}
      >
        <path className="ground" d="M0 40H100" />
        <path className="line" d={pathOf(drawing.corners)} />
      </svg>
      <p className="what-if-ends aside">
        <span>{first}</span>
        <span>{last}</span>
      </p>
      <Table
        caption={say('curve')}
        captionUnseen
        columns={columnsIn(currency)}
        rows={curve.map((step, index) => ({ ...step, isNow: index === 0 }))}
        rowKey={({ from }) => from.toString()}
      />
    </div>
  );
}

interface Row extends CurveStep {
  readonly isNow: boolean;
}

function columnsIn(currency: Currency): Column<Row>[] {
  return [
    {
      key: 'from',
      head: say('from'),
      cell: ({ from, isNow }) => (isNow ? say('fromNow') : sayWhen(from)),
    },
    {
      key: 'leaves',
      head: say('leaves'),
      figure: true,
      cell: ({ total }) => <Figure amount={toDecimal(total, currency)} currency={currency} bare />,
    },
  ];
}

/** Two units are kept free above the line and below it, so that its stroke is not cut. */
function pathOf(corners: readonly (readonly [number, number])[]): string {
  return corners.map(([x, y], at) => `${at === 0 ? 'M' : 'L'}${x * 100} ${38 - y * 36}`).join('');
}

function partsOf(at: Temporal.ZonedDateTime): { day: string; time: string } {
  const text = at.toString();
  return { day: sayDay(text, 'weekday'), time: sayTime(text) };
}

function sayWhen(at: Temporal.ZonedDateTime): string {
  return say('when', partsOf(at));
}
