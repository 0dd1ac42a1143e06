// A sentence of the catalogue with something to press in it: an amount where its `{name}` stands.
import { Fragment, type ReactNode } from 'react';

/** The text as it is written, with what stands for each of its names. */
export function Filled({ text, values }: { text: string; values: Readonly<Record<string, ReactNode>> }) {
  return text.split(/(\{\w+\})/).map((piece, at) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: the pieces of a text never change places
    <Fragment key={at}>{values[piece.slice(1, -1)] ?? piece}</Fragment>
  ));
}
