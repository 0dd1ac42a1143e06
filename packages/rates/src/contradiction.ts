// Clauses that cannot stand together are refused when a tariff is read, naming both.

import { Refusal } from '@colla/refusal';
import { apart, asksOfCalls, closer } from './fit.ts';
import { gathersLonger } from './gathering.ts';
import type { Rivalry } from './kind.ts';
import { excludes, kindOf, namesAlikeOf, namesOf, needsOf, rivalryOf, speaksOf } from './kinds.ts';
import type { Clause } from './tariff.ts';
import { areAlternatives, notToBeWeighed, weighedTwice } from './weighing.ts';

/** The first contradiction among clauses, or undefined. */
export function contradiction(clauses: readonly Clause[]): Refusal | undefined {
  return (
    sameId(clauses) ??
    within(clauses) ??
    ofSomeCalls(clauses) ??
    namesNobody(clauses) ??
    namesAnother(clauses) ??
    inACircle(clauses) ??
    gathersLonger(clauses) ??
    lacks(clauses) ??
    notToBeWeighed(clauses) ??
    weighedTwice(clauses) ??
    twice(clauses) ??
    rivals(clauses)
  );
}

function sameId(clauses: readonly Clause[]): Refusal | undefined {
  const index = clauses.findIndex((clause, at) => clauses.findIndex(({ id }) => id === clause.id) < at);
  if (index < 0) return undefined;
  const id = clauses[index]?.id ?? '';
  return new Refusal(
    'rates/same-name',
    `Two clauses are called “${id}”. Give one of them another short name.`,
    { clause: id },
    `/clauses/${index}/id`,
  );
}

function within(clauses: readonly Clause[]): Refusal | undefined {
  for (const [index, clause] of clauses.entries()) {
    const said = kindOf(clause).contradictions?.(clause.terms)[0];
    if (said)
      return new Refusal(
        'rates/contradiction',
        `Clause “${clause.id}”: ${said}`,
        { clause: clause.id },
        `/clauses/${index}/terms`,
      );
  }
  return undefined;
}

function ofSomeCalls(clauses: readonly Clause[]): Refusal | undefined {
  const index = clauses.findIndex((clause) => kindOf(clause).whole === true && asksOfCalls(clause.for));
  const clause = clauses[index];
  if (!clause) return undefined;
  return new Refusal(
    'rates/contradiction',
    `Clause “${clause.id}” is about the engagement as a whole and cannot be for some calls of it only. Leave out the kinds of call, names and days.`,
    { clause: clause.id },
    `/clauses/${index}/for`,
  );
}

function namesNobody(clauses: readonly Clause[]): Refusal | undefined {
  for (const [index, clause] of clauses.entries()) {
    const missing = speaksOf(clause).find((name) => !clauses.some(({ id }) => id === name));
    if (missing !== undefined) {
      return new Refusal(
        'rates/no-such-clause',
        `Clause “${clause.id}” speaks of a clause “${missing}” that is not in this tariff. Add it, or remove the name.`,
        { clause: clause.id, missing },
        `/clauses/${index}/terms`,
      );
    }
  }
  return undefined;
}

/** A clause named as one of the same kind, and of another. */
function namesAnother(clauses: readonly Clause[]): Refusal | undefined {
  for (const [index, clause] of clauses.entries()) {
    const other = clauses.find(({ id, kind }) => namesAlikeOf(clause).includes(id) && kind !== clause.kind);
    if (!other) continue;
    const title = kindOf(clause).title.toLowerCase();
    return new Refusal(
      'rates/contradiction',
      `Clause “${clause.id}” names “${other.id}” as a ${title}, and it is none. Name a ${title}, or remove the name.`,
      { clause: clause.id, other: other.id },
      `/clauses/${index}/terms`,
    );
  }
  return undefined;
}

function inACircle(clauses: readonly Clause[]): Refusal | undefined {
  const byId = new Map(clauses.map((clause) => [clause.id, clause]));
  const reaches = (from: Clause, to: string, seen: Set<string>): boolean =>
    namesOf(from).some((name) => {
      if (name === to) return true;
      const next = byId.get(name);
      if (!next || seen.has(name)) return false;
      return reaches(next, to, seen.add(name));
    });
  const index = clauses.findIndex((clause) => reaches(clause, clause.id, new Set()));
  const clause = clauses[index];
  if (!clause) return undefined;
  return new Refusal(
    'rates/contradiction',
    `Clause “${clause.id}” speaks of itself, by way of what it names: there is no first one to work out. Remove one of the names.`,
    { clause: clause.id },
    `/clauses/${index}/terms`,
  );
}

/** A clause without which another cannot say what is owed: it is not there, or never for the same engagements. */
function lacks(clauses: readonly Clause[]): Refusal | undefined {
  for (const [index, clause] of clauses.entries()) {
    for (const kind of needsOf(clause)) {
      const others = clauses.filter((other) => other.kind === kind);
      if (others.some((other) => !apart(other.for, clause.for))) continue;
      return others[0] ? neverMeets(clause, others[0], index) : isMissing(clause, kind, index);
    }
  }
  return undefined;
}

function isMissing({ id }: Clause, kind: string, index: number): Refusal {
  return new Refusal(
    'rates/no-such-clause',
    `Clause “${id}” needs a clause of the kind “${kind}” in this tariff. Add one, or change what this one says.`,
    { clause: id, missing: kind },
    `/clauses/${index}/terms`,
  );
}

function neverMeets({ id }: Clause, other: Clause, index: number): Refusal {
  return new Refusal(
    'rates/contradiction',
    `Clause “${id}” speaks of the ${other.kind}, and “${other.id}” is never for the same engagements. Let the two meet, or change what “${id}” says.`,
    { one: id, other: other.id },
    `/clauses/${index}/for`,
  );
}

/** Two of a kind that a tariff can have once only for the same engagement. */
function twice(clauses: readonly Clause[]): Refusal | undefined {
  return clash(
    clauses,
    excludes,
    (one, other) => `both are of the kind “${kindOf(one).title}”, and “${other.id}” would count twice`,
    'more of the engagement (a level, a class of pianist, a circumstance)',
  );
}

function rivals(clauses: readonly Clause[]): Refusal | undefined {
  const same = (one: Clause, other: Clause) => {
    const rivalry = rivalryOf(one);
    return rivalry !== undefined && rivalry === rivalryOf(other);
  };
  return clash(clauses, same, (one) => BOTH[rivalryOf(one) ?? 'price']);
}

const BOTH: Readonly<Record<Rivalry, string>> = {
  price: 'both put a price on the same calls',
  fall: 'both say what is owed when the same calls fall',
  absence: 'both dock the same absences of the pianist',
};

/** Two clauses that meet on some call, and neither of which is closer than the other. */
function clash(
  clauses: readonly Clause[],
  same: (one: Clause, other: Clause) => boolean,
  why: (one: Clause, other: Clause) => string,
  more = 'more (a kind of call, a day, a level)',
): Refusal | undefined {
  const alternatives = areAlternatives(clauses);
  for (const [at, other] of clauses.entries()) {
    const one = clauses
      .slice(0, at)
      .find(
        (one) =>
          same(one, other) &&
          !alternatives(one, other) &&
          !apart(one.for, other.for) &&
          !closer(one.for, other.for) &&
          !closer(other.for, one.for),
      );
    if (!one) continue;
    return new Refusal(
      'rates/contradiction',
      `Clauses “${one.id}” and “${other.id}” contradict: ${why(one, other)}. Let one of them ask for something ${more}, or remove it.`,
      { one: one.id, other: other.id },
      `/clauses/${at}`,
    );
  }
  return undefined;
}
