// What is added to a tariff changes nothing by itself, and speaks of what is there.

import { currency } from '@colla/money';
import { KINDS } from '@colla/rates';
import { granted } from '@colla/refusal';
import { expect, it } from 'vitest';
import { beginBeside, beginWithin } from './beginning.ts';
import { termsParameters } from './clause-parameters.ts';
import { addClause, type TariffDraft } from './draft.ts';
import { readDraft } from './reading.ts';
import { typeFields } from './shown.ts';

const reader = { currency: granted(currency('GBP')), locale: 'en-GB' };
const empty: TariffDraft = { name: 'Any', currency: 'GBP', from: '2026-01-01', note: '', clauses: [] };

it('whoever sends no word at all owes what the last step owes, until it is changed', () => {
  const parts = termsParameters('cancellation', reader);
  const fields = typeFields(parts, { scale: [], otherwise: { owes: 'share', share: 8000 } }, reader);
  const noShow = parts.find(({ name }) => name === 'noShow')?.shape;
  expect(noShow && beginBeside(noShow, parts, fields, reader)).toEqual({ owes: 'share', share: '80' });
});

it('a further hour begins at the price of the first', () => {
  const parts = termsParameters('hourly', reader);
  const fields = typeFields(parts, { price: '48.00' }, reader);
  const further = parts.find(({ name }) => name === 'further')?.shape;
  if (further?.is !== 'list') throw new Error('further prices are a list');
  expect(beginWithin(further.of, fields, reader)).toEqual({ after: '60', price: '48.00' });
});

it('the highest only is one of the supplements, and not of the package or the hours', () => {
  const kinds = ['package', 'hourly', 'supplement', 'supplement', 'highest'] as const;
  const draft = kinds.reduce((of, kind) => addClause(of, kind, reader), empty);
  expect(draft.clauses.at(-1)?.terms.of).toEqual(['supplement', 'supplement-2']);
});

it('hours covered are drawn by no kind of call first, until one is named', () => {
  expect(addClause(empty, 'entitlement', reader).clauses[0]?.terms.first).toEqual([]);
});

it.each(KINDS)('a clause that is added can be read, once there is what it speaks of: %s', (kind) => {
  const { slips } = readDraft(addClause(empty, kind, reader), reader);
  expect(slips.filter(({ detail }) => !detail.includes('not in this tariff'))).toEqual([]);
});
