// The least that could answer with one engagement whole: bare Express and one statement, which writes the very JSON
// of the API. No session, no organisation, no transaction. PORT, and DATABASE_URL for the server with the books.
//
// It may take short cuts that a program cannot: euro and whole seconds are all there is in the books it reads.
import express from 'express';
import postgres from 'postgres';

/** Every key begins with the organisation. */
const mine = 'organisation_id = e.organisation_id';

/** @type {(rows: string, of: string) => string} */
const list = (rows, of) => `(select coalesce(json_agg(${rows} order by position), '[]') from ${of})`;
/** @type {(minor: string) => string} */
const money = (minor) => `((${minor}) / 100.0)::numeric(20, 2)::text`;

/**
 * An instant as the clock of its place shows it, with the offset it has there.
 * @type {(at: string, zone: string) => string}
 */
const moment = (at, zone) => {
  const local = `${at} at time zone ${zone}`;
  const ahead = `extract(epoch from (${local}) - (${at} at time zone 'UTC'))`;
  return `to_char(${local}, 'YYYY-MM-DD"T"HH24:MI:SS') || case when ${ahead} < 0 then '-' else '+' end
    || to_char(make_interval(secs => abs(${ahead})), 'HH24:MI') || '[' || ${zone} || ']'`;
};

const standing = `case standing
  when 'held' then json_build_object('is', standing, 'onlyIf', only_if, 'lapsesAt', ${moment('lapses_at', 'lapses_zone')})
  when 'agreed' then json_build_object('is', standing)
  when 'played' then json_build_object('is', standing, 'start', ${moment('played_from', 'played_zone')},
    'end', ${moment('played_until', 'played_zone')})
  when 'cancelled' then json_build_object('is', standing, 'at', ${moment('word_at', 'word_zone')},
    'by', let_fall_by, 'reason', reason, 'wasAgreed', was_agreed)
  else json_build_object('is', standing, 'by', let_fall_by, 'reason', reason) end`;

const call = `json_build_object('id', id, 'kind', kind, 'label', label, 'place', place,
  'start', ${moment('starts_at', 'zone')}, 'end', ${moment('ends_at', 'zone')}, 'standing', ${standing},
  'lifted', case when lifted_at is not null
    then json_build_object('at', ${moment('lifted_at', 'lifted_zone')}, 'reason', lifted_reason) end)`;

const move = `json_build_object('call', call_id, 'start', ${moment('started_at', 'zone')}, 'end', ${moment('ended_at', 'zone')},
  'at', ${moment('word_at', 'word_zone')}, 'by', moved_by)`;

const work = `json_build_object('id', id, 'composer', composer, 'title', title, 'minutes', minutes,
  'requested', requested, 'difficulty', difficulty, 'pages', pages, 'part', json_build_object('edition', part_edition, 'key', part_key, 'cuts', part_cuts,
    'state', part_state, 'permission', part_permission, 'receivedOn', part_received_on))`;

const leg = `json_build_object('id', id, 'on', on_day, 'from', from_place, 'to', to_place,
  'distance', trim_scale(distance_thousandths / 1000.0)::text, 'unit', distance_unit, 'minutes', minutes,
  'purpose', purpose)`;

const cost = `json_build_object('id', id, 'on', on_day, 'what', what, 'amount', ${money('amount')})`;

/** The deposit of an agreement, whose amount the books keep in minor units. */
const deposit = `(calls -> 'deposit') || jsonb_build_object('amount', ${money("(calls -> 'deposit' ->> 'amount')::numeric")})`;

const agreement = `(select json_build_object('id', id, 'engagement', engagement_id,
    'tariff', json_build_object('name', tariff -> 'name', 'version', tariff -> 'version', 'currency', tariff -> 'currency'),
    'written', tariff, 'sentences', sentences, 'calls', calls -> 'calls', 'deposit', ${deposit}, 'holidays', to_json(holidays),
    'terms', terms, 'soFar', so_far,
    'agreedAt', ${moment('agreed_at', 'agreed_zone')}, 'acceptedBy', accepted_by)
  from agreements where ${mine} and engagement_id = e.id)`;

const line = `json_build_object('key', key, 'clause', clause, 'what', what, 'on', on_day,
  'quantity', json_build_object('count', quantity_count, 'of', quantity_of), 'unit', unit,
  'rate', ${money('rate')}, 'amount', ${money('amount')}, 'facts', facts, 'arithmetic', arithmetic)`;

const tax = `json_build_object('name', name, 'rate', rate, 'code', code, 'inside', inside,
  'base', ${money('base')}, 'amount', ${money('amount')}, 'clause', clause, 'wording', wording, 'not', to_json(not_on),
  'arithmetic', arithmetic)`;

const invoice = `json_build_object('id', i.id, 'number', number, 'engagement', engagement_id, 'title', title,
  'payer', payer, 'currency', currency,
  'from', json_build_object('name', from_name, 'address', from_address, 'reference', from_reference, 'taxNumber', from_tax_number),
  'to', json_build_object('name', to_name, 'address', to_address, 'reference', to_reference, 'taxNumber', to_tax_number,
    'party', to_party),
  'payTo', pay_to, 'lines', ${list(line, `invoice_lines where ${mine} and invoice_id = i.id`)},
  'taxes', ${list(tax, `invoice_taxes where ${mine} and invoice_id = i.id`)},
  'net', ${money('net')}, 'tax', ${money('tax')}, 'total', ${money('total')}, 'terms', terms, 'note', note,
  'issuedOn', issued_on, 'dueOn', due_on, 'paid', ${money('paid')}, 'owed', ${money('total - paid')},
  'is', case when paid >= total then 'paid'
    when due_on < (now() at time zone o.zone)::date then 'overdue' when paid > 0 then 'part paid' else 'open' end)`;

const invoices = `(select coalesce(json_agg(${invoice} order by issued_on, series, ordinal), '[]') from invoices i,
  lateral (select coalesce(sum(amount), 0) as paid from allocations where ${mine} and invoice_id = i.id) p
  where ${mine} and engagement_id = e.id)`;

const payment = `json_build_object('id', id, 'party', party_id, 'receivedOn', received_on, 'amount', ${money('amount')},
  'currency', currency, 'method', method, 'reference', reference, 'credit', ${money('credit')},
  'allocations', (select json_agg(json_build_object('invoice', invoice_id, 'amount', ${money('a.amount')}) order by position)
    from allocations a where ${mine} and a.payment_id = payments.id))`;

const payments = `(select coalesce(json_agg(${payment} order by received_on, id), '[]') from payments
  where ${mine} and id in (select payment_id from allocations where ${mine} and invoice_id in (
    select id from invoices where ${mine} and engagement_id = e.id)))`;

const parties = `(select json_object_agg(id, name) from parties
  where ${mine} and id = any(array[e.soloist_party, e.institution_party]
    || array(select party_id from payers where ${mine} and engagement_id = e.id)))`;

/** @type {(rows: string, table: string) => string} */
const own = (rows, table) => list(rows, `${table} where ${mine} and engagement_id = e.id`);
const whole = `select json_strip_nulls(json_build_object('id', e.id, 'title', title, 'stage', stage,
    'currency', e.currency, 'soloistParty', soloist_party, 'institutionParty', institution_party,
    'payers', (select coalesce(json_object_agg(role, party_id order by position), '{}') from payers where ${mine} and engagement_id = e.id),
    'soloist', json_build_object('level', soloist_level, 'instrument', soloist_instrument, 'study', soloist_study,
      'membership', soloist_membership),
    'sharers', sharers, 'pianistClass', pianist_class, 'circumstances', circumstances, 'note', note,
    'askedAt', ${moment('asked_at', 'asked_zone')}, 'calls', ${own(call, 'calls')}, 'programme', ${own(work, 'works')},
    'legs', ${own(leg, 'legs')}, 'costs', ${own(cost, 'costs')}, 'moves', ${own(move, 'moves')},
    'rolledOver', rolled_over, 'soFar', (select so_far from agreements where ${mine} and engagement_id = e.id),
    'agreement', ${agreement},
    'endedAt', ${moment('ended_at', 'ended_zone')}, 'parties', ${parties}, 'invoices', ${invoices},
    'payments', ${payments}))
  from engagements e join organisations o on o.id = e.organisation_id where e.id = $1`;

const sql = postgres(process.env.DATABASE_URL ?? '', { onnotice: () => {} });
const app = express();
app.get('/api/engagements/:id', async (request, response) => {
  const [row] = await sql.unsafe(whole, [request.params.id], { prepare: true });
  response.json(row?.json_strip_nulls);
});
const port = Number(process.env.PORT);
const listener = app.listen(port, '127.0.0.1', () => console.log(`http://127.0.0.1:${port}/`));
process.once('SIGTERM', async () => {
  listener.close();
  listener.closeAllConnections();
  await sql.end();
});
