// Whole minor units in one currency; rounding happens in one named place; a refund mirrors its charge.

export { type Currency, currencies, currency, LOAD, measure, minorDigits } from './currency.ts';
export { add, type Money, money, subtract, total } from './money.ts';
export { divideRounded, shareOf, WHOLE } from './round.ts';
export { allocate, apportion } from './share.ts';
export { format, formatFigure, fromDecimal, fromTyped, LARGEST, toDecimal } from './text.ts';
