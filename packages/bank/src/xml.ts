// XML read part by part, so that a file never stands in memory whole. Nothing that a file declares is followed: one with
// a DOCTYPE is refused, so no entity can grow.

import { type OrRefusal, Refusal } from '@colla/refusal';
import { SaxesParser } from 'saxes';

export interface Element {
  /** without its prefix */
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly Element[];
  readonly text: string;
  /** The line on which it begins. */
  readonly line: number;
}

/** Who reads. A refusal ends the reading. */
export interface Reader {
  /** The outermost element: what kind of file it is. */
  root(name: string, namespace: string): Refusal | undefined;
  /** How deep the parts lie that are handed over whole; the outermost element is 1. */
  readonly depth: number;
  /** One part, with the names of the elements around it, as `Document/Stmt/Ntry`. */
  part(path: string, element: Element): Refusal | undefined;
}

/** Hands a text's parts to `reader`, in their order. Refuses a DOCTYPE, broken XML and a file that breaks off. */
export function readXml(text: string, reader: Reader): OrRefusal<true> {
  const parser = new SaxesParser({ xmlns: true });
  const reading = new Reading(reader, () => parser.line);
  parser.on('doctype', () => reading.stop(declares()));
  parser.on('opentag', ({ local, uri, attributes }) =>
    reading.open({ name: local, namespace: uri, attributes: valuesOf(attributes) }),
  );
  parser.on('text', (words) => reading.say(words));
  parser.on('cdata', (words) => reading.say(words));
  parser.on('closetag', () => reading.close());
  parser.on('error', () => reading.stop(reading.atEnd ? breaksOff(parser.line) : broken(parser.line)));
  for (let at = 0; at < text.length && !reading.stopped; at += CHUNK)
    parser.write(text.slice(at, at + CHUNK));
  reading.atEnd = true;
  if (!reading.stopped) parser.close();
  return reading.stopped ?? true;
}

const CHUNK = 65_536;
/** No message of a bank lies nearly so deep. */
const DEEPEST = 50;
/** In elements: an entry of ten thousand payments. */
const LARGEST_PART = 300_000;

interface Opening {
  readonly name: string;
  readonly namespace: string;
  readonly attributes: Readonly<Record<string, string>>;
}

interface Growing extends Element {
  readonly children: Growing[];
  text: string;
}

/** Where a reading has come to: the names around, and the part that is growing. */
class Reading {
  stopped: Refusal | undefined;
  atEnd = false;
  readonly #path: string[] = [];
  readonly #growing: Growing[] = [];
  /** How many elements the growing part has. */
  #elements = 0;

  constructor(
    readonly reader: Reader,
    readonly line: () => number,
  ) {}

  stop(refusal: Refusal | undefined): void {
    this.stopped ??= refusal;
  }

  open({ name, namespace, attributes }: Opening): void {
    if (this.stopped) return;
    this.#path.push(name);
    if (this.#path.length === 1) this.stop(this.reader.root(name, namespace));
    if (this.#path.length < this.reader.depth) return;
    this.#elements += 1;
    if (this.#path.length > DEEPEST || this.#elements > LARGEST_PART) this.stop(broken(this.line()));
    const element: Growing = { name, attributes, children: [], text: '', line: this.line() };
    this.#growing.at(-1)?.children.push(element);
    this.#growing.push(element);
  }

  say(words: string): void {
    const element = this.#growing.at(-1);
    if (element) element.text += words;
  }

  close(): void {
    if (this.stopped) return;
    const element = this.#growing.pop();
    if (element && this.#growing.length === 0) {
      this.stop(this.reader.part(this.#path.join('/'), element));
      this.#elements = 0;
    }
    this.#path.pop();
  }
}

function valuesOf(attributes: Readonly<Record<string, { readonly value: string }>>): Record<string, string> {
  const values: Record<string, string> = {};
  for (const name in attributes) values[name] = attributes[name]?.value ?? '';
  return values;
}

function declares(): Refusal {
  return new Refusal(
    'bank/declares-its-own',
    'The file begins with a DOCTYPE, which no bank sends and which can hide anything, so it was not read. Download it from your bank again.',
  );
}

function broken(line: number): Refusal {
  return new Refusal(
    'bank/broken-file',
    `The file is damaged in line ${line}, so nothing of it was read. Download it from your bank again.`,
    { line },
  );
}

function breaksOff(line: number): Refusal {
  return new Refusal(
    'bank/breaks-off',
    `The file breaks off in line ${line}, so nothing of it was read. Download it from your bank again.`,
    { line },
  );
}

/** The element at a path below, as `Refs/EndToEndId`; the first of several. */
export function at(element: Element, path: string): Element | undefined {
  return path
    .split('/')
    .reduce<Element | undefined>(
      (here, name) => here?.children.find((child) => child.name === name),
      element,
    );
}

/** All elements at a path below, in their order. */
export function all(element: Element, path: string): Element[] {
  return path
    .split('/')
    .reduce<Element[]>(
      (here, name) => here.flatMap(({ children }) => children.filter((one) => one.name === name)),
      [element],
    );
}

/** The words at a path below on one line; nothing where there are none. */
export function textAt(element: Element, path: string): string | undefined {
  return at(element, path)?.text.replace(/\s+/g, ' ').trim() || undefined;
}
