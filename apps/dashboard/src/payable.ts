// The currencies that a payer can pay in: what ISO 4217 lists beside them are units of account.
import { currencies } from '@colla/money';

/**
 * Fund codes of ISO 4217, list one (from memory): index units and clearing units of Bolivia, Switzerland, Chile,
 * Colombia, Mexico, the United States, and Uruguay.
 */
const FUNDS: ReadonlySet<string> = new Set(['BOV', 'CHE', 'CHW', 'CLF', 'COU', 'MXV', 'USN', 'UYI', 'UYW']);

/** What is no country's money: special drawing rights, and the unit of account of a bank (from memory). */
const UNITS_OF_ACCOUNT: ReadonlySet<string> = new Set(['XAD', 'XDR', 'XSU', 'XUA']);

/** In alphabetical order. */
export function payableCurrencies(): string[] {
  return currencies().filter((code) => !FUNDS.has(code) && !UNITS_OF_ACCOUNT.has(code));
}
