// A figure in a table or a sentence, which opens to its why on a sheet of its own.
import { type ReactNode, useState } from 'react';
import { createPortal } from 'react-dom';
import { why as say } from '../catalogue/why.ts';
import { sayMoney } from '../locale.ts';
import './amount.css';
import { WhyView } from './amount-line.tsx';
import { Dialog } from './dialog.tsx';
import { Figure } from './figure.tsx';
import type { Why } from './why.ts';

interface AmountProps {
  why: Why;
  /** In a column whose head says the currency. */
  bare?: boolean;
  /** What it opens to, where that has to be asked for first; a `WhyView` in the end. */
  children?: () => ReactNode;
}

export function Amount({ why, bare = false, children }: AmountProps) {
  const [isOpen, setIsOpen] = useState(false);
  const { what, amount, currency } = why;
  return (
    <>
      <button type="button" className="amount" aria-haspopup="dialog" onClick={() => setIsOpen(true)}>
        <span className="unseen">{say('named', { what })}</span>
        <Figure amount={amount} currency={currency} bare={bare} />
      </button>
      {isOpen &&
        createPortal(
          <Dialog title={what} onClose={() => setIsOpen(false)}>
            <p className="amount-whole">{sayMoney(amount, currency)}</p>
            {children ? children() : <WhyView why={why} />}
          </Dialog>,
          document.body,
        )}
    </>
  );
}
