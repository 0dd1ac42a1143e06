// A figure in a table or a sentence, which opens to its why on a sheet of its own.
import { useState } from 'react';
import { createPortal } from 'react-dom';
import { why as say } from '../catalogue/why.ts';
import { sayMoney } from '../locale.ts';
import './amount.css';
import { Opened } from './amount-line.tsx';
import { Dialog } from './dialog.tsx';
import { Figure } from './figure.tsx';
import type { Why } from './why.ts';

interface AmountProps {
  why: Why;
  /** In a column whose head says the currency. */
  bare?: boolean;
  /** In a sentence that says what it is the amount of. */
  said?: boolean;
}

export function Amount({ why, bare = false, said = false }: AmountProps) {
  const [isOpen, setIsOpen] = useState(false);
  const { what, amount, currency } = why;
  return (
    <>
      <button type="button" className="opens-amount" aria-haspopup="dialog" onClick={() => setIsOpen(true)}>
        {!said && <span className="unseen">{say('named', { what })}</span>}
        <Figure amount={amount} currency={currency} bare={bare} />
      </button>
      {isOpen &&
        createPortal(
          <Dialog title={what} onClose={() => setIsOpen(false)}>
            <p className="opens-amount-whole">{sayMoney(amount, currency)}</p>
            <Opened why={why} />
          </Dialog>,
          document.body,
        )}
    </>
  );
}
