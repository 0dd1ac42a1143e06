// Amounts and hours as figures: tabular, aligned right, with the true minus; red never says more than the words do.
import { sayFigure, sayHours, sayMoney } from '../locale.ts';

interface FigureProps {
  /** Decimal text of the wire, `-45.00`. */
  amount: string;
  currency: string;
  /** In a column whose head says the currency. */
  bare?: boolean;
}

export function Figure({ amount, currency, bare = false }: FigureProps) {
  return <span className="figure">{bare ? sayFigure(amount, currency) : sayMoney(amount, currency)}</span>;
}

/** Minutes, as hours with two decimals. */
export function Hours({ minutes }: { minutes: number }) {
  return <span className="figure">{sayHours(minutes)}</span>;
}
