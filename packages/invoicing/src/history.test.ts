import { agreeCall, cancelCall, changeCall, type Engagement, playCall } from '@colla/engagements';
import { granted } from '@colla/refusal';
import fc from 'fast-check';
import { describe, it } from 'vitest';
import { billable } from './billable.ts';
import { applyCredit, refund } from './credit.ts';
import { draftCreditNote, issueCreditNote, takeBackInvoice } from './credit-note.ts';
import { applyDeposit, receiveDeposit, returnDeposit } from './deposit.ts';
import { draftInvoice } from './draft.ts';
import { AFTERWARDS, at, day, further, lasting, mara, organisation, school } from './engaged.fixture.ts';
import { gather, issueGathered } from './gathered.ts';
import {
  answered,
  type Delta,
  dayOf,
  KINDS,
  Model,
  mustAgree,
  statementFor,
  World,
} from './history.fixture.ts';
import { type Invoice, issue } from './invoice.ts';
import { receiveFor } from './payment.ts';
import { type Undoable, undo } from './undo.ts';
import { writeOff } from './write-off.ts';

type Step = fc.Command<Model, World>;

/** One step of a history, on a day of its own; where it changed either of the two, model and books must agree. */
function step(told: string, run: (model: Model, world: World) => void): Step {
  return {
    check: () => true,
    run(model, world) {
      model.today += 1;
      const before = [model.changes, world.books.posted.length].join();
      run(model, world);
      if (before !== [model.changes, world.books.posted.length].join()) mustAgree(model, world);
    },
    toString: () => told,
  };
}

/** One of a list, whatever number is drawn; undefined of an empty one. */
function one<Of>(of: readonly Of[], drawn: number): Of | undefined {
  return of[drawn % of.length];
}

/** Something that can be taken back happened: it is entered, and the model changed by it. */
function happened(
  { model, world }: { model: Model; world: World },
  event: Parameters<World['enter']>[0] & { kind: Undoable },
  delta: Delta,
): void {
  world.enter(event, model.today);
  model.apply(delta);
  model.records.push({ kind: event.kind, id: event.record.id, delta, undone: false });
}

const agree = (drawn: number) =>
  step(`agree ${drawn}`, (model, world) => {
    const kind = one(KINDS, drawn);
    if (!kind || model.engagements.length === 4) return;
    const id = `e${model.engagements.length + 1}`;
    world.engagements.set(id, { ...kind.agreed, id });
    model.engagements.push({ id, party: kind.party, currency: kind.agreed.currency, asked: 0n });
  });

/** Changes an engagement where it can be changed so. */
function change(
  model: Model,
  world: World,
  drawn: number,
  to: (of: Engagement) => ReturnType<typeof playCall>,
) {
  const id = one(model.engagements, drawn)?.id ?? '';
  const engagement = world.engagements.get(id);
  if (engagement) world.engagements.set(id, granted(to(engagement)));
}

function standing(engagement: Engagement, drawn: number, ...is: string[]) {
  return one(
    engagement.calls.filter((call) => is.includes(call.standing.is)),
    drawn,
  );
}

const play = (drawn: number, minutes: number) =>
  step(`play ${drawn} for ${minutes} minutes`, (model, world) =>
    change(model, world, drawn, (of) => {
      const call = standing(of, drawn, 'agreed', 'played');
      return call ? playCall(of, call.id, lasting(of, call.id, minutes), AFTERWARDS) : of;
    }),
  );

const cancel = (drawn: number, late: boolean) =>
  step(`cancel ${drawn}${late ? ' late' : ''}`, (model, world) =>
    change(model, world, drawn, (of) => {
      const call = standing(of, drawn, 'agreed');
      const word = { by: 'payer', reason: 'other' } as const;
      return call
        ? cancelCall(of, call.id, { ...word, at: call.planned.start.subtract({ hours: late ? 1 : 72 }) })
        : of;
    }),
  );

const add = (drawn: number) =>
  step(`add a call ${drawn}`, (model, world) =>
    change(model, world, drawn, (of) => {
      const id = `c${of.calls.length + 1}`;
      return agreeCall(further(of, [id, 'rehearsal', '03-20T10:00']), id, at('02-01T09:00'));
    }),
  );

const moveCall = (drawn: number) =>
  step(`move a call ${drawn}`, (model, world) =>
    change(model, world, drawn, (of) => {
      const call = standing(of, drawn, 'agreed');
      const planned = { start: at('03-22T10:00'), end: at('03-22T11:30') };
      return call ? changeCall(of, call.id, { planned }) : of;
    }),
  );

/** What the statement of an engagement says beyond what was asked for, by the model's own sum. */
function left(model: Model, world: World, drawn: number) {
  const of = one(model.engagements, drawn);
  const engagement = of && world.engagements.get(of.id);
  if (!of || !engagement || !('agreement' in engagement)) return undefined;
  const statement = statementFor(engagement);
  return { of, engagement, statement, difference: statement.total - of.asked };
}

type Left = NonNullable<ReturnType<typeof left>>;

function draftOf(model: Model, world: World, { of, engagement, statement }: Left) {
  return draftInvoice({
    ...{ engagement, statement, payer: 'payer', to: of.party === 'p1' ? mara : school, organisation },
    ...{ earlier: world.documentsOf(of.id), issuedOn: dayOf(model.today) },
  });
}

/** An invoice was issued for all that was left. */
function issued(model: Model, world: World, record: Invoice, { of, difference }: Left): void {
  world.file(record);
  world.invoices.set(record.id, record);
  world.enter({ kind: 'invoice', record }, model.today);
  model.invoices.push({ id: record.id, of, total: difference, taken: false });
  of.asked += difference;
  model.apply([
    [`owed ${record.id}`, difference],
    [`earned ${of.currency}`, difference],
  ]);
  mustBeAsked(model, world, model.engagements.indexOf(of));
}

const invoice = (drawn: number) =>
  step(`invoice ${drawn}`, (model, world) => {
    const found = left(model, world, drawn);
    if (!found) return;
    const { difference } = found;
    const code = difference === 0n ? 'nothing-to-invoice' : 'less-than-invoiced';
    const draft = answered(draftOf(model, world, found), difference > 0n ? undefined : `invoicing/${code}`);
    if (draft) issued(model, world, issue(draft, model.next('2026')), found);
  });

const invoiceTogether = (drawn: number) =>
  step(`invoice all of the payer of ${drawn}`, (model, world) => {
    const first = one(model.engagements, drawn);
    const found = [...model.engagements.keys()]
      .flatMap((index) => left(model, world, index) ?? [])
      .filter(
        ({ of, difference }) =>
          of.party === first?.party && of.currency === first.currency && difference > 0n,
      );
    const drafts = found.map((each) => granted(draftOf(model, world, each)));
    const sections = answered(gather(drafts), found.length > 0 ? undefined : 'invoicing/nothing-to-invoice');
    if (!sections) return;
    const { id: _, ...as } = model.next('2026');
    const document = issueGathered(sections, { ...as, ids: sections.map(() => model.newId()) });
    for (const [index, section] of document.entries()) {
      const of = found[index];
      if (of) issued(model, world, section, of);
    }
  });

/** What is invoiced is what the statement says: nothing is left to ask for or to give back. */
function mustBeAsked(model: Model, world: World, drawn: number) {
  const found = left(model, world, drawn);
  if (!found) return;
  const rest = billable(found.statement, 'payer', world.documentsOf(found.of.id));
  if (rest.total !== 0n || rest.lines.length > 0 || rest.tax !== 0n)
    throw new Error(`${rest.total} is left to ask for, in ${rest.lines.length} lines`);
}

/** What a credit note gives back settles these invoices, and the rest is the payer's credit. */
function creditedBy(
  model: Model,
  found: Pick<Left, 'of'>,
  amount: bigint,
  invoices: Model['invoices'],
): Delta {
  const { of } = found;
  of.asked -= amount;
  const { delta, left } = model.settle(amount, invoices);
  return [...delta, [`credit ${of.party} ${of.currency}`, left], [`earned ${of.currency}`, -amount]];
}

const credit = (drawn: number) =>
  step(`credit note ${drawn}`, (model, world) => {
    const found = left(model, world, drawn);
    if (!found) return;
    const { of, engagement, statement, difference } = found;
    const draft = answered(
      draftCreditNote({
        ...{ engagement, statement, payer: 'payer', to: of.party === 'p1' ? mara : school, organisation },
        ...{ earlier: world.documentsOf(of.id), issuedOn: dayOf(model.today) },
        invoices: world.open().filter((invoice) => invoice.engagement === of.id),
      }),
      difference < 0n ? undefined : 'invoicing/nothing-to-credit',
    );
    if (!draft) return;
    const note = issueCreditNote(draft, model.next('C2026'));
    world.file(note);
    world.enter({ kind: 'credit note', record: note }, model.today);
    model.apply(creditedBy(model, found, -difference, model.open(of, of.id).reverse()));
    mustBeAsked(model, world, drawn);
  });

const takeBack = (drawn: number) =>
  step(`take back invoice ${drawn}`, (model, world) => {
    const invoice = one(model.invoices, drawn);
    const issued = world.invoices.get(invoice?.id ?? '');
    if (!invoice || !issued) return;
    const { of, total, taken } = invoice;
    const draft = answered(
      takeBackInvoice(issued, {
        ...{ open: world.books.open(issued), earlier: world.documentsOf(of.id), taken },
        issuedOn: dayOf(model.today),
      }),
      taken ? 'invoicing/taken-back-already' : of.asked < total ? 'invoicing/beyond-invoiced' : undefined,
    );
    if (!draft) return;
    const note = issueCreditNote(draft, model.next('C2026'));
    world.file(note);
    world.enter({ kind: 'credit note', record: note }, model.today);
    model.apply(creditedBy(model, { of }, total, [invoice]));
    invoice.taken = true;
  });

const money = (model: Model) => ({ receivedOn: dayOf(model.today), method: 'bank transfer' }) as const;

const pay = (drawn: number, amount: bigint, keepCredit: boolean) =>
  step(`pay ${amount} for ${drawn}, the rest ${keepCredit ? 'as credit' : 'refused'}`, (model, world) => {
    const of = one(model.engagements, drawn);
    if (!of) return;
    const { party, currency } = of;
    const { delta, left } = model.settle(amount, model.open(of));
    const payment = answered(
      receiveFor(
        { id: model.newId(), amount, currency, ...money(model) },
        { party, open: world.open(), against: 'oldest first' },
        { keepCredit, today: day('12-31') },
      ),
      left > 0n && !keepCredit ? 'invoicing/more-than-owed' : undefined,
    );
    if (!payment) return;
    happened({ model, world }, { kind: 'payment', record: payment }, [
      ...delta,
      [`credit ${party} ${currency}`, left],
      [`money ${currency}`, amount],
    ]);
  });

const payByHand = (drawn: number, amount: bigint, more: bigint) =>
  step(`pay ${amount} for invoice ${drawn} and ${more} more`, (model, world) => {
    const invoice = one(model.invoices, drawn);
    if (!invoice) return;
    const { id, of } = invoice;
    const { party, currency } = of;
    const payment = answered(
      receiveFor(
        { id: model.newId(), amount: amount + more, currency, ...money(model) },
        { party, open: world.open(), against: [{ invoice: id, amount }] },
        { keepCredit: true, today: day('12-31') },
      ),
      amount > model.sum(`owed ${id}`) ? 'invoicing/more-than-owed' : undefined,
    );
    if (!payment) return;
    happened({ model, world }, { kind: 'payment', record: payment }, [
      [`owed ${id}`, -amount],
      [`credit ${party} ${currency}`, more],
      [`money ${currency}`, amount + more],
    ]);
  });

const deposit = (drawn: number, amount: bigint, asked: bigint) =>
  step(`deposit ${amount} of ${asked} for ${drawn}`, (model, world) => {
    const of = one(model.engagements, drawn);
    if (!of) return;
    const { id: engagement, party, currency } = of;
    const over = amount > asked ? amount - asked : 0n;
    const awaited = { engagement, party, currency, amount: asked };
    const received = { id: model.newId(), amount, currency, ...money(model) };
    const record = granted(receiveDeposit(received, awaited, { keepCredit: true, today: day('12-31') }));
    happened({ model, world }, { kind: 'deposit', record }, [
      [`deposit ${engagement}`, amount - over],
      [`credit ${party} ${currency}`, over],
      [`money ${currency}`, amount],
    ]);
  });

/** What the ledger says is held for an engagement: one that something is held for, where there is any. */
function heldFor(model: Model, world: World, drawn: number) {
  const held = model.engagements.filter(({ id }) => model.sum(`deposit ${id}`) > 0n);
  const of = one(held.length > 0 ? held : model.engagements, drawn);
  if (!of) return undefined;
  const { id: engagement, party, currency } = of;
  return { engagement, party, currency, amount: world.books.deposit(engagement, currency) };
}

const useDeposit = (drawn: number) =>
  step(`apply deposit of ${drawn}`, (model, world) => {
    const held = heldFor(model, world, drawn);
    if (!held) return;
    const { engagement } = held;
    const amount = model.sum(`deposit ${engagement}`);
    const open = model.open(held, engagement);
    const record = answered(
      applyDeposit({ id: model.newId(), on: dayOf(model.today) }, held, {
        open: world.open(),
        against: 'oldest first',
      }),
      amount === 0n ? 'invoicing/no-deposit-held' : open.length === 0 ? 'invoicing/nothing-open' : undefined,
    );
    if (!record) return;
    const { delta, left } = model.settle(amount, open);
    happened({ model, world }, { kind: 'deposit applied', record }, [
      ...delta,
      [`deposit ${engagement}`, left - amount],
    ]);
  });

const giveBack = (drawn: number, amount: bigint) =>
  step(`return ${amount} of the deposit of ${drawn}`, (model, world) => {
    const held = heldFor(model, world, drawn);
    if (!held) return;
    const { engagement, currency } = held;
    const record = answered(
      returnDeposit({ id: model.newId(), on: dayOf(model.today), amount, method: 'bank transfer' }, held),
      amount > model.sum(`deposit ${engagement}`) ? 'invoicing/more-than-held' : undefined,
    );
    if (!record) return;
    happened({ model, world }, { kind: 'deposit returned', record }, [
      [`deposit ${engagement}`, -amount],
      [`money ${currency}`, -amount],
    ]);
  });

/** A payer's credit as the ledger has it: of one who has any, where somebody has. */
function creditOf(model: Model, world: World, drawn: number) {
  const rich = model.engagements.filter(
    ({ party, currency }) => model.sum(`credit ${party} ${currency}`) !== 0n,
  );
  const of = one(rich.length > 0 ? rich : model.engagements, drawn);
  if (!of) return undefined;
  const { party, currency } = of;
  return { of: `credit ${party} ${currency}`, party, currency, amount: world.books.credit(party, currency) };
}

const useCredit = (drawn: number) =>
  step(`apply credit of ${drawn}`, (model, world) => {
    const credit = creditOf(model, world, drawn);
    if (!credit) return;
    const [amount, open] = [model.sum(credit.of), model.open(credit)];
    const record = answered(
      applyCredit({ id: model.newId(), on: dayOf(model.today) }, credit, {
        open: world.open(),
        against: 'oldest first',
      }),
      amount <= 0n ? 'invoicing/no-credit' : open.length === 0 ? 'invoicing/nothing-open' : undefined,
    );
    if (!record) return;
    const { delta, left } = model.settle(amount, open);
    happened({ model, world }, { kind: 'credit applied', record }, [...delta, [credit.of, left - amount]]);
  });

const payBack = (drawn: number, amount: bigint) =>
  step(`refund ${amount} of ${drawn}`, (model, world) => {
    const credit = creditOf(model, world, drawn);
    if (!credit) return;
    const most = model.sum(credit.of);
    const record = answered(
      refund({ id: model.newId(), on: dayOf(model.today), amount, method: 'cash' }, credit),
      most <= 0n ? 'invoicing/no-credit' : amount > most ? 'invoicing/more-than-credit' : undefined,
    );
    if (!record) return;
    happened({ model, world }, { kind: 'refund', record }, [
      [credit.of, -amount],
      [`money ${credit.currency}`, -amount],
    ]);
  });

const giveUp = (drawn: number, amount: bigint) =>
  step(`write off ${amount} of invoice ${drawn}`, (model, world) => {
    const invoice = one(model.invoices, drawn);
    const issued = world.invoices.get(invoice?.id ?? '');
    if (!invoice || !issued) return;
    const record = answered(
      writeOff(
        { id: model.newId(), on: dayOf(model.today), amount, reason: 'goodwill' },
        world.books.open(issued),
      ),
      amount > model.sum(`owed ${invoice.id}`) ? 'invoicing/not-to-write-off' : undefined,
    );
    if (!record) return;
    happened({ model, world }, { kind: 'write-off', record }, [
      [`owed ${invoice.id}`, -amount],
      [`given up ${invoice.of.currency}`, amount],
    ]);
  });

const charge = (drawn: number, amount: bigint) =>
  step(`late interest ${amount} on invoice ${drawn}`, (model, world) => {
    const invoice = one(model.invoices, drawn);
    if (!invoice) return;
    const { id, of } = invoice;
    const record = {
      ...{
        id: model.newId(),
        invoice: id,
        engagement: of.id,
        party: of.party,
        on: dayOf(model.today),
        amount,
      },
      ...{ currency: of.currency, arithmetic: '' },
    };
    happened({ model, world }, { kind: 'late interest', record }, [
      [`owed ${id}`, amount],
      [`earned ${of.currency}`, amount],
    ]);
  });

/** What a deposit has less than it needs when it is taken back, its payer owes. */
function missing(model: Model, delta: Delta): Delta {
  return delta.flatMap(([of, by]): [string, bigint][] => {
    const short = by - model.sum(of);
    const whose = model.engagements.find(({ id }) => of === `deposit ${id}`);
    if (!whose || short <= 0n) return [];
    return [
      [of, short],
      [`credit ${whose.party} ${whose.currency}`, -short],
    ];
  });
}

const takeRecordBack = (drawn: number) =>
  step(`take back record ${drawn}`, (model, world) => {
    const record = one(model.records, drawn);
    const journal = world.journals.get(record?.id ?? '');
    if (!record || !journal) return;
    const word = {
      ...{ id: model.newId(), of: { kind: record.kind, id: record.id }, on: dayOf(model.today) },
      because: 'entered by mistake',
    } as const;
    const undone = answered(
      undo(word, { journal, undone: record.undone }),
      record.undone ? 'invoicing/undone-already' : undefined,
    );
    if (!undone) return;
    const event = { kind: 'undo', record: undone, journals: [journal] } as const;
    if (record.delta.some(([of, by]) => of.startsWith('owed') && model.sum(of) < by)) {
      answered(world.books.attempt(event), 'invoicing/paid-meanwhile');
      return;
    }
    world.enter(event, model.today);
    const short = missing(model, record.delta);
    model.apply([...record.delta.map(([of, by]): [string, bigint] => [of, -by]), ...short]);
    record.undone = true;
  });

const drawn = fc.nat(11);
const amount = fc.oneof(fc.bigInt({ min: 1n, max: 300n }), fc.bigInt({ min: 1n, max: 30_000n }));
const steps = [
  drawn.map(agree),
  fc.tuple(drawn, fc.integer({ min: 1, max: 240 })).map((of) => play(...of)),
  fc.tuple(drawn, fc.boolean()).map((of) => cancel(...of)),
  drawn.map(add),
  drawn.map(moveCall),
  drawn.map(invoice),
  drawn.map(invoiceTogether),
  drawn.map(credit),
  drawn.map(takeBack),
  fc.tuple(drawn, amount, fc.boolean()).map((of) => pay(...of)),
  fc.tuple(drawn, amount, amount).map((of) => payByHand(...of)),
  fc.tuple(drawn, amount, amount).map((of) => deposit(...of)),
  drawn.map(useDeposit),
  fc.tuple(drawn, amount).map((of) => giveBack(...of)),
  drawn.map(useCredit),
  fc.tuple(drawn, amount).map((of) => payBack(...of)),
  fc.tuple(drawn, amount).map((of) => giveUp(...of)),
  fc.tuple(drawn, amount).map((of) => charge(...of)),
  drawn.map(takeRecordBack),
];

/** Every history begins with two engagements, one of them invoiced twice, so that most steps find something to do. */
function live(history: Iterable<Step>, kind: number): void {
  const [model, world] = [new Model(), new World()];
  for (const begin of [agree(kind), agree(kind + 1), invoice(0), add(0), invoice(0)]) begin.run(model, world);
  fc.modelRun(() => ({ model, real: world }), history);
}

// Ten thousand histories in all: a few seconds of work, for which a busy machine is given its time.
describe('whatever happens in whatever order, the books say what plain sums say', () => {
  it.each([
    ['in pounds', 0],
    ['in euro, with tax on top', 1],
    ['with tax inside some prices', 2],
  ])(
    '%s first',
    (_, kind) => {
      const history = fc.commands(steps, { maxCommands: 16, size: 'max' });
      fc.assert(
        fc.property(history, (history) => live(history, kind)),
        { numRuns: 3400 },
      );
    },
    300_000,
  );
});
