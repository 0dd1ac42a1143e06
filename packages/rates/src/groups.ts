// Things with one key, together, in the order of their first.

export function groupsOf<T, Key>(things: Iterable<T>, keyOf: (thing: T) => Key): Map<Key, T[]> {
  const groups = new Map<Key, T[]>();
  for (const thing of things) {
    const key = keyOf(thing);
    const known = groups.get(key);
    if (known) known.push(thing);
    else groups.set(key, [thing]);
  }
  return groups;
}
