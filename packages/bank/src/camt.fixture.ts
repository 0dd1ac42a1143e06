// Statements of account for the tests, written by hand.

/** A message of one statement of one account, of the version said. */
export function message(inside: string, version = '08'): string {
  return `<?xml version="1.0" encoding="UTF-8"?>
<Document xmlns="urn:iso:std:iso:20022:tech:xsd:camt.053.001.${version}"><BkToCstmrStmt>
<GrpHdr><MsgId>M1</MsgId><CreDtTm>2026-11-25T18:00:00Z</CreDtTm></GrpHdr>
<Stmt><Id>S1</Id><Acct><Id><IBAN>DE89370400440532013000</IBAN></Id><Ccy>EUR</Ccy></Acct>
${inside}
</Stmt></BkToCstmrStmt></Document>`;
}

/** A balance of the kind `OPBD`, `CLBD` … that the bank owes the owner. */
export function balance(kind: string, amount: string, currency = 'EUR'): string {
  return `<Bal><Tp><CdOrPrtry><Cd>${kind}</Cd></CdOrPrtry></Tp><Amt Ccy="${currency}">${amount}</Amt><CdtDbtInd>CRDT</CdtDbtInd><Dt><Dt>2026-11-25</Dt></Dt></Bal>`;
}

interface Written {
  readonly amount: string;
  readonly side?: 'CRDT' | 'DBIT';
  readonly state?: string;
  readonly day?: string;
  /** What stands between the day and the details. */
  readonly more?: string;
  /** The inside of each payment. */
  readonly payments?: readonly string[];
}

/** An entry of 25 November 2026 that is booked and came in, unless said otherwise. */
export function entry(written: Written): string {
  const { amount, side = 'CRDT', state = '<Sts><Cd>BOOK</Cd></Sts>', more = '', payments = [] } = written;
  const day = written.day ?? '<BookgDt><Dt>2026-11-25</Dt></BookgDt>';
  const details = payments.map((inside) => `<TxDtls>${inside}</TxDtls>`).join('');
  return `<Ntry><Amt Ccy="EUR">${amount}</Amt><CdtDbtInd>${side}</CdtDbtInd>${state}${day}${more}<NtryDtls>${details}</NtryDtls></Ntry>`;
}

/** What a payment says of who paid, and its words. */
export function told(name: string, words: string): string {
  return `<RltdPties><Dbtr><Pty><Nm>${name}</Nm></Pty></Dbtr></RltdPties><RmtInf><Ustrd>${words}</Ustrd></RmtInf>`;
}
