import { renderToStaticMarkup } from 'react-dom/server';
import { beforeEach, describe, expect, test } from 'vitest';
import { speakIn } from '../locale.ts';
import { Choice } from './choice.tsx';
import { LinesField, TextField } from './field.tsx';
import { Figure } from './figure.tsx';
import { Form } from './form.tsx';
import { MoneyField } from './money-field.tsx';
import { Shown } from './states.tsx';
import { Table } from './table.tsx';
import { DayField } from './time-field.tsx';

const nothing = () => undefined;

beforeEach(() => speakIn('en-GB'));

describe('a field', () => {
  test('shows a refusal beside itself, and its control points at the sentence', () => {
    const problem = { detail: 'A title is missing. Write one.', pointer: '/title' };
    const html = renderToStaticMarkup(
      <Form problem={problem} onSubmit={nothing} foot={null}>
        <TextField label="Title" at="/title" value="" onType={nothing} />
        <TextField label="Place" at="/place" value="" onType={nothing} />
      </Form>,
    );
    const id = /<p class="wrong" id="([^"]+)">A title is missing\. Write one\.<\/p>/.exec(html)?.[1];
    expect(html).toContain(`aria-describedby="${id}" aria-invalid="true" data-at="/title"`);
    expect(html.match(/aria-invalid/g)).toHaveLength(1);
  });

  test('of several lines answers for each of them', () => {
    const problem = { detail: 'Line 2 is too long.', pointer: '/address/1' };
    const html = renderToStaticMarkup(
      <Form problem={problem} onSubmit={nothing} foot={null}>
        <LinesField label="Address" at="/address" value="" onType={nothing} />
      </Form>,
    );
    expect(html).toContain('>Line 2 is too long.</p>');
  });

  test('is called by its label in a refusal that knows it by its name on the wire', () => {
    const problem = { detail: '“validUntil” is not a day; write it as 2026-03-14.', pointer: '/validUntil' };
    const html = renderToStaticMarkup(
      <Form problem={problem} onSubmit={nothing} foot={null}>
        <TextField label="Stands until" at="/validUntil" value="soon" onType={nothing} />
      </Form>,
    );
    expect(html).toContain('>“Stands until” is not a day; write it as 2026-03-14.</p>');
  });

  test('in which no day is chosen asks for one, whatever the refusal says', () => {
    const problem = { detail: '“on” is not a day; write it as 2026-03-14.', pointer: '/on' };
    const html = renderToStaticMarkup(
      <Form problem={problem} onSubmit={nothing} foot={null}>
        <DayField label="Day" at="/on" value="" onType={nothing} />
      </Form>,
    );
    expect(html).toContain('>Give the day.</p>');
  });

  test('takes its own sentence out of several refusals', () => {
    const errors = [
      { pointer: '/from', detail: 'Not a day.' },
      { pointer: '/to', detail: 'Before the first day.' },
    ];
    const html = renderToStaticMarkup(
      <Form problem={{ detail: 'Two fields are wrong.', errors }} onSubmit={nothing} foot={null}>
        <TextField label="To" at="/to" value="" onType={nothing} />
      </Form>,
    );
    expect(html).toContain('>Before the first day.</p>');
  });
});

describe('a field for money', () => {
  const field = (value: string, currency = 'EUR') =>
    renderToStaticMarkup(<MoneyField label="Rate" currency={currency} value={value} onType={nothing} />);

  test('says what it understood', () => {
    expect(field('45')).toContain('Understood as €45.00');
  });

  test('reads a comma as the locale does', () => {
    speakIn('de-AT');
    expect(field('45,5')).toContain('Understood as €\u00a045,50');
  });

  test('refuses more decimals than the currency has', () => {
    expect(field('45.005')).toContain('has more decimals than EUR has');
  });

  test('says nothing of an empty field', () => {
    expect(field(' ')).not.toContain('Understood');
  });
});

describe('a figure', () => {
  test('has the true minus', () => {
    expect(renderToStaticMarkup(<Figure amount="-45.00" currency="EUR" bare />)).toContain('\u221245.00');
  });

  test('has the decimals of its currency', () => {
    expect(renderToStaticMarkup(<Figure amount="4500" currency="JPY" />)).toContain('4,500');
  });
});

test('a choice that is not made yet asks to be made', () => {
  const html = renderToStaticMarkup(
    <Choice label="Paper" value="" options={[{ value: 'A4', label: 'A4' }]} onChoose={nothing} />,
  );
  expect(html).toContain('<option value="" selected="">Choose…</option>');
});

test('a table names each row by its first column, and labels each cell for a phone', () => {
  const html = renderToStaticMarkup(
    <Table
      caption="Hours"
      rows={[{ week: '31 Aug', hours: '12.00' }]}
      rowKey={({ week }) => week}
      columns={[
        { key: 'week', head: 'Week', cell: ({ week }) => week, sum: 'All' },
        { key: 'hours', head: 'Hours', figure: true, cell: ({ hours }) => hours, sum: '12.00' },
      ]}
    />,
  );
  expect(html).toContain('<th scope="row">31 Aug</th><td class="figure" data-head="Hours">12.00</td>');
  expect(html).toContain('<tfoot><tr><th scope="row">All</th>');
});

describe('an answer', () => {
  test('on its way says what is fetched', () => {
    const html = renderToStaticMarkup(
      <Shown answer={{ is: 'loading' }} what="the season">
        {nothing}
      </Shown>,
    );
    expect(html).toContain('Fetching the season…');
  });

  test('that is a refusal says its sentence and can be asked again', () => {
    const html = renderToStaticMarkup(
      <Shown answer={{ is: 'failed', problem: { detail: 'Nobody answers.' }, again: nothing }} what="it">
        {nothing}
      </Shown>,
    );
    expect(html).toContain('Nobody answers.');
    expect(html).toContain('Try again');
  });
});
