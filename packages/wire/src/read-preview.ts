// A preview: a written tariff and the facts of an engagement that nobody keeps.

import type { Temporal } from '@colla/calendar';
import { readInstant } from '@colla/calendar';
import type { Call, Standing } from '@colla/hours';
import { type Facts, type Move, readTariff, type Tariff, withChoices } from '@colla/rates';
import { type OrRefusal, refused } from '@colla/refusal';
import type { z } from 'zod';
import {
  present,
  readCall,
  readCost,
  readEach,
  readLeg,
  readMoved,
  readSpan,
  readTerm,
  readWord,
  readWork,
} from './read.ts';
import type { previewInput } from './statements.ts';

type Preview = z.output<typeof previewInput>;
type PreviewCall = Preview['engagement']['calls'][number];

/** What to price, under what, and when; `asOf` where it was named. */
export interface ReadPreview {
  readonly facts: Facts;
  readonly tariff: Tariff;
  readonly asOf: Temporal.ZonedDateTime | undefined;
}

export function readPreview(input: Preview): OrRefusal<ReadPreview> {
  const tariff = readTerms(input);
  if (refused(tariff)) return tariff;
  const facts = readFacts(input.engagement, tariff);
  if (refused(facts)) return facts.at('/engagement');
  const asOf = input.asOf === undefined ? undefined : readInstant(input.asOf);
  return refused(asOf) ? asOf.at('/asOf') : { facts, tariff, asOf };
}

function readTerms({ tariff, choices }: Preview): OrRefusal<Tariff> {
  const read = readTariff(tariff);
  return refused(read) ? read.at('/tariff') : withChoices(read, choices);
}

function readFacts(of: Preview['engagement'], { currency }: Tariff): OrRefusal<Facts> {
  const calls = readEach(of.calls, '/calls', (call, at) => readTurnedOut(call, of.offered, nameOf(call, at)));
  if (refused(calls)) return calls;
  const programme = readEach(of.programme, '/programme', (work, at) => readWork(work, nameOf(work, at)));
  if (refused(programme)) return programme;
  const legs = readEach(of.legs, '/legs', (leg, at) => readLeg(leg, nameOf(leg, at)));
  if (refused(legs)) return legs;
  const costs = readEach(of.costs, '/costs', (cost, at) =>
    readCost(cost, { id: nameOf(cost, at), currency }),
  );
  if (refused(costs)) return costs;
  const terms = readEach(of.terms, '/terms', readTerm);
  if (refused(terms)) return terms;
  const moves = readEach(of.moves, '/moves', readMove);
  if (refused(moves)) return moves;
  const { sharers, circumstances, offered, pianistClass, rolledOver, soFar } = of;
  return {
    calls,
    programme,
    legs,
    costs,
    soloist: present(of.soloist),
    sharers,
    ...present({ pianistClass, soFar }),
    circumstances,
    offered,
    terms,
    moves,
    rolledOver,
    holidays: new Set(of.holidays),
  };
}

function readMove({ call, was, moved }: Preview['engagement']['moves'][number]): OrRefusal<Move> {
  const before = readSpan(was);
  if (refused(before)) return before.at('/was');
  const word = readMoved(moved);
  return refused(word) ? word.at('/moved') : { call, was: before, ...word };
}

/** The name it was given, or its place in the list, written so that it sorts as the list does. */
function nameOf({ id }: { readonly id?: string | undefined }, at: number): string {
  return id ?? String(at + 1).padStart(4, '0');
}

function readTurnedOut(input: PreviewCall, offered: boolean, id: string): OrRefusal<Call> {
  const call = readCall(input, id);
  if (refused(call)) return call;
  const { held, ...facts } = call;
  const free = offered || input.onlyIf !== undefined;
  const standing =
    readStanding(input) ?? (free ? { is: 'held' as const, ...held } : { is: 'agreed' as const });
  return refused(standing) ? standing : { ...facts, standing };
}

function readStanding({ played, cancelled, missed }: PreviewCall): OrRefusal<Standing> | undefined {
  if (missed) return { is: 'missed', ...missed };
  if (cancelled) {
    const word = readWord(cancelled);
    return refused(word) ? word.at('/cancelled') : { is: 'cancelled', ...word, wasAgreed: true };
  }
  if (!played) return undefined;
  const times = readSpan(played);
  return refused(times) ? times.at('/played') : { is: 'played', times };
}
