// The parameters of a clause as a form asks for them, read from the schema that its kind declares.

/** What a parameter holds, and how it is asked for. */
export type Shape =
  | { readonly is: 'amount'; readonly usual?: string }
  | {
      readonly is: 'figure';
      readonly unit: FigureUnit;
      readonly least: number;
      readonly most: number;
      readonly usual?: number;
    }
  | { readonly is: 'words'; readonly usual?: string }
  | { readonly is: 'time' }
  | { readonly is: 'yes or no'; readonly usual: boolean }
  | { readonly is: 'choice'; readonly words: readonly string[]; readonly usual?: string }
  /** Several of the words listed. */
  | { readonly is: 'several'; readonly least: number; readonly words: readonly string[] }
  /** Several other clauses of the tariff, by their short names. */
  | { readonly is: 'clauses'; readonly least: number }
  /** Several words of the organisation's own. */
  | { readonly is: 'own words'; readonly least: number }
  | { readonly is: 'list'; readonly least: number; readonly most: number; readonly of: Shape }
  | { readonly is: 'group'; readonly parts: readonly Parameter[] }
  /** One of some groups, told apart by the word under `by`. */
  | { readonly is: 'variant'; readonly by: string; readonly variants: readonly Variant[] };

export type FigureUnit = 'minutes' | 'share' | 'rate' | 'count' | 'days';

export interface Variant {
  readonly word: string;
  readonly parts: readonly Parameter[];
}

export interface Parameter {
  readonly name: string;
  readonly title: string;
  /** True where it may be left out altogether. */
  readonly optional: boolean;
  readonly shape: Shape;
}

/** A JSON Schema, as far as clauses use it. `unit` is our own word in it. */
export interface SchemaNode {
  readonly type?: string;
  readonly title?: string;
  readonly unit?: string;
  readonly default?: unknown;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly minimum?: number;
  readonly maximum?: number;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly items?: SchemaNode;
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  readonly required?: readonly string[];
  readonly oneOf?: readonly SchemaNode[];
}

/** The parameters that an object schema names, in its order. */
export function parametersOf(schema: SchemaNode): Parameter[] {
  return Object.entries(schema.properties ?? {}).map(([name, node]) => ({
    name,
    title: node.title ?? name,
    optional: !schema.required?.includes(name) && node.default === undefined,
    shape: shapeOf(node),
  }));
}

function shapeOf(node: SchemaNode): Shape {
  if (node.oneOf) return variantOf(node.oneOf);
  if (node.type === 'object') return { is: 'group', parts: parametersOf(node) };
  if (node.type === 'array') return manyOf(node);
  if (node.type === 'boolean') return { is: 'yes or no', usual: node.default === true };
  if (node.type === 'integer' || node.unit === 'rate') return figureOf(node);
  if (node.enum) return { is: 'choice', words: node.enum.map(String), ...usual(node, String) };
  if (node.unit === 'money') return { is: 'amount', ...usual(node, String) };
  if (node.unit === 'time') return { is: 'time' };
  return { is: 'words', ...usual(node, String) };
}

function variantOf(nodes: readonly SchemaNode[]): Shape {
  const by =
    Object.entries(nodes[0]?.properties ?? {}).find(([, node]) => node.const !== undefined)?.[0] ?? '';
  const variants = nodes.map((node) => ({
    word: String(node.properties?.[by]?.const),
    parts: parametersOf(node).filter(({ name }) => name !== by),
  }));
  return { is: 'variant', by, variants };
}

function manyOf({ items = {}, minItems = 0, maxItems = 100, unit }: SchemaNode): Shape {
  if (items.enum) return { is: 'several', least: minItems, words: items.enum.map(String) };
  if (items.type === 'string') return { is: unit === 'clause' ? 'clauses' : 'own words', least: minItems };
  return { is: 'list', least: minItems, most: maxItems, of: shapeOf(items) };
}

function figureOf(node: SchemaNode): Shape {
  return {
    is: 'figure',
    unit: unitOf(node.unit),
    least: node.minimum ?? 0,
    most: node.maximum ?? Number.MAX_SAFE_INTEGER,
    ...usual(node, Number),
  };
}

function unitOf(unit: string | undefined): FigureUnit {
  return unit === 'minutes' || unit === 'share' || unit === 'rate' || unit === 'days' ? unit : 'count';
}

function usual<T>({ default: value }: SchemaNode, as: (value: unknown) => T): { usual?: T } {
  return value === undefined ? {} : { usual: as(value) };
}
