// One invented season and its cast, and seeded calls in any number; nothing of the domain imports it.

export { manyCalls } from './many-calls.ts';
export { type ExampleSeason, exampleSeason } from './season.ts';
