// The account of hours covered, in words: occasion by occasion what was granted, drawn, left, lapsed or passed on.

import type { StatementJson } from '@colla/wire';
import { statements as say } from '../../catalogue/statements.ts';
import { sayHours } from '../../locale.ts';
import { type Reckoned, sentenceFor } from './reckoning.ts';

type Drawn = StatementJson['entitlements'][number];
type Grant = Drawn['grants'][number];

/** How much of the hours covered is used, in hundredths of the whole, for a bar. */
export function usedShare({ granted, used }: Pick<Drawn, 'granted' | 'used'>): number {
  return granted === 0 ? 0 : Math.min(100, Math.round((used * 100) / granted));
}

/** “The week of 2 March 2026”; an engagement that is one occasion has no name for it. */
export function grantName({ name }: Pick<Grant, 'name'>): string {
  return name === undefined ? say('account') : name.charAt(0).toUpperCase() + name.slice(1);
}

/** “1.50 of 2.00 h used”, what was brought over with it. */
export function usedOf({ brought, granted, used }: Pick<Grant, 'brought' | 'granted' | 'used'>): string {
  return say('usedOf', { used: sayHours(used), of: sayHours(brought + granted) });
}

/** What was granted, each call that drew or found nothing to draw, and what became of the rest. */
export function grantSays({ begins, draws, missed, ends }: Grant): string[] {
  const called = [...draws, ...missed].map(({ says }) => says);
  return [begins, ...(called.length > 0 ? called : [say('drawnByNone')]), ends].filter(Boolean);
}

/** The whole account as plain sentences, to answer with. */
export function coveredText(drawn: Drawn, of: Reckoned): string {
  const told = (['granted', 'used', 'left', 'lapsed'] as const).map(
    (part) => `${say(part)}: ${sayHours(drawn[part])} h.`,
  );
  const lost = drawn.lost === undefined ? [] : [say('lost', { why: drawn.lost })];
  const grants = drawn.grants.flatMap((grant) => [
    `${grantName(grant)}: ${usedOf(grant)}.`,
    ...grantSays(grant).map((sentence) => `  ${sentence}`),
  ]);
  return [sentenceFor(drawn.clause, of) ?? '', told.join(' '), ...lost, ...grants].filter(Boolean).join('\n');
}
