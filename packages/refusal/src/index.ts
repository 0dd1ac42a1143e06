// How the trade says no, and what is said of a field that cannot be read.

export { type Issue, misreadWords, pointerKey, pointerOf } from './misread.ts';
export { granted, type OrRefusal, Refusal, type RefusalFacts, refused } from './refusal.ts';
