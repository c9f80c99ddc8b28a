/** Puts on the page what style sheets ask for: theme, large targets, veiled lengths; and the system's own colours where it has some. */
import type { PreferencesStore } from '../state/preferences-store.ts';

export function startTheme(preferences: PreferencesStore): () => void {
  const apply = () => {
    const { theme, bench, veil } = preferences.getState();
    const { dataset } = document.documentElement;
    if (theme === 'system') delete dataset['theme'];
    else dataset['theme'] = theme;
    dataset['bench'] = bench;
    dataset['veil'] = veil;
  };
  apply();
  if (matchMedia('(forced-colors: active)').matches) void import('./forced-colours.css');
  return preferences.subscribe(apply);
}
