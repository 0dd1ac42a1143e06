// Rows that are being written down: each has a key as long as the form is open.

export function nextKey(rows: readonly { readonly key: number }[]): number {
  return Math.max(-1, ...rows.map(({ key }) => key)) + 1;
}

/** Words under their name; nothing where nothing is written. */
export function said<Name extends string>(name: Name, text: string): { [key in Name]?: string } {
  const words = text.trim();
  return words === '' ? {} : ({ [name]: words } as { [key in Name]: string });
}
