// Whether the window is too narrow for a tariff and its examples side by side.
import { useSyncExternalStore } from 'react';

/** The same width at which `tariff.css` sets them side by side. */
const WIDE = '(min-width: 64rem)';

export function useNarrow(): boolean {
  return useSyncExternalStore(watch, () => !matchMedia(WIDE).matches);
}

function watch(changed: () => void): () => void {
  const wide = matchMedia(WIDE);
  wide.addEventListener('change', changed);
  return () => wide.removeEventListener('change', changed);
}
