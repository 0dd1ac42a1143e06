// The form stays short: only what a tariff asks, and what somebody wrote, is in sight.

import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { askedBy } from './asked.ts';
import { emptyInquiry, type People } from './inquiry.ts';
import { PeopleFields } from './people-fields.tsx';

const members = {
  clauses: [
    { id: 'hours', kind: 'hourly', for: { memberships: ['guild member'] }, terms: { price: '40.00' } },
  ],
};

/** The labels in sight, and those folded away. */
function fieldsOf(people: People, ...tariffs: Parameters<typeof askedBy>[0]) {
  const html = renderToStaticMarkup(
    <PeopleFields people={people} parties={[]} asked={askedBy(tariffs)} onChange={() => undefined} />,
  );
  const fold = /<details[\s\S]*?<\/details>/.exec(html)?.[0] ?? '';
  return { inSight: html.replace(fold, ''), folded: fold };
}

describe('what is asked about the soloist', () => {
  it('is the instrument alone where no tariff asks for more', () => {
    const { inSight, folded } = fieldsOf(emptyInquiry('Europe/London'));
    expect(inSight).toContain('Instrument or voice');
    expect(inSight).not.toContain('Membership');
    for (const label of ['Level', 'Course of study', 'Membership', 'Class of pianist', 'Circumstances'])
      expect(folded).toContain(label);
  });

  it('is a membership where a tariff asks for it, with the tariff’s own word to choose', () => {
    const { inSight, folded } = fieldsOf(emptyInquiry('Europe/London'), members);
    expect(inSight).toContain('Membership');
    expect(inSight).toContain('<option value="guild member"></option>');
    expect(folded).not.toContain('Membership');
  });

  it('is whatever somebody wrote already', () => {
    const { inSight } = fieldsOf({ ...emptyInquiry('Europe/London'), level: 'diploma', sharers: '2' });
    expect(inSight).toContain('value="diploma"');
    expect(inSight).toContain('Soloists who share it');
  });
});
