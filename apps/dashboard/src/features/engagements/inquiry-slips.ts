// What is wrong with an inquiry before it is sent, said beside its fields.

import { span } from '@colla/calendar';
import { refused } from '@colla/refusal';
import { engagements as say } from '../../catalogue/engagements.ts';
import { type CallRow, isUntouched, plannedOf } from './call-row.ts';
import type { InquiryDraft, PayerRow } from './inquiry.ts';
import { meantBy, type Named } from './naming.ts';

export interface Slip {
  readonly pointer: string;
  readonly detail: string;
}

/** Everything that is wrong before it is sent; pointers as the server would give them. */
export function slipsIn(draft: InquiryDraft, known: readonly Named[]): Slip[] {
  const slips: Slip[] = [];
  if (draft.title.trim() === '') {
    slips.push({
      pointer: '/title',
      detail: say('wrongTitle'),
    });
  }
  slips.push(...slipsInNames(draft, known));
  for (const [index, call] of draft.calls.entries()) {
    if (!isUntouched(call)) slips.push(...slipsInCall(call, `/calls/${index}`));
  }
  for (const [index, work] of draft.works.entries()) {
    if (work.title.trim() === '')
      slips.push({ pointer: `/programme/${index}/title`, detail: say('wrongWork') });
    if (!/^\d{0,3}$/.test(work.minutes.trim())) {
      slips.push({ pointer: `/programme/${index}/minutes`, detail: say('wrongMinutes') });
    }
    if (!/^\d{0,4}$/.test(work.pages.trim())) {
      slips.push({ pointer: `/programme/${index}/pages`, detail: say('wrongPages') });
    }
  }
  if (!/^\d{1,2}$/.test(draft.sharers.trim())) {
    slips.push({ pointer: '/sharers', detail: say('wrongSharers') });
  }
  return [...slips, ...slipsInPayers(draft.payers)];
}

/** A name that several share must say which of them is meant. */
function slipsInNames({ soloist, institution, payers }: InquiryDraft, known: readonly Named[]): Slip[] {
  const fields = [
    ['/soloistParty', soloist],
    ['/institutionParty', institution],
    ...payers.map(({ name }, index) => [`/payers/${index}/name`, name] as const),
  ] as const;
  return fields.flatMap(([pointer, name]) =>
    meantBy(name, known).is === 'several'
      ? [{ pointer, detail: say('whichOne', { name: name.trim() }) }]
      : [],
  );
}

function slipsInPayers(payers: readonly PayerRow[]): Slip[] {
  return payers.flatMap(({ role }, index) => {
    const twice = payers.findIndex((other) => other.role.trim() === role.trim()) < index;
    if (!twice && role.trim() !== '') return [];
    const detail = twice ? say('wrongRoleTwice', { role: role.trim() }) : say('wrongRole');
    return [{ pointer: `/payers/${index}/role`, detail }];
  });
}

/** What is wrong with one row of calls. */
export function slipsInCall(call: CallRow, pointer: string): Slip[] {
  const missing = (['on', 'from', 'until'] as const).find((field) => call[field] === '');
  if (missing) {
    return [{ pointer: `${pointer}/planned/${missing}`, detail: say(`wrong_${missing}`) }];
  }
  const read = span(plannedOf(call));
  if (refused(read)) return [{ pointer: `${pointer}/planned${read.field ?? '/on'}`, detail: read.sentence }];
  return call.lapsesOn > call.on ? [{ pointer: `${pointer}/lapsesAt`, detail: say('wrongLapse') }] : [];
}
